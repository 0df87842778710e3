/** Lobes of a profile against certified, constructed and derived answers. */
import { describe, expect, it } from 'vitest';
import { fitLobes, fitWaves, lobeAliases } from '../../src/geometry/harmonics.ts';
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
