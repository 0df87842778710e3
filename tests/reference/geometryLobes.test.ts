/** Lobes of a profile against certified, constructed and derived answers. */
import { describe, expect, it } from 'vitest';
import { fitLobes, fitWaves, lobeAliases } from '../../src/geometry/harmonics.ts';
import { seededRandom } from '../../src/num/random.ts';
import enso from './data/enso.json' with { type: 'json' };

function even(count: number): number[] {
  return Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
}

function solved(theta: number[], r: number[], order: number) {
  const fit = fitLobes(theta, r, order);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return fit;
}

it('STRD-ENSO: three certified periods held fixed, amplitudes to 1e-8', () => {
  const { points, expected } = enso;
  expect(points).toHaveLength(168);
  const fit = fitWaves(
    points.map((_, i) => i + 1),
    points,
    expected.period.map((period) => (2 * Math.PI) / period),
  );
  if (fit.status !== 'ok') throw new Error(fit.status);
  const near = (value: number, certified: number) =>
    expect(Math.abs(value / certified - 1)).toBeLessThan(expected.rel_tolerance);
  near(fit.mean, expected.mean);
  fit.waves.forEach((wave, i) => {
    near(wave.cosine, expected.cos[i]!);
    near(wave.sine, expected.sin[i]!);
  });
  near(fit.sumSquares, expected.rss);
  // Certified with the three periods counted as unknowns too: 159 to spare, not 161.
  near(fit.residualSd * Math.sqrt(161 / 159), expected.residual_sd);
});

// Undulations per revolution as defined in ISO 12181-1:2011; figures derived.
describe('HARMONIC-EXACT: R = 50 with lobes 1, 2, 3 and 5', () => {
  const lobes = [
    { n: 1, amplitude: 0.15, degrees: 20 },
    { n: 2, amplitude: 0.02, degrees: 60 },
    { n: 3, amplitude: 0.008, degrees: 30 },
    { n: 5, amplitude: 0.003, degrees: 0 },
  ];
  const radius = (t: number) =>
    lobes.reduce((r, l) => r + l.amplitude * Math.cos(l.n * t - (l.degrees * Math.PI) / 180), 50);
  const uneven = Array.from({ length: 24 }, (_, i) => i ** 1.1 * 0.21);

  for (const [name, theta] of [
    ['24 even angles', even(24)],
    ['24 uneven angles', uneven],
  ] as const) {
    it(`recovers every amplitude and phase from ${name}`, () => {
      const fit = solved(theta, theta.map(radius), 6);
      expect(Math.abs(fit.mean - 50)).toBeLessThan(1e-12);
      for (const { frequency, amplitude, phase } of fit.waves) {
        const lobe = lobes.find((l) => l.n === frequency);
        // Readings of 50 mm round by 4e-15 mm; the uneven angles magnify that some tens of times.
        expect(Math.abs(amplitude - (lobe?.amplitude ?? 0))).toBeLessThan(1e-12);
        if (lobe) {
          const off = phase - (lobe.degrees * Math.PI) / 180;
          expect(Math.abs(off) * amplitude).toBeLessThan(1e-12);
        }
      }
      expect(fit.residualSd).toBeLessThan(1e-12);
    });
  }

  it('has the condition number of a square design at even angles', () => {
    expect(solved(even(24), even(24).map(radius), 6).conditioning).toBeCloseTo(1, 12);
    expect(solved(uneven, uneven.map(radius), 6).conditioning).toBeGreaterThan(1.1);
  });

  it('diameters see the even lobe alone: they span 0.080 across', () => {
    const theta = even(24);
    const across = theta.map((t) => radius(t) + radius(t + Math.PI));
    const fit = solved(theta, across, 6);
    for (const { frequency, amplitude } of fit.waves) {
      expect(Math.abs(amplitude - (frequency === 2 ? 0.04 : 0))).toBeLessThan(1e-12);
    }
    const fine = even(3600).map((t) => radius(t) + radius(t + Math.PI));
    // A crest may fall half a step of 0.1 degree beside a reading: 0.08 (2 * 0.05 deg)^2 / 2.
    expect(Math.abs(Math.max(...fine) - Math.min(...fine) - 0.08)).toBeLessThan(2.5e-7);
  });
});

