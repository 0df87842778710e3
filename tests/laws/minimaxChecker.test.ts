/** The proof of an optimum passes what is known to be one, and can fail: on each thing it looks at. */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import { dot, squareTo, type Vector } from './generated.ts';
import type { Asked, Known } from './generatedMinimax.ts';
import { KINDS, made } from './minimaxKinds.ts';
import { type Claimed, faults, heightOf, seenFrom } from './optimum.ts';

/** The known answer as a fit would give it. */
function claimOf({ feature, point, direction, radius, halfAngle }: Asked, known: Known): Claimed {
  const { columns } = known;
  const rows = [...known.contacts].sort((a, b) => a.row - b.row);
  const mean = columns.map((c) => c.reduce((s, v) => s + v, 0) / c.length);
  const level = dot(mean, direction) - dot(point, direction);
  const around = (at: number): Claimed => ({
    ...(feature === 'circle'
      ? { center: point.slice(0, 2) }
      : { axis: { point: point.map((p, d) => p + at * direction[d]!), direction } }),
    ...(feature === 'cone' ? { halfAngle } : {}),
    diameter: 2 * (radius + at * Math.tan(halfAngle)),
    deviation: { min: 0, max: 0, range: 0 },
    contacts: rows.map(({ row }) => row),
    multipliers: rows.map(({ multiplier }) => multiplier),
  });
  return measured(columns, around(feature === 'circle' ? 0 : level));
}

/** With the deviations as they are about the claimed axis. */
function measured(columns: Float64Array[], claim: Claimed): Claimed {
  const angle = claim.halfAngle ?? 0;
  const all = seenFrom(columns, claim).map(
    (point) => heightOf(point, angle, []) - (claim.diameter / 2) * Math.cos(angle),
  );
  const [min, max] = [Math.min(...all), Math.max(...all)];
  return { ...claim, deviation: { min, max, range: max - min } };
}

/** Every direction is its own opposite; the fits point along the largest component. */
function upright(claim: Claimed): Claimed {
  if (claim.axis === undefined || claim.halfAngle !== undefined) return claim;
  const { point, direction } = claim.axis;
  const largest = Math.max(...direction.map(Math.abs));
  const sign = direction.includes(largest) ? 1 : -1;
  return { ...claim, axis: { point, direction: direction.map((v) => sign * v) } };
}

const near = KINDS.filter(({ off, twice, name }) => off === 1 && !twice && !/thousands/.test(name));

