/** Points that leave the answer open get a reason, never a number that looks fine. */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { failureInWords } from '../../src/geometry/ending.ts';
import { seededRandom } from '../../src/num/random.ts';

const TURN = 2 * Math.PI;
const range = (count: number) => Array.from({ length: count }, (_, i) => i);

describe('a circle is refused', () => {
  it('from fewer than three different points', () => {
    expect(fitCircle([], [])).toEqual({ status: 'too-few-points', needed: 3, found: 0 });
    expect(fitCircle([1], [2])).toEqual({ status: 'too-few-points', needed: 3, found: 1 });
    const twice = fitCircle([1, 1, 4, 4, 1], [2, 2, 5, 5, 2]);
    expect(twice).toEqual({ status: 'too-few-points', needed: 3, found: 2 });
  });

  it('from NaN and infinities, with the first row that has one', () => {
    expect(fitCircle([0, 1, 2, 3], [0, 1, Number.NaN, 0])).toEqual({
      status: 'not-finite',
      row: 2,
    });
    expect(fitCircle([0, Number.POSITIVE_INFINITY, 2], [Number.NaN, 1, 2])).toEqual({
      status: 'not-finite',
      row: 0,
    });
  });

  it('from a straight line in any direction, near or far', () => {
    const random = seededRandom(3);
    for (let set = 0; set < 200; set++) {
      const [x0, y0] = [1e5 * random.normal(), 1e5 * random.normal()];
      const turn = TURN * random.uniform();
      const along = range(12).map(() => 50 * random.normal());
      const fit = fitCircle(
        along.map((t) => x0 + t * Math.cos(turn)),
        along.map((t) => y0 + t * Math.sin(turn)),
      );
      expect(fit.status).toBe('on-a-line');
    }
  });

  it('from a line that is only noisy: its bend means nothing', () => {
    // Seen as circles, lines with noise pass the two-standard-error test by chance, rarely.
    const random = seededRandom(4);
    let refused = 0;
    for (let set = 0; set < 200; set++) {
      const x = range(20);
      const fit = fitCircle(
        x,
        x.map(() => 0.01 * random.normal()),
      );
      if (fit.status === 'arc-too-short') refused++;
    }
    // 95 % by the normal distribution, 94 % with 17 to spare; three standard errors of 200 tries.
    expect(refused / 200).toBeGreaterThan(0.94 - 0.05);
  });

  it('but three points bent by a thousand roundings are a circle', () => {
    const fit = fitCircle([0, 1, 2], [0, 0, 1e-12]);
    if (fit.status !== 'ok') throw new Error(fit.status);
    // The curvature is the second difference; that of rounded points is known to one in 1000.
    expect(fit.diameter / 2e12).toBeCloseTo(1, 2);
  });

  it('with lengths that differ: a mistake of the caller', () => {
    expect(() => fitCircle([1, 2, 3], [1, 2])).toThrow(RangeError);
  });
});

describe('a cylinder is refused', () => {
  const ring = (count: number, z: (i: number) => number, turn = TURN) => {
    const angle = range(count).map((i) => (i * turn) / count);
    return [
      angle.map((t) => 25 * Math.cos(t)),
      angle.map((t) => 25 * Math.sin(t)),
      range(count).map(z),
    ] as [number[], number[], number[]];
  };

  it('from fewer than five different points', () => {
    expect(fitCylinder([1, 2, 3], [0, 1, 0], [0, 0, 1])).toEqual({
      status: 'too-few-points',
      needed: 5,
      found: 3,
    });
    const [x, y, z] = ring(4, (i) => i);
    expect(fitCylinder([...x, ...x], [...y, ...y], [...z, ...z])).toEqual({
      status: 'too-few-points',
      needed: 5,
      found: 4,
    });
  });

  it('from one row with an infinity', () => {
    const [x, y, z] = ring(8, (i) => i);
    z[5] = Number.NEGATIVE_INFINITY;
    expect(fitCylinder(x, y, z)).toEqual({ status: 'not-finite', row: 5 });
  });

  it('from one line and from one ring', () => {
    const t = range(9);
    const line = fitCylinder(
      t,
      t.map((v) => 0.3 * v),
      t.map((v) => 5 - 0.7 * v),
    );
    expect(line.status).toBe('on-a-line');
    expect(fitCylinder(...ring(12, () => 3)).status).toBe('in-a-plane');
    const [x, y] = ring(12, () => 0);
    const leaning = x.map((v, i) => 0.1 * v - 0.4 * y[i]! + 7);
    expect(fitCylinder(x, y, leaning).status).toBe('in-a-plane');
  });

  it('from rings so thin that noise decides where the axis leans', () => {
    const random = seededRandom(5);
    const found = new Set<string>();
    for (let set = 0; set < 40; set++) {
      const [x, y, z] = ring(16, () => 0.05 * random.normal());
      const out = x.map(() => 1 + 0.01 * random.normal());
      const fit = fitCylinder(
        x.map((v, i) => v * out[i]!),
        y.map((v, i) => v * out[i]!),
        z,
      );
      found.add(fit.status);
    }
    // A wall as flat as the ring itself may fit better still: then there is no bend to speak of.
    expect([...found].sort()).toEqual(['arc-too-short', 'too-short-along-axis']);
  });

  it('from a noisy flat patch', () => {
    const random = seededRandom(6);
    const spread = () => range(200).map(() => 50 * random.uniform());
    const z = range(200).map(() => 0.01 * random.normal());
    const fit = fitCylinder(spread(), spread(), z);
    expect(['arc-too-short', 'too-short-along-axis', 'did-not-converge']).toContain(fit.status);
  });
});

describe('every reason is one sentence', () => {
  const failures = [
    { status: 'too-few-points', needed: 5, found: 1 },
    { status: 'too-few-points', needed: 5, found: 0 },
    { status: 'on-a-line' },
    { status: 'in-a-plane' },
    { status: 'arc-too-short' },
    { status: 'too-short-along-axis' },
    { status: 'not-finite', row: 3 },
    { status: 'did-not-converge', iterations: 500 },
  ] as const;

  for (const failure of failures) {
    it(failure.status, () => {
      const words = failureInWords(failure, 'cylinder');
      expect(words).toMatch(/^[a-z][^.\n]{20,}$/);
      if ('found' in failure) expect(words).toContain(`${failure.found}`);
      if ('row' in failure) expect(words).toContain('row 3');
    });
  }
});
