import { lab, rgb } from 'd3';
import { describe, expect, it } from 'vitest';
import {
  bandColours,
  bandReach,
  contrast,
  difference,
  levelColours,
  paletteOf,
  type Theme,
} from '../../src/figures/colour.ts';
import { bandOf, chooseSteps, type Steps } from '../../src/figures/steps.ts';

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

const THEMES: readonly Theme[] = ['light', 'dark'];

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

  it.each(THEMES)('%s: every band can be told from its neighbours by all eyes', (theme) => {
    for (const count of [2, 4, 7]) {
      const colours = bandColours(steps(count, count), theme);
      for (const [name, matrix] of Object.entries(SIGHT)) {
        for (let i = 0; i + 1 < colours.length; i++) {
          const apart = difference(seen(colours[i]!, matrix), seen(colours[i + 1]!, matrix));
          // Two of Lab (1976) can just be told side by side; a contour line runs between them besides.
          expect(apart, `${name} ${colours[i]} ${colours[i + 1]}`).toBeGreaterThan(6);
        }
      }
    }
  });

  it.each(THEMES)('%s: high is never taken for low by any eyes', (theme) => {
    const colours = bandColours(steps(7, 7), theme);
    const high = colours.slice(0, 7);
    const low = colours.slice(8);
    for (const [name, matrix] of Object.entries(SIGHT)) {
      for (const a of high) {
        for (const b of low) {
          const apart = difference(seen(a, matrix), seen(b, matrix));
          expect(apart, `${name} ${a} ${b}`).toBeGreaterThan(10);
        }
      }
    }
  });

  it.each(THEMES)('%s: further from right is further from paper in black and white', (theme) => {
    const spec = steps(7, 7);
    const colours = bandColours(spec, theme);
    const away = theme === 'light' ? -1 : 1;
    for (let i = 0; i + 1 < colours.length; i++) {
      const outward = bandReach(i + 1, spec) > 0 ? 1 : -1;
      const change = lab(colours[i + 1]!).l - lab(colours[i]!).l;
      expect(outward * away * change, colours[i]).toBeGreaterThan(2);
    }
  });

  it('gives as many steps from right the same strength on either side', () => {
    const spec = steps(2, 6);
    const colours = bandColours(spec, 'light');
    const full = bandColours(steps(6, 6), 'light');
    expect(colours).toEqual(full.slice(4));
    expect(colours[bandColours(steps(2, 6), 'light').indexOf(paletteOf('light').paper)]).toBe(
      colours[2],
    );
  });

  it('spends the ramp on the bands that a wholly low wall has', () => {
    const spec: Steps = { units: 'in', step: 1, stepInUnits: 1, levels: [20, 21, 22, 23, 24] };
    const colours = bandColours(spec, 'light');
    expect(colours).toHaveLength(6);
    for (let i = 1; i + 1 < colours.length; i++) {
      expect(difference(colours[i]!, colours[i + 1]!)).toBeGreaterThan(8);
    }
  });

  it('never paints a wall of one wrong size as right', () => {
    for (const e of [0.5, -0.5]) {
      const { levels } = chooseSteps(e, e, 'in');
      const colours = bandColours(chooseSteps(e, e, 'in'), 'light');
      expect(colours[bandOf(e, levels)]).not.toBe(paletteOf('light').paper);
    }
    const right = chooseSteps(-0.001, 0.001, 'in');
    expect(bandColours(right, 'light')[bandOf(0, right.levels)]).toBe(paletteOf('light').paper);
  });

  it.each(THEMES)('%s: contour lines stand 3 to 1 off the bands on both sides', (theme) => {
    for (let count = 1; count <= 9; count++) {
      const spec = steps(count, count);
      const bands = bandColours(spec, theme);
      levelColours(spec, theme).forEach((line, i) => {
        expect(contrast(line, bands[i]!), `${line} ${bands[i]}`).toBeGreaterThanOrEqual(3);
        expect(contrast(line, bands[i + 1]!), `${line} ${bands[i + 1]}`).toBeGreaterThanOrEqual(3);
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
