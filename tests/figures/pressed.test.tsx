/** The contact pressure laid over map and drawing: constructed fields, whose lines are known in closed form. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { PressureLines } from '../../src/drawings/PressureLines.tsx';
import type { RoundFit, RoundPart } from '../../src/evaluate/fit/round.ts';
import type { BushingFit } from '../../src/evaluate/fit.ts';
import { pressureText } from '../../src/figures/loads.ts';
import { mapFrame } from '../../src/figures/mapFrame.ts';
import { wallShape } from '../../src/figures/mesh.ts';
import { pieceFigure } from '../../src/figures/piece.ts';
import { pressedWall } from '../../src/figures/pressedWall.ts';
import { pressedWhy } from '../../src/figures/pressedWhy.ts';
import { pressedHere, pressedWords, pressKey } from '../../src/figures/pressedWords.ts';
import { pressFigures } from '../../src/figures/pressFigures.ts';
import { pressLevels } from '../../src/figures/pressLevels.ts';
import { pressSigns, pressStrokes } from '../../src/figures/pressStrokes.ts';
import { simplified } from '../../src/figures/simplified.ts';
import { wallOf } from '../../src/figures/wall.ts';
import { FACTS, LENGTH, madeSurvey } from '../fixtures/evaluation.ts';

const survey = madeSurvey();
const { grid } = survey.surface!;
const TURN = 2 * Math.PI;
const CUT = 2.5;
const columns = grid.theta.length;

type Field = (theta: number, z: number) => number;

/** A bushing between two rows of the grid. @param force MPa; below 0 a gap, 1 mm per side for each 1000 MPa */
function bushing(name: string, [first, last]: readonly [number, number], force: Field): BushingFit {
  const at = (k: number) => {
    const row = Math.floor(k / columns);
    return row < first || row > last ? Number.NaN : force(grid.theta[k % columns]!, grid.z[row]!);
  };
  const all = Float64Array.from({ length: columns * grid.z.length }, (_, k) => at(k));
  const placeOf = (field: Float64Array, better: (a: number, b: number) => boolean) => {
    let found = first * columns;
    field.forEach((value, k) => {
      if (better(value, field[found]!) || Number.isNaN(field[found]!)) found = k;
    });
    const z = grid.z[Math.floor(found / columns)]!;
    return { value: field[found]!, theta: grid.theta[found % columns]!, z };
  };
  const pressure = all.map((p) => Math.max(0, p));
  const gap = all.map((p) => Math.max(0, -p / 1000));
  const known = all.filter(Number.isFinite);
  const fit = {
    rows: [first, last],
    pressure,
    gap,
    touching: known.filter((p) => p > 0).length / known.length,
    least: placeOf(pressure, (a, b) => a < b),
    mean: 1,
    greatest: placeOf(pressure, (a, b) => a > b),
    widest: placeOf(gap, (a, b) => a > b),
  } as unknown as RoundFit;
  const seated = { name, wall: { grid, kind: 'planned' } };
  return { seated, round: { missing: null, fit } } as unknown as BushingFit;
}

const of = (...bushings: BushingFit[]) => ({ bushings });
const WHOLE = [0, grid.z.length - 1] as const;
const oval: Field = (theta) => 60 * Math.cos(2 * theta);

