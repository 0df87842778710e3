/** The moves of a cone are what the searches take them for; points that leave it open get a reason. */
import { describe, expect, it } from 'vitest';
import type { Cloud } from '../../src/geometry/cloud.ts';
import { fitCone } from '../../src/geometry/cone.ts';
import { type ConeWall, coneProblem, coneShape, coneThrough } from '../../src/geometry/coneWall.ts';
import { emptyBlock } from '../../src/num/normalEquations.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import { randomDirection, squareTo } from './generated.ts';

const TURN = 2 * Math.PI;
const MOVES = [0, 1, 2, 3, 4, 5];

/** A cone as a search may hold it, and points within a unit or so of the origin near its wall. */
function posed(random: Random, k: number, taper: number): { cone: ConeWall; cloud: Cloud } {
  const a = randomDirection(random);
  const [m, s] = squareTo(a);
  const p = [0, 0, 0].map(() => 0.1 * random.normal()) as unknown as ConeWall['p'];
  const columns = [0, 1, 2].map(() => new Float64Array(12));
  for (let i = 0; i < 12; i++) {
    const z = 0.6 * random.uniform() - 0.3;
    const turn = Math.min(k, 1) * (random.uniform() - 0.5) * TURN;
    const radius = 1 / k + z * Math.tan(taper) + 0.02 * random.normal();
    const out = radius * Math.cos(turn) - 1 / k;
    const side = radius * Math.sin(turn);
    columns.forEach((column, d) => {
      column[i] = p[d]! + z * a[d]! + out * m[d]! + side * s[d]!;
    });
  }
  const cloud: Cloud = { columns, count: 12, middle: [0, 0, 0], scale: 1, grain: 2e-16 };
  return { cone: { p, a, m, k, taper }, cloud };
}

describe('the six moves of a cone', () => {
  const random = seededRandom(31);
  for (const k of [0.01, 0.3, 1, 4]) {
    for (const taper of [0, 1e-3, -0.4, 1.2]) {
      const { cone, cloud } = posed(random, k, taper);
      const mean = [0.02, -0.03, 0.05];
      const problem = coneProblem(cloud, mean);
      const block = emptyBlock(6, 12);
      // So that a step of h turns or moves the wall by about h.
      const size = [1, 1, 1, k, k * k, k * k];
      const after = (moves: number[][]) => {
        const step = new Float64Array(6);
        for (const [j, h] of moves as [number, number][]) step[j]! += h * size[j]!;
        problem.rows(problem.move(cone, step), 0, 12, block);
        return block.residuals.slice();
      };

      it(`are told to first order by the columns: k ${k}, taper ${taper}`, () => {
        problem.rows(cone, 0, 12, block);
        const columns = block.columns.map((column) => column.slice());
        // Central differences: error h^2 times third derivatives of a few, rounding 1e-16 / h.
        const h = 1e-5;
        for (const j of MOVES) {
          const [up, down] = [after([[j, h]]), after([[j, -h]])];
          up.forEach((f, i) => {
            const slope = (f - down[i]!) / (2 * h * size[j]!);
            expect(Math.abs(slope - columns[j]![i]!) * size[j]!).toBeLessThan(1e-8);
          });
        }
      });

      it(`are smooth, so that second differences tell: k ${k}, taper ${taper}`, () => {
        const level = after([]);
        const bend = (i: number, j: number, h: number) => {
          const [pp, mm] = [
            after([
              [i, h],
              [j, h],
            ]),
            after([
              [i, -h],
              [j, -h],
            ]),
          ];
          const [pm, mp] = [
            after([
              [i, h],
              [j, -h],
            ]),
            after([
              [i, -h],
              [j, h],
            ]),
          ];
          return level.map((_, row) => (pp[row]! + mm[row]! - pm[row]! - mp[row]!) / (4 * h * h));
        };
        for (const i of MOVES) {
          for (const j of MOVES) {
            const [coarse, fine] = [bend(i, j, 2e-4), bend(i, j, 1e-4)];
            const least = Math.max(1, ...fine.map(Math.abs));
            // Halving a smooth step takes three quarters of an error of h^2 times fourth
            // derivatives; a kink would leave errors as large as the bend itself.
            fine.forEach((v, row) => {
              expect(Math.abs(v - coarse[row]!)).toBeLessThan(1e-3 * least);
            });
          }
        }
      });
    }
  }

  it('keep a cone the same when it is told anew by axis, radius and half-angle', () => {
    for (let set = 0; set < 50; set++) {
      const { cone, cloud } = posed(random, 0.3 + random.uniform(), 2 * random.uniform() - 1);
      const mean = [0.02, -0.03, 0.05];
      const shape = coneShape(cone, mean);
      const again = coneThrough(mean, shape, squareTo([...shape.direction])[0]);
      const [before, then] = [emptyBlock(6, 12), emptyBlock(6, 12)];
      coneProblem(cloud, mean).rows(cone, 0, 12, before);
      coneProblem(cloud, mean).rows(again, 0, 12, then);
      then.residuals.forEach((f, i) => {
        expect(Math.abs(f - before.residuals[i]!)).toBeLessThan(1e-13);
      });
    }
  });
});