describe('the proof of an optimum', () => {
  it('passes the known answer of every kind of set', () => {
    expect(near.length).toBeGreaterThan(50);
    near.forEach((kind, seed) => {
      const random = seededRandom(seed);
      for (let set = 0; set < 3; set++) {
        const { asked, known } = made(random, kind);
        const found = faults(known.columns, kind.criterion, upright(claimOf(asked, known)));
        expect({ kind: `${kind.criterion}, ${kind.name}`, found }).toEqual({
          kind: `${kind.criterion}, ${kind.name}`,
          found: [],
        });
      }
    });
  });

  it('fails an axis that is 1e-9 mm off, though its deviations are told as they are', () => {
    each((random, { known, claim, criterion }) => {
      const off = 1e-9 * (random.uniform() < 0.5 ? -1 : 1);
      const shift = <T extends readonly number[]>(p: T) => p.map((v, d) => (d === 0 ? v + off : v));
      const moved: Claimed =
        claim.axis === undefined
          ? { ...claim, center: shift(claim.center!) }
          : { ...claim, axis: { ...claim.axis, point: shift(claim.axis.point) } };
      // Square to the axis at least in part.
      if (claim.axis !== undefined && Math.abs(claim.axis.direction[0]!) > 0.9) return 0;
      expect(faults(known.columns, criterion, measured(known.columns, moved))).not.toEqual([]);
      return 1;
    });
  });

  it('fails an axis that leans 1e-10', () => {
    each((_, { known, claim, criterion, asked }) => {
      if (claim.axis === undefined) return 0;
      const [first] = squareTo(claim.axis.direction as Vector);
      const direction = claim.axis.direction.map((v, d) => v + 1e-10 * first[d]!);
      const leant = { ...claim, axis: { ...claim.axis, direction } };
      if (asked.length < 0.5 * asked.radius) return 0;
      expect(faults(known.columns, criterion, measured(known.columns, leant))).not.toEqual([]);
      return 1;
    });
  });

  it('fails with a contact left out, one made up, weights changed about or a sign turned', () => {
    each((_, { known, claim, criterion }) => {
      const { contacts, multipliers } = claim;
      const spare = Array.from(known.columns[0]!, (__, i) => i).find((i) => !contacts.includes(i))!;
      const others = [...contacts.slice(1), spare].sort((a, b) => a - b);
      for (const wrong of [
        { contacts: contacts.slice(1), multipliers: multipliers.slice(1) },
        { contacts: others },
        { multipliers: multipliers.map((m, i) => (i < 2 ? m + (i - 0.5) * 2e-9 : m)) },
        { multipliers: multipliers.map((m) => -m) },
        { multipliers: multipliers.map((m) => m * (1 + 1e-9)) },
        { contacts: [...contacts].reverse(), multipliers: [...multipliers].reverse() },
        { diameter: claim.diameter + 1e-9 },
        { deviation: { ...claim.deviation, range: claim.deviation.range + 1e-9 } },
      ]) {
        expect(faults(known.columns, criterion, { ...claim, ...wrong })).not.toEqual([]);
      }
      return 1;
    });
  });

  it('fails the least-squares feature with the rows of its extremes given as a zone', () => {
    each((_, { known, claim, criterion, asked }) => {
      if (criterion !== 'minimum-zone' || asked.feature === 'cone') return 0;
      const [x, y, z] = known.columns as [Float64Array, Float64Array, Float64Array];
      const fit = asked.feature === 'circle' ? fitCircle(x, y) : fitCylinder(x, y, z);
      if (fit.status !== 'ok') throw new Error(fit.status);
      const middle = fit.deviation.min + fit.deviation.max;
      const zone = measured(known.columns, {
        ...claim,
        ...('axis' in fit ? { axis: fit.axis } : { center: fit.center }),
        diameter: fit.diameter + middle,
        contacts: [...fit.contacts].sort((a, b) => a - b),
        multipliers: fit.contacts[0] < fit.contacts[1] ? [-1, 1] : [1, -1],
      });
      expect(faults(known.columns, criterion, zone).join()).toMatch(/push/);
      expect(zone.deviation.range).toBeGreaterThan(known.range);
      return 1;
    });
  });

  it('fails a circle held across a diameter that could slip out sideways', () => {
    const columns = [Float64Array.from([1, -1, 0, 0]), Float64Array.from([0, 0, 2, -2])];
    const claim = measured(columns, {
      center: [0, 0],
      diameter: 2,
      deviation: { min: 0, max: 0, range: 0 },
      contacts: [0, 1],
      multipliers: [0.5, 0.5],
    });
    expect(faults(columns, 'maximum-inscribed', claim).join()).toMatch(/slip/);
    const around = measured(columns, { ...claim, diameter: 4, contacts: [2, 3] });
    expect(faults(columns, 'minimum-circumscribed', around)).toEqual([]);
  });
});

interface Case {
  asked: Asked;
  known: Known;
  claim: Claimed;
  criterion: (typeof KINDS)[number]['criterion'];
}

/** Two sets of every kind; counts those in which the trial had something to say. */
function each(trial: (random: Random, set: Case) => 0 | 1): void {
  let tried = 0;
  near.forEach((kind, seed) => {
    const random = seededRandom(seed);
    for (let set = 0; set < 2; set++) {
      const { asked, known } = made(random, kind);
      const claim = upright(claimOf(asked, known));
      tried += trial(random, { asked, known, claim, criterion: kind.criterion });
    }
  });
  expect(tried).toBeGreaterThan(20);
}