describe('lines of contact pressure', () => {
  it('lie where the pressure is theirs, closed or out to the edges of the map', () => {
    const hill: Field = (theta, z) =>
      100 * Math.exp(-(((1 - Math.cos(theta)) * 4) ** 2) - ((z - LENGTH / 2) / 10) ** 2);
    const { levels, parts } = pressedWall(of(bushing('one', WHOLE, hill)), 'mm', CUT)!;
    expect(levels.map(({ text }) => text)).toEqual(['20', '40', '60', '80']);
    for (const { level, lines } of parts[0]!.lines) {
      expect(lines).toHaveLength(1);
      expect(lines[0]!.closed).toBe(true);
      for (const [x, y] of lines[0]!.points) {
        // Straight within a cell of 3 degrees by a 48th of the depth: off by an eighth of its square times the bend,
        // 0.2 MPa each way, and by as much again for drawing the field out on that mesh.
        expect(Math.abs(hill(x + CUT, y) - levels[level]!.mpa)).toBeLessThan(0.6);
      }
    }
    const two = pressedWall(of(bushing('one', WHOLE, oval)), 'mm', CUT)!.parts[0]!;
    for (const { lines } of two.lines) {
      expect(lines).toHaveLength(4);
      for (const { points } of lines) {
        expect([points[0]![1], points.at(-1)![1]].sort((a, b) => a - b)).toEqual([
          expect.closeTo(0, 9),
          expect.closeTo(LENGTH, 9),
        ]);
      }
    }
  });

  it('leave gaps ruled and edged where nothing presses, and nowhere else', () => {
    const part = pressedWall(of(bushing('one', WHOLE, oval)), 'mm', CUT)!.parts[0]!;
    // cos 2 theta is below nothing over half of the turn.
    const area = part.gaps.reduce((sum, ring) => {
      const twice = ring.reduce((one, [x, y], i) => {
        const [nextX, nextY] = ring[(i + 1) % ring.length]!;
        return one + x * nextY - nextX * y;
      }, 0);
      return sum + Math.abs(twice) / 2;
    }, 0);
    expect(Math.abs(area / (TURN * LENGTH) - 0.5)).toBeLessThan(0.01);
    expect(part.edge).toHaveLength(4);
    for (const [x] of part.edge.flatMap(({ points }) => points)) {
      expect(Math.abs(Math.cos(2 * (x + CUT)))).toBeLessThan(0.01);
    }
    // Every sixth degree; two of them may fall on an edge.
    expect(Math.abs(part.ruled.length - 30)).toBeLessThanOrEqual(2);
    for (const { x, from, to } of part.ruled) {
      expect(oval(x + CUT, 0)).toBeLessThan(0.1);
      expect([from, to]).toEqual([expect.closeTo(0, 9), expect.closeTo(LENGTH, 9)]);
    }
    const tight = pressedWall(of(bushing('one', WHOLE, (t) => 80 + 20 * Math.cos(t))), 'mm', CUT)!;
    expect(tight.parts[0]).toMatchObject({ gaps: [], edge: [], ruled: [], widest: null });
    expect(tight.levels.map(({ text }) => text)).toEqual(['70', '80', '90']);
  });

  it('do not run along what is kept off', () => {
    const holed: Field = (theta, z) =>
      Math.hypot(25 * (theta - 3), z - 20) < 5 ? Number.NaN : 40 + 30 * Math.cos(theta);
    const { parts, levels } = pressedWall(of(bushing('one', WHOLE, holed)), 'mm', 0)!;
    expect(levels.length).toBeGreaterThan(0);
    const points = parts[0]!.lines.flatMap(({ level, lines }) =>
      lines.flatMap((line) => line.points.map(([x]) => [x, levels[level]!.mpa] as const)),
    );
    expect(points.length).toBeGreaterThan(0);
    for (const [x, mpa] of points) expect(Math.abs(40 + 30 * Math.cos(x) - mpa)).toBeLessThan(0.5);
  });

  it('of two bushings stand each on its own part, in one set of levels', () => {
    const both = of(
      bushing('near', [0, 20], oval),
      bushing('far', [40, 64], () => 30),
    );
    const { parts } = pressedWall(both, 'mm', CUT)!;
    expect(parts.map(({ name, from, to }) => [name, from, to])).toEqual([
      ['near', 0, grid.z[20]],
      ['far', grid.z[40], LENGTH],
    ]);
    const depths = parts[0]!.lines.flatMap(({ lines }) =>
      lines.flatMap(({ points }) => points.map(([, y]) => y)),
    );
    expect(Math.max(...depths)).toBeLessThanOrEqual(grid.z[20]! + 1e-9);
    expect(pressedHere(both, { theta: 0, z: 1 }, 'mm')).toBe('pressed with 60 MPa');
    expect(pressedHere(both, { theta: 0, z: 20 }, 'mm')).toBeNull();
    expect(pressedHere(both, { theta: Math.PI / 2, z: LENGTH }, 'mm')).toBe('pressed with 30 MPa');
    expect(pressedHere(both, { theta: Math.PI / 2, z: 1 }, 'mm')).toBe(
      'no contact, a gap of 0.060 mm per side',
    );
    expect(pressedWords(both, pressedWall(both, 'mm', CUT)!).join(' ')).toMatch(
      /near: Pressed in, .* far: Pressed in, the bushing touches all of its seat/,
    );
  });

  it('have round pressures, few of them, in the job’s own unit', () => {
    const texts = (least: number, greatest: number, usual: number, units: 'in' | 'mm') =>
      pressLevels({ least, greatest, usual }, units).map(({ text }) => text);
    expect(texts(0, 159, 40, 'mm')).toEqual(['20', '50', '100']);
    expect(texts(0, 159, 40, 'in')).toEqual(['2000', '5000', '10000', '20000']);
    expect(texts(103, 118, 117, 'mm')).toEqual(['105', '110']);
    expect(texts(30, 30.5, 30.4, 'mm')).toEqual([]);
    expect(texts(0, 0, 0, 'mm')).toEqual([]);
    expect(texts(Number.NaN, Number.NaN, Number.NaN, 'mm')).toEqual([]);
    for (const { mpa, text } of pressLevels({ least: 0, greatest: 159, usual: 40 }, 'in')) {
      // 1 psi is 0.006894757 MPa (NIST SP 811, B.8).
      expect(mpa / 0.006894757).toBeCloseTo(Number(text), 6);
    }
  });

  it('are the same on the piece as on the map, and follow its wall', () => {
    const pressed = pressedWall(of(bushing('one', WHOLE, oval)), 'mm', CUT)!;
    const shape = wallShape(wallOf(survey)!, 0.0254, CUT);
    const strokes = pressStrokes(shape, pressed);
    expect(new Set(strokes.map(({ kind }) => kind))).toEqual(
      new Set(['pressed-1', 'pressed-2', 'touch-edge', 'gap']),
    );
    for (const { kind, knots } of strokes) {
      for (const [i, { phi, z, wear }] of knots.entries()) {
        const force = oval(phi + CUT + Math.PI, z);
        if (kind === 'pressed-1') expect(Math.abs(force - pressed.levels[0]!.mpa)).toBeLessThan(1);
        expect(Number.isFinite(wear)).toBe(true);
        if (i === 0) continue;
        // No chord cuts through the metal: steps of 4 degrees at the most.
        expect(Math.abs(phi - knots[i - 1]!.phi)).toBeLessThan(0.0701);
      }
    }
    // Room for short straight pieces in three dimensions is limited.
    const pieces = strokes.reduce((sum, { knots }) => sum + knots.length - 1, 0);
    expect(pieces).toBeLessThan(3000);
    const signs = pressSigns(pieceFigure(survey, FACTS, 'mm', CUT)!, pressed);
    expect(new Set(signs.map(({ text }) => text))).toEqual(new Set(['20', '40']));
  });

  it('carry figures that stand on them and not on one another', () => {
    const pressed = pressedWall(of(bushing('one', WHOLE, oval)), 'mm', CUT)!;
    const scale = { x: 100, y: 5, width: 100 * TURN, height: 5 * LENGTH };
    const figures = pressFigures(pressed, scale, { wide: 8, high: 17 });
    expect(figures.length).toBeGreaterThanOrEqual(4);
    figures.forEach((one, i) => {
      expect(Math.abs(oval(one.x / scale.x + CUT, 0) - Number(one.text))).toBeLessThan(1);
      for (const other of figures.slice(0, i)) {
        expect(Math.abs(one.x - other.x) > 16 || Math.abs(one.y - other.y) > 17).toBe(true);
      }
    });
  });

  it('are drawn with their gaps in every theme, and nothing of it is not a number', () => {
    const pressed = pressedWall(of(bushing('one', WHOLE, oval)), 'in', CUT)!;
    const frame = mapFrame({ width: 160, height: LENGTH }, 600, 300);
    for (const theme of ['light', 'dark', 'sunlight'] as const) {
      const svg = renderToStaticMarkup(
        <PressureLines pressed={pressed} frame={frame} theme={theme} id="p" label="words" />,
      );
      expect(svg).not.toMatch(/NaN|undefined/);
      expect(svg).toContain('url(#p-gap)');
      expect(svg).toContain('>6000<');
    }
  });
});