interface Ring {
  count: number;
  turn: number;
  radius: number;
  length: number;
  noise: number;
  halfAngle: number;
}

/** Points scattered over a part of a cone, with noise square to the axis. */
function scattered(random: Random, { count, turn, radius, length, noise, halfAngle }: Ring) {
  const columns: [number[], number[], number[]] = [[], [], []];
  for (let i = 0; i < count; i++) {
    const t = turn * random.uniform();
    const z = length * (random.uniform() - 0.5);
    const r = radius + z * Math.tan(halfAngle) + noise * random.normal();
    columns[0].push(r * Math.cos(t));
    columns[1].push(r * Math.sin(t));
    columns[2].push(z);
  }
  return columns;
}

describe('a cone is refused', () => {
  const round = { count: 200, turn: TURN, radius: 25, length: 25, noise: 0.01, halfAngle: 0.05 };
  const statuses = (ring: Ring) => {
    const random = seededRandom(17);
    const found = Array.from({ length: 20 }, () => fitCone(...scattered(random, ring)).status);
    return [...new Set(found)].sort();
  };

  it('from fewer than six different points', () => {
    const [x, y, z] = scattered(seededRandom(1), { ...round, count: 5 });
    const refusal = { status: 'too-few-points', needed: 6, found: 5 };
    expect(fitCone(x, y, z)).toEqual(refusal);
    expect(fitCone([...x, ...x], [...y, ...y], [...z, ...z])).toEqual(refusal);
  });

  it('from a row that is not finite, and by lengths that differ', () => {
    const [x, y, z] = scattered(seededRandom(2), round);
    expect(() => fitCone(x, y, z.slice(1))).toThrow(RangeError);
    z[7] = Number.NaN;
    expect(fitCone(x, y, z)).toEqual({ status: 'not-finite', row: 7 });
  });

  it('from one line and from one ring', () => {
    const t = [0, 1, 2, 3, 4, 5, 6, 7];
    const line = fitCone(
      t,
      t.map((v) => 2 * v),
      t.map((v) => 1 - v),
    );
    expect(line.status).toBe('on-a-line');
    const ring = fitCone(
      t.map(Math.cos),
      t.map(Math.sin),
      t.map(() => 3),
    );
    expect(ring.status).toBe('in-a-plane');
  });

  it('from arcs too narrow for their noise', () => {
    expect(statuses({ ...round, turn: TURN / 18 })).toEqual(['ok']);
    expect(statuses({ ...round, turn: TURN / 18, noise: 0.1 })).toEqual(['arc-too-short']);
    expect(statuses({ ...round, turn: TURN / 72 })).toEqual(['arc-too-short']);
  });

  it('from a noisy disc, which is a cone opened flat, and from a noisy flat patch', () => {
    const random = seededRandom(6);
    const refusals = ['arc-too-short', 'did-not-converge', 'too-short-along-axis'];
    let refused = 0;
    for (let set = 0; set < 30; set++) {
      const [x, y] = scattered(random, { ...round, noise: 5 });
      const z = x.map(() => 0.01 * random.normal());
      if (refusals.includes(fitCone(x, y, z).status)) refused++;
      const spread = () => x.map(() => 50 * random.uniform());
      if (refusals.includes(fitCone(spread(), spread(), z).status)) refused++;
    }
    // 95 % by the normal distribution of a curvature of none; three standard errors of 60 tries.
    expect(refused / 60).toBeGreaterThan(0.95 - 0.085);
  });

  it('from a cloud with no wall in it', () => {
    const random = seededRandom(9);
    const some = () => Array.from({ length: 200 }, () => random.normal());
    expect(fitCone(some(), some(), some()).status).toBe('too-short-along-axis');
  });

  it('but not for a taper that is only noise: its half-angle is then near 0', () => {
    const random = seededRandom(10);
    for (let set = 0; set < 20; set++) {
      const fit = fitCone(...scattered(random, { ...round, halfAngle: 0 }));
      if (fit.status !== 'ok') throw new Error(fit.status);
      // Four standard errors of noise spread over 200 points, at the ends of 25 mm.
      const error = (0.01 / Math.sqrt(200)) * fit.conditioning;
      expect(fit.halfAngle).toBeLessThan((4 * error) / 12.5);
    }
  });
});
