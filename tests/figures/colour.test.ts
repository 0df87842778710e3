import { lab, rgb } from 'd3';
import { describe, expect, it } from 'vitest';
import {
  colourOf,
  colourRamp,
  contrast,
  difference,
  levelColours,
  paletteOf,
  type Theme,
} from '../../src/figures/colour.ts';
import { chooseSteps, type Steps } from '../../src/figures/steps.ts';

/**
 * Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
 * IEEE Transactions on Visualization and Computer Graphics 15 (2009), table 1, severity 1.0; on linear RGB.
 */
const SIGHT = {
  usual: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protanopia: [
    0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998,
  ],
  deuteranopia: [
    0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881,
  ],
  tritanopia: [
    1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039,
  ],
} as const;

function seen(colour: string, matrix: readonly number[]): string {
  const { r, g, b } = rgb(colour);
  const linear = [r, g, b].map((c) =>
    c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4,
  );
  const out = [0, 3, 6].map((row) => linear.reduce((sum, c, k) => sum + matrix[row + k]! * c, 0));
  const [red, green, blue] = out.map((c) => {
    const v = Math.min(1, Math.max(0, c));
    return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
  }) as [number, number, number];
  return rgb(red, green, blue).formatHex();
}

/** Steps from -high to +low, in whole steps. */
function steps(high: number, low: number): Steps {
  const levels: number[] = [];
  for (let k = -high; k <= low; k++) if (k !== 0) levels.push(k);
  return { units: 'in', step: 1, stepInUnits: 1, levels };
}

const THEMES: readonly Theme[] = ['light', 'dark', 'sunlight'];

/** The colours in the middles between contours, from high to low, each with how far it is from right in steps. */
function middles(count: number, theme: Theme): { e: number; colour: string }[] {
  const colour = colourOf(steps(count, count), theme);
  const out = [];
  for (let e = -count - 0.5; e <= count + 0.5; e++) out.push({ e, colour: colour(e) });
  return out;
}

describe('the colours of deviation', () => {
  it('knows the matrices: white stays white to all eyes', () => {
    for (const matrix of Object.values(SIGHT)) {
      expect(difference(seen('#ffffff', matrix), '#ffffff')).toBeLessThan(0.5);
    }
    // Red and green of one lightness come close together without the red or the green cones.
    const usual = difference('#b05030', '#607830');
    expect(
      difference(seen('#b05030', SIGHT.deuteranopia), seen('#607830', SIGHT.deuteranopia)),
    ).toBeLessThan(0.5 * usual);
  });

  it.each(THEMES)('%s: a step further is another colour to all eyes', (theme) => {
    for (const count of [2, 4, 7]) {
      const colours = middles(count, theme);
      for (const [name, matrix] of Object.entries(SIGHT)) {
        for (let i = 0; i + 1 < colours.length; i++) {
          const [a, b] = [colours[i]!, colours[i + 1]!];
          const apart = difference(seen(a.colour, matrix), seen(b.colour, matrix));
          // Two of Lab (1976) can just be told side by side; a contour line runs between them besides.
          expect(apart, `${name} ${a.e} ${b.e}`).toBeGreaterThan(6);
        }
      }
    }
  });

  it.each(THEMES)('%s: high is never taken for low by any eyes', (theme) => {
    // A whole step from right and more: nearer, both are paper.
    const colours = middles(7, theme).filter(({ e }) => Math.abs(e) > 1);
    for (const [name, matrix] of Object.entries(SIGHT)) {
      for (const a of colours.filter(({ e }) => e < 0)) {
        for (const b of colours.filter(({ e }) => e > 0)) {
          const apart = difference(seen(a.colour, matrix), seen(b.colour, matrix));
          expect(apart, `${name} ${a.e} ${b.e}`).toBeGreaterThan(10);
        }
      }
    }
  });

  it.each(THEMES)('%s: further from right is further from paper in black and white', (theme) => {
    const away = theme === 'dark' ? 1 : -1;
    for (const side of [-1, 1]) {
      const colour = colourOf(steps(7, 7), theme);
      for (let size = 0; size < 7; size += 0.25) {
        const change = lab(colour(side * (size + 0.25))).l - lab(colour(side * size)).l;
        // A quarter of a step; colours are whole numbers of 0 to 255.
        expect(away * change, `${side * size}`).toBeGreaterThan(0.3);
      }
    }
  });

  it('gives as many steps from right the same strength on either side', () => {
    const [few, many] = [colourOf(steps(2, 6), 'light'), colourOf(steps(6, 6), 'light')];
    for (const e of [-2.4, -1, -0.1, 0, 0.7, 3, 6]) expect(few(e), `${e}`).toBe(many(e));
    expect(few(0)).toBe(paletteOf('light').paper);
  });

  it('spends the ramp on the steps that a wholly low wall has', () => {
    const spec: Steps = { units: 'in', step: 1, stepInUnits: 1, levels: [20, 21, 22, 23, 24] };
    const colour = colourOf(spec, 'light');
    for (let e = 19.5; e < 24; e++) {
      expect(difference(colour(e), colour(e + 1)), `${e}`).toBeGreaterThan(8);
    }
  });

  it('never paints a wall of one wrong size as right', () => {
    for (const e of [0.5, -0.5]) {
      const colour = colourOf(chooseSteps(e, e, 'in'), 'light')(e);
      expect(difference(colour, paletteOf('light').paper)).toBeGreaterThan(6);
    }
    const right = colourOf(chooseSteps(-0.001, 0.001, 'in'), 'light');
    expect(right(0)).toBe(paletteOf('light').paper);
  });

  it('lays the ramp evenly over all levels and a step beyond', () => {
    const spec = steps(2, 3);
    const { from, to, colours } = colourRamp(spec, 'light', 7);
    expect([from, to]).toEqual([-3, 4]);
    const colour = colourOf(spec, 'light');
    expect(colours).toEqual([-3, -11 / 6, -4 / 6, 0.5, 10 / 6, 17 / 6, 4].map(colour));
  });

  it.each(THEMES)('%s: contour lines stand 3 to 1 off the wall that they run over', (theme) => {
    for (let count = 1; count <= 9; count++) {
      const spec = steps(count, count);
      const colour = colourOf(spec, theme);
      levelColours(spec, theme).forEach((line, i) => {
        // Half a line's breadth to either side the wall is another twentieth of a step.
        for (const off of [-0.05, 0, 0.05]) {
          const wall = colour(spec.levels[i]! + off);
          expect(contrast(line, wall), `${line} ${wall}`).toBeGreaterThanOrEqual(3);
        }
      });
    }
  });

  it.each(THEMES)('%s: text stands 4.5 to 1 off its ground', (theme) => {
    const { ink, inkSoft, ground, copperText, tealText } = paletteOf(theme);
    for (const text of [ink, inkSoft, copperText, tealText]) {
      expect(contrast(text, ground), text).toBeGreaterThanOrEqual(4.5);
    }
  });
});