describe('contact pressure in words', () => {
  it('the key has the lines, the greatest as the report has it, and the widest gap', () => {
    const one = bushing('one', WHOLE, oval);
    const key = pressKey(pressedWall(of(one), 'mm', CUT)!);
    expect(key).toEqual({
      lines: '20 · 40 MPa',
      even: null,
      hardest: pressureText(one.round.fit!.greatest.value, 'mm'),
      gaps: '0.060 mm per side',
    });
    expect(pressKey(pressedWall(of(bushing('one', WHOLE, () => 18)), 'mm', CUT)!)).toEqual({
      lines: null,
      even: '18 MPa',
      hardest: null,
      gaps: null,
    });
    const loose = of(bushing('one', WHOLE, () => -50));
    const wall = pressedWall(loose, 'mm', CUT)!;
    expect(pressKey(wall)).toMatchObject({ lines: null, even: null, gaps: '0.050 mm per side' });
    expect(pressedWords(loose, wall).join(' ')).toMatch(/held nowhere.*No lines, since it touches/);
  });

  it('says why none can be shown, in one sentence', () => {
    const drawn = { survey, itself: true };
    const missing = { missing: 'boss-size', fit: null } as RoundPart;
    const without = { ...bushing('one', WHOLE, oval), round: missing };
    expect(pressedWhy(drawn, null, 'mm')).toBeNull();
    expect(pressedWhy(drawn, of(bushing('one', WHOLE, oval), without), 'mm')).toBeNull();
    expect(pressedWhy(drawn, of(without), 'mm')).toMatch(/^Give the outside diameter of the boss/);
    expect(pressedWhy({ survey: madeSurvey({ target: false }), itself: true }, null, 'mm')).toMatch(
      /give its outside diameter/,
    );
    expect(pressedWhy({ survey, itself: false }, of(without), 'mm')).toMatch(/survey itself/);
  });
});

describe('a line of fewer points', () => {
  it('stays within its tolerance, and keeps corners and ends', () => {
    const way = Array.from({ length: 200 }, (_, i) => [i / 30, Math.sin(i / 30)] as const);
    const few = simplified(way, 0.01, 1);
    expect(few.length).toBeLessThan(30);
    expect([few[0], few.at(-1)]).toEqual([way[0], way.at(-1)]);
    for (const [x, y] of way) {
      const i = Math.max(
        1,
        few.findIndex(([fx]) => fx >= x),
      );
      const [[ax, ay], [bx, by]] = [few[i - 1]!, few[i]!];
      // Upright the distance is at most root two of that across a line of slope one.
      expect(Math.abs(ay + ((x - ax) / (bx - ax)) * (by - ay) - y)).toBeLessThan(0.01 * Math.SQRT2);
    }
  });
});
