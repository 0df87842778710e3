/** Very many points take a quicker way, which must come to the same as the usual one. */
import { describe, expect, it } from 'vitest';
import { cylinderOfSample, fitCylinder } from '../../src/geometry/cylinder.ts';
import { readSolid, type Solid } from '../../src/geometry/solid.ts';
import { type Wall, wallDeviations, wallProblem } from '../../src/geometry/wall.ts';
import { wallOfAll } from '../../src/geometry/wallOfAll.ts';
import { wallSums } from '../../src/geometry/wallSums.ts';
import { gaussNewton } from '../../src/num/gaussNewton.ts';
import {
  addBlock,
  BLOCK_ROWS,
  changeOf,
  dampedStep,
  emptyBlock,
  emptyNormal,
} from '../../src/num/normalEquations.ts';
import { seededRandom } from '../../src/num/random.ts';
import { randomDirection, squareTo } from './generated.ts';

const TURN = 2 * Math.PI;

interface Scan {
  count: number;
  seed: number;
  oval: number;
  noise: number;
  turn?: number;
  off?: number;
  length?: number;
}

/** A worn bore of radius 32.5 mm, scanned at random. */
function scan({ count, seed, oval, noise, turn = TURN, off = 10, length = 60 }: Scan) {
  const random = seededRandom(seed);
  const direction = randomDirection(random);
  const [first, second] = squareTo(direction);
  const point = [0, 0, 0].map(() => off * random.normal());
  const columns = [0, 1, 2].map(() => new Float64Array(count));
  for (let i = 0; i < count; i++) {
    const t = turn * random.uniform();
    const z = length * (random.uniform() - 0.5);
    const r = 32.5 + oval * Math.cos(2 * t) * (0.5 + z / length) + noise * random.normal();
    for (let d = 0; d < 3; d++) {
      const across = r * (Math.cos(t) * first[d]! + Math.sin(t) * second[d]!);
      columns[d]![i] = point[d]! + z * direction[d]! + across;
    }
  }
  return columns as [Float64Array, Float64Array, Float64Array];
}

function solidOf(columns: [Float64Array, Float64Array, Float64Array]): Solid {
  const solid = readSolid(columns, 5);
  if ('status' in solid) throw new Error(solid.status);
  return solid;
}

/** The normal equations of all points, from the columns written out. */
function normalOf({ cloud, mean }: Solid, wall: Wall) {
  const problem = wallProblem(cloud, mean);
  const block = emptyBlock(5, BLOCK_ROWS);
  const normal = emptyNormal(5);
  for (let from = 0; from < cloud.count; from += BLOCK_ROWS) {
    const to = Math.min(from + BLOCK_ROWS, cloud.count);
    problem.rows(wall, from, to, block);
    addBlock(normal, block, to - from);
  }
  return normal;
}

const SCANS: Record<string, Scan> = {
  'a worn bore': { count: 20_000, seed: 1, oval: 0.1, noise: 0.01 },
  'far from the origin': { count: 20_001, seed: 2, oval: 0.05, noise: 0.02, off: 1e7 },
  'an exact cylinder': { count: 10_000, seed: 3, oval: 0, noise: 0 },
  'half a turn': { count: 30_000, seed: 4, oval: 0.05, noise: 0.01, turn: TURN / 2 },
  'an arc of 15 degrees': { count: 20_000, seed: 10, oval: 0, noise: 1e-3, turn: TURN / 24 },
  'long and thin': { count: 10_000, seed: 5, oval: 0.02, noise: 0.01, length: 600 },
  'short and wide': { count: 10_000, seed: 6, oval: 0.01, noise: 0.002, length: 8 },
  'deep wear': { count: 20_000, seed: 7, oval: 2, noise: 0.2 },
  'points enough for a step between': { count: 150_000, seed: 8, oval: 0.1, noise: 0.01 },
};