// D. G. Chetwynd, Precision Engineering 1(3), 1979, 137-141; figures derived.
it('LIMACON: off-center by e, a true circle shows -e^2/4R of size and e^2/4R of oval', () => {
  const radius = 50;
  const off = 0.5;
  const theta = even(360);
  const r = theta.map((t) => off * Math.cos(t) + Math.sqrt(radius ** 2 - (off * Math.sin(t)) ** 2));
  const fit = solved(theta, r, 2);
  expect(Math.abs(fit.mean - radius + 0.00125002344)).toBeLessThan(1e-9);
  expect(Math.abs(fit.waves[0]!.amplitude - off)).toBeLessThan(1e-9);
  expect(Math.abs(fit.waves[1]!.amplitude - 0.00125003126)).toBeLessThan(1e-9);
  const rest = r.map((v, i) => v - off * Math.cos(theta[i]!));
  expect(Math.abs(Math.max(...rest) - Math.min(...rest) - 0.0025000625)).toBeLessThan(1e-9);
});

// NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.4.4.
it('NIST-HANDBOOK-LSC: at even angles R = mean r, a = 2/N sum r cos t, b = 2/N sum r sin t', () => {
  const theta = even(9);
  const r = [25.01, 25.03, 24.98, 25.0, 25.02, 24.97, 24.99, 25.04, 25.01];
  const fit = solved(theta, r, 1);
  const sum = (f: (t: number) => number) => theta.reduce((s, t, i) => s + r[i]! * f(t), 0);
  expect(fit.mean).toBeCloseTo(sum(() => 1) / 9, 12);
  expect(fit.waves[0]!.cosine).toBeCloseTo((2 / 9) * sum(Math.cos), 12);
  expect(fit.waves[0]!.sine).toBeCloseTo((2 / 9) * sum(Math.sin), 12);
});

// The sampling theorem: N even readings cannot tell n from N - n.
describe('ALIASING', () => {
  for (const [count, lobe] of [
    [7, 6],
    [8, 7],
    [8, 9],
    [12, 11],
  ] as const) {
    it(`${lobe} lobes at ${count} even angles pass for a shift of the center`, () => {
      const theta = even(count);
      const fit = solved(
        theta,
        theta.map((t) => 50 + Math.cos(lobe * t)),
        1,
      );
      expect(Math.abs(fit.waves[0]!.amplitude - 1)).toBeLessThan(1e-12);
      expect(Math.sqrt(fit.sumSquares)).toBeLessThan(1e-12);
    });
  }

  it('names them: 8 even angles and lobes up to 2', () => {
    const named = lobeAliases(even(8), 2, 10).map(({ lobe, seenAs }) => [
      lobe,
      seenAs.map(({ n, gain }) => [n, Math.round(gain * 1e9) / 1e9]),
    ]);
    expect(named).toEqual([
      [6, [[2, 1]]],
      [7, [[1, 1]]],
      [8, [[0, 1]]],
      [9, [[1, 1]]],
      [10, [[2, 1]]],
    ]);
  });

  it('at uneven angles a lobe leaks into several', () => {
    const theta = [0, 0.5, 1.1, 2.4, 3.0, 4.2, 5.5];
    const third = lobeAliases(theta, 2, 3)[0]!;
    expect(third.lobe).toBe(3);
    expect(third.seenAs.length).toBeGreaterThan(1);
    const fit = solved(
      theta,
      theta.map((t) => Math.cos(3 * t)),
      2,
    );
    for (const { n, gain } of third.seenAs) {
      const seen = n === 0 ? Math.abs(fit.mean) : fit.waves[n - 1]!.amplitude;
      expect(seen).toBeLessThanOrEqual(gain * (1 + 1e-12));
    }
  });
});

describe('too few angles', () => {
  it('says how many different ones there are', () => {
    expect(fitLobes([0, 1, 2, 2 + 2 * Math.PI], [1, 1, 1, 1], 2)).toEqual({
      status: 'too-few-angles',
      needed: 5,
      found: 3,
    });
    expect(fitLobes([], [], 0)).toEqual({ status: 'too-few-angles', needed: 1, found: 0 });
  });

  it('says when enough angles lie too close together', () => {
    const theta = Array.from({ length: 9 }, (_, i) => i * 1e-6);
    expect(fitLobes(theta, theta, 4)).toEqual({ status: 'angles-cannot-tell' });
    expect(fitLobes([0, 1, 2], [1, Number.POSITIVE_INFINITY, 1], 1).status).toBe('not-finite');
    expect(fitLobes([0, Number.NaN, 2], [1, 1, 1], 1).status).toBe('not-finite');
  });
});

