/** Straight axes through centers, and the least zone that holds them: made-up axes, independent searches, laws. */
import fc from 'fast-check';
import highs from 'highs';
import { describe, expect, it } from 'vitest';
import {
  axisThrough,
  type CenterAt,
  chanceAbove,
  straightnessZone,
} from '../../src/geometry/axisLine.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';

const LINE = { x: 0.3, y: -0.2, leanX: 0.002, leanY: -0.001 };

/** Centers about a known line; `scale` 0: exactly on it. Covariances differ from depth to depth. */
function centersOf(random: Random, count: number, scale: number): CenterAt[] {
  return Array.from({ length: count }, (_, i) => {
    const z = 5 + 8 * i + random.uniform();
    const [p, q, r] = [0.002, 0.001 * (random.uniform() - 0.5), 0.001 + 0.002 * random.uniform()];
    const [u, v] = [random.normal(), random.normal()];
    return {
      z,
      x: LINE.x + LINE.leanX * z + scale * p * u,
      y: LINE.y + LINE.leanY * z + scale * (q * u + r * v),
      xx: p * p,
      xy: p * q,
      yy: q * q + r * r,
    };
  });
}

function line(centers: readonly CenterAt[]) {
  const fit = axisThrough(centers);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return fit;
}

describe('a straight axis', () => {
  it('is found exactly', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const fit = line(centersOf(seededRandom(seed), 2 + (seed % 7), 0));
      for (const key of ['x', 'y', 'leanX', 'leanY'] as const) {
        expect(Math.abs(fit[key] - LINE[key]), key).toBeLessThan(1e-12);
      }
      expect(Math.max(...fit.distances)).toBeLessThan(1e-13);
    }
  });

  it('leans by as much as it says, and strays by chance as often as it says', () => {
    const surveys = 600;
    let square = 0;
    let unlikely = 0;
    for (let seed = 1; seed <= surveys; seed++) {
      const fit = line(centersOf(seededRandom(seed), 5, 1));
      const [dx, dy] = [fit.leanX - LINE.leanX, fit.leanY - LINE.leanY];
      const det = fit.leanXX * fit.leanYY - fit.leanXY ** 2;
      square += (dx * dx * fit.leanYY - 2 * dx * dy * fit.leanXY + dy * dy * fit.leanXX) / det;
      if (chanceAbove(fit.chiSquare, fit.spare) < 0.05) unlikely++;
    }
    // Chi-square of 2: mean 2, sd 2; four of 2 / sqrt 600.
    expect(Math.abs(square / surveys - 2)).toBeLessThan(8 / Math.sqrt(surveys));
    // 30 of 600, binomial sd 5.3; four of those.
    expect(Math.abs(unlikely - 30)).toBeLessThan(21.4);
  });

  it('turns, shifts and grows with the part', () => {
    fc.assert(
      fc.property(fc.integer(), fc.double({ min: 0, max: 6, noNaN: true }), (seed, by) => {
        const random = seededRandom(seed);
        const centers = centersOf(random, 6, 1).map((c) => ({ ...c, yy: c.xx, xy: 0 }));
        const [s, c] = [Math.sin(by), Math.cos(by)];
        const turned = centers.map((p) => ({
          ...p,
          z: p.z + 100,
          x: c * p.x - s * p.y + 1,
          y: s * p.x + c * p.y - 2,
        }));
        const [a, b] = [line(centers), line(turned)];
        expect(Math.abs(b.leanX - (c * a.leanX - s * a.leanY))).toBeLessThan(1e-13);
        expect(Math.abs(b.leanY - (s * a.leanX + c * a.leanY))).toBeLessThan(1e-13);
        // Distances of some 1e-3 from values of 3 mm: rounding of 1e-15, magnified by the depth's far-off zero.
        a.distances.forEach((d, i) => {
          expect(Math.abs(d - b.distances[i]!)).toBeLessThan(1e-12);
        });
        expect(Math.abs(straightnessZone(turned) / straightnessZone(centers) - 1)).toBeLessThan(
          3e-6,
        );
      }),
    );
  });

  it('needs two depths', () => {
    const [one] = centersOf(seededRandom(1), 1, 0);
    expect(axisThrough([])).toEqual({ status: 'too-few-depths', found: 0 });
    expect(axisThrough([one!, one!])).toEqual({ status: 'too-few-depths', found: 1 });
    expect(axisThrough([one!, { ...one!, z: 50, x: Number.NaN }])).toEqual({
      status: 'not-finite',
    });
  });
});