describe('the quick sums of a wall', () => {
  for (const [name, asked] of Object.entries(SCANS)) {
    it(`are those of its columns: ${name}`, () => {
      const solid = solidOf(scan(asked));
      const wall = cylinderOfSample(solid).state;
      const { normal, lows, highs, reach, level } = wallSums(solid.cloud, wall, true);
      const usual = normalOf(solid, wall);
      const { cloud } = solid;
      // Columns are about 1, 1 / k and 1 / k^2 long; sums of n terms round by less than n units.
      const unit = [1, reach, 1 / wall.k, reach / wall.k, 2 / wall.k ** 2];
      const near = 8 * cloud.count * Number.EPSILON;
      for (let i = 0; i < 5; i++) {
        for (let j = 0; j <= i; j++) {
          const gap = Math.abs(normal.matrix[i * 5 + j]! - usual.matrix[i * 5 + j]!);
          expect(gap).toBeLessThan(near * unit[i]! * unit[j]!);
        }
        const largest = Math.max(...highs, -Math.min(...lows));
        const gap = Math.abs(normal.gradient[i]! - usual.gradient[i]!);
        expect(gap).toBeLessThan(near * unit[i]! * Math.max(largest, 1));
      }
      const squares = Math.abs(normal.sumSquares - usual.sumSquares);
      expect(squares).toBeLessThan(
        1e-9 * usual.sumSquares + cloud.count * (16 * Number.EPSILON) ** 2,
      );
      const seen = wallDeviations(cloud, wall);
      expect(Math.abs(Math.min(...lows) - seen.low)).toBeLessThan(16 * Number.EPSILON);
      expect(Math.abs(Math.max(...highs) - seen.high)).toBeLessThan(16 * Number.EPSILON);
      expect(Math.abs(reach - seen.reach)).toBeLessThan(16 * Number.EPSILON);
      expect(Math.abs(level)).toBeLessThan(reach);
      expect(wallSums(cloud, wall, false).normal.gradient).toEqual(normal.gradient);
    });
  }
});

describe('the quick way to the wall of very many points', () => {
  for (const [name, asked] of Object.entries(SCANS)) {
    it(`ends where the usual search does, with nothing left to gain: ${name}`, () => {
      const solid = solidOf(scan(asked));
      const { cloud, sample, mean } = solid;
      const coarse = cylinderOfSample(solid);
      const quick = wallOfAll(cloud, sample, coarse, mean);
      expect(quick).not.toBeNull();
      const { state, normal } = quick!.solution;
      const left = normalOf(solid, state);
      // A Newton step by the plain matrix of all points is what the search would go on with: no
      // more than twice what it may leave, and where points are far off, what rounding makes of
      // them, which shrinks as the square root of their number.
      const rest = changeOf(left, dampedStep(left, 0)!, cloud.count);
      const rounded = (4 * cloud.grain) / Math.sqrt(cloud.count);
      expect(rest).toBeLessThan(128 * Number.EPSILON + rounded);
      const usual = gaussNewton(wallProblem(cloud, mean), coarse.state, {
        maxIterations: 100,
        noise: Number.EPSILON,
        damping: 0,
      });
      expect(usual.ending).toBe('converged');
      expect(Math.abs(usual.state.k / state.k - 1)).toBeLessThan(1e-12 + 100 * rounded);
      expect(left.sumSquares).toBeLessThanOrEqual(usual.normal.sumSquares * (1 + 1e-11) + 1e-24);
      // Summed where the sample ended, within a fiftieth of the deviations of the end itself.
      const nearby = 0.02 + (asked.oval + asked.noise) / 32.5;
      for (let i = 0; i < 25; i += 6) {
        expect(Math.abs(normal.matrix[i]! / left.matrix[i]! - 1)).toBeLessThan(nearby);
      }
    });
  }

  it('finds the extremes among all rows, though it looks where the last pass saw them', () => {
    for (const asked of [SCANS['a worn bore']!, SCANS['an exact cylinder']!, SCANS['deep wear']!]) {
      const columns = scan(asked);
      const fit = fitCylinder(...columns);
      if (fit.status !== 'ok') throw new Error(fit.status);
      const { point, direction } = fit.axis;
      const all = Array.from(columns[0], (_, row) => {
        const q = columns.map((column, d) => column[row]! - point[d]!);
        const along = q.reduce((s, v, d) => s + v * direction[d]!, 0);
        return Math.hypot(...q.map((v, d) => v - along * direction[d]!)) - fit.diameter / 2;
      });
      const [low, high] = [Math.min(...all), Math.max(...all)];
      expect(Math.abs(fit.deviation.min - low)).toBeLessThan(1e-12);
      expect(Math.abs(fit.deviation.max - high)).toBeLessThan(1e-12);
      expect(all[fit.contacts[0]]! - low).toBeLessThan(1e-12);
      expect(high - all[fit.contacts[1]]!).toBeLessThan(1e-12);
      // Level with the mean of the points.
      const mean = columns.map((column) => column.reduce((s, v) => s + v, 0) / column.length);
      const off = mean.reduce((s, v, d) => s + (v - point[d]!) * direction[d]!, 0);
      expect(Math.abs(off)).toBeLessThan(1e-10);
    }
  });

  it('leaves nearly flat walls to the usual search', () => {
    const columns = scan({
      count: 10_000,
      seed: 9,
      oval: 0,
      noise: 1e-4,
      turn: TURN / 24,
      length: 5,
    });
    const solid = solidOf(columns);
    const coarse = cylinderOfSample(solid);
    expect(coarse.ending).toBe('converged');
    expect(wallOfAll(solid.cloud, solid.sample, coarse, solid.mean)).toBeNull();
    expect(fitCylinder(...columns).status).toBe('ok');
  });
});