describe('standard deviations', () => {
  const theta = even(12);
  const truth = (t: number) => 50 + 0.03 * Math.cos(2 * t - 1) + 0.002 * Math.cos(3 * t);

  it('at N even angles a lobe is known to sd sqrt(2 / N), a phase to that over the amplitude', () => {
    const sd = theta.map(() => 0.004);
    const fit = fitLobes(theta, theta.map(truth), 3, sd);
    if (fit.status !== 'ok') throw new Error(fit.status);
    const each = 0.004 * Math.sqrt(2 / 12);
    const [, second, third] = fit.waves;
    expect(Math.abs(second!.amplitudeSd / each - 1)).toBeLessThan(1e-12);
    expect(Math.abs(second!.phaseSd / (each / 0.03) - 1)).toBeLessThan(1e-12);
    // 0.002 is not 3 times 0.0016: it points nowhere.
    expect(Math.abs(third!.amplitudeSd / each - 1)).toBeLessThan(1e-12);
    expect(third!.phaseSd).toBeNaN();
    expect(fit.spare).toBe(5);
    expect(Math.abs(fit.covariance[0]! / (0.004 ** 2 / 12) - 1)).toBeLessThan(1e-12);
  });

  it('from the scatter, and from the stated figure, hold the truth as often as they say', () => {
    // 400 surveys at 12 uneven angles: each z should have a standard deviation of 1. With 400 of them that is met to
    // 1 / sqrt 800 = 3.5 %; four of those. From the scatter z follows Student's t of 5, sd sqrt(5 / 3); its fourth
    // moment makes the sample's sd good to sqrt((9 - 1) / 4 / 400) = 7 %: four of those.
    const random = seededRandom(11);
    const uneven = theta.map((t) => t + 0.15 * random.normal());
    const sd = theta.map((_, i) => (i % 2 ? 0.002 : 0.004));
    const z = { stated: [0, 0], scatter: [0, 0] };
    const add = (to: number[], fit: ReturnType<typeof fitLobes>) => {
      if (fit.status !== 'ok') throw new Error(fit.status);
      const { amplitude, amplitudeSd, phase, phaseSd } = fit.waves[1]!;
      to[0]! += ((amplitude - 0.03) / amplitudeSd) ** 2;
      to[1]! += ((phase - 1) / phaseSd) ** 2;
    };
    for (let k = 0; k < 400; k++) {
      const noise = theta.map(() => random.normal());
      const read = (each: (i: number) => number) =>
        uneven.map((t, i) => truth(t) + each(i) * noise[i]!);
      add(
        z.stated,
        fitLobes(
          uneven,
          read((i) => sd[i]!),
          3,
          sd,
        ),
      );
      add(
        z.scatter,
        fitLobes(
          uneven,
          read(() => 0.002),
          3,
        ),
      );
    }
    for (const sum of z.stated) expect(Math.abs(Math.sqrt(sum / 400) - 1)).toBeLessThan(0.14);
    for (const sum of z.scatter) {
      expect(Math.abs(Math.sqrt(sum / 400 / (5 / 3)) - 1)).toBeLessThan(0.28);
    }
  });

  it('are not known where no reading is left over and none is stated', () => {
    const fit = solved(even(5), even(5).map(truth), 2);
    expect(fit.waves.map((wave) => [wave.amplitudeSd, wave.phaseSd])).toEqual([
      [Number.NaN, Number.NaN],
      [Number.NaN, Number.NaN],
    ]);
    expect(fit.covariance.every(Number.isNaN)).toBe(true);
    expect(() => fitLobes([0, 1, 2], [1, 1, 1], 1, [1])).toThrow(RangeError);
  });

  it('equal stated figures change no answer, and are what the readings are off by', () => {
    const r = theta.map((t, i) => truth(t) + 0.001 * ((i * 7) % 5));
    const plain = solved(theta, r, 2);
    const stated = fitLobes(
      theta,
      r,
      2,
      theta.map(() => 0.01),
    );
    if (stated.status !== 'ok') throw new Error(stated.status);
    expect(stated.waves[1]!.amplitude).toBeCloseTo(plain.waves[1]!.amplitude, 13);
    expect(stated.sumSquares).toBeCloseTo(plain.sumSquares, 13);
    expect(stated.chiSquare).toBeCloseTo(plain.sumSquares / 1e-4, 9);
    expect(plain.chiSquare).toBeNaN();
  });
});