describe('the straightness zone', () => {
  it('of centers bent in one plane at even depths: the middle one lies half its sagitta off', () => {
    const centers = [-1, 0, 1].map((z) => ({ z, x: 0.02 * (1 - z * z), y: 0 }));
    expect(Math.abs(straightnessZone(centers) / 0.02 - 1)).toBeLessThan(2e-6);
    expect(straightnessZone(centers.slice(0, 2))).toBe(0);
    expect(straightnessZone([...centers, { z: 2, x: Number.NaN, y: 0 }])).toBeNaN();
    expect(straightnessZone([0, 1, 2, 3].map((z) => ({ z, x: 0.1 * z, y: 3 })))).toBeLessThan(
      1e-12,
    );
  });

  /*
   * The least half zone t as a linear programme: every center's distance in each of 90 directions is at most t. The
   * polygon lies between the circle and the circle drawn in by cos(pi / 90), so t <= zone / 2 <= t / cos(pi / 90), and the
   * line that the programme found bounds it from above as well.
   */
  it('is the least: against linear programmes, 60 seeded sets', async () => {
    const solver = await highs();
    const directions = Array.from({ length: 90 }, (_, k) => (2 * Math.PI * k) / 90);
    for (let seed = 1; seed <= 60; seed++) {
      const centers = centersOf(seededRandom(seed), 3 + (seed % 9), 5).map(({ x, y, z }) => ({
        x: 100 * (x - LINE.x - LINE.leanX * z),
        y: 100 * (y - LINE.y - LINE.leanY * z),
        z: (z - 40) / 40,
      }));
      const term = (v: number, name: string) =>
        `${v < 0 ? '-' : '+'} ${Math.abs(v).toFixed(12)} ${name}`;
      const rows = centers.flatMap(({ x, y, z }) =>
        directions.map((d) => {
          const [c, s] = [Math.cos(d), Math.sin(d)];
          const left = [term(c, 'p'), term(s, 'q'), term(c * z, 'u'), term(s * z, 'v')].join(' ');
          return `t ${left} >= ${(c * x + s * y).toFixed(12)}`;
        }),
      );
      const free = ['p', 'q', 'u', 'v'].map((name) => `${name} free`).join('\n');
      const model = `Minimize\n t\nSubject To\n${rows.join('\n')}\nBounds\n${free}\nEnd`;
      const solved = solver.solve(model);
      expect(solved.Status).toBe('Optimal');
      const half = straightnessZone(centers) / 2;
      // Both solvers end within a millionth.
      expect(half / solved.ObjectiveValue).toBeGreaterThan(1 - 2e-6);
      expect(half / solved.ObjectiveValue).toBeLessThan((1 + 2e-6) / Math.cos(Math.PI / 90));
    }
  });
});

it('chance above: Abramowitz and Stegun, table 26.8 (5 and 1 in 100)', () => {
  for (const [chi, spare, chance] of [
    [5.99146, 2, 0.05],
    [9.48773, 4, 0.05],
    [13.2767, 4, 0.01],
    [20.0902, 8, 0.01],
    [31.4104, 20, 0.05],
  ] as const) {
    // Six printed digits of chi-square: half a unit of the last moves the chance by 1e-6 at most.
    expect(Math.abs(chanceAbove(chi, spare) - chance)).toBeLessThan(1e-6);
  }
  expect(chanceAbove(0, 2)).toBe(1);
  expect(chanceAbove(3, 3)).toBeNaN();
  expect(chanceAbove(3, 0)).toBeNaN();
});
