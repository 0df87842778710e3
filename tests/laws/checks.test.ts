/**
 * Bad readings: slips made on purpose in simulated surveys are found and named, and sound surveys are left alone.
 *
 * Bores of 25 to 150 mm, 4 to 12 clock pairs by 3 to 8 depths, telescoping gauge 0.010 mm and dial bore gauge 0.004 mm
 * (1 sd), typed in inches or millimetres: see tests/fixtures/slips.ts. A slip is large where it passes six standard
 * deviations of the leave-one-out prediction that the same survey has without it.
 */
import { describe, expect, it } from 'vitest';
import { design } from '../../src/bore/design.ts';
import { ownInformation, standOffs } from '../../src/bore/leaveOneOut.ts';
import { condition } from '../../src/bore/posterior.ts';
import { learnSmoothness } from '../../src/bore/smoothness.ts';
import type { Check, Sighting } from '../../src/bore/types.ts';
import { surveyFacts } from '../../src/job/facts.ts';
import { setReading } from '../../src/job/readingEdits.ts';
import type { Job } from '../../src/job/schema.ts';
import { MM_PER_INCH } from '../../src/job/units.ts';
import { placesOn, read } from '../../src/practice/simulate.ts';
import { oval, wornBore } from '../../src/practice/wear.ts';
import { clocks, depthsWithin } from '../fixtures/bores.ts';
import { checksOf, jobWith, type Survey, surveyOf, typed } from '../fixtures/slips.ts';

const MM = { in: MM_PER_INCH, mm: 1 } as const;
const DECIMALS = { in: 4, mm: 3 } as const;

function sightingsOf(s: Survey): Sighting[] {
  return s.places.map((place, row) => ({
    ...place,
    row,
    instrument: 'two-point',
    value: s.values[row]!,
    sd: s.noise,
    sdStated: true,
    setup: -1,
  }));
}

/** One standard deviation of what the others predict of a row of the sound survey, noise included. */
function predictionSd(s: Survey, row: number): number {
  const d = design(sightingsOf(s), [], s.length);
  const p = condition(d, learnSmoothness(d, s.radius), s.radius)!;
  return standOffs(p, ownInformation(p)).find(({ at }) => at === row)!.sd;
}

interface Slip {
  readonly kind: string;
  readonly said: RegExp;
  /** Place among the gauges of the fixture: the screw, or the dial. */
  readonly gauge?: number;
  /** True where the reading as meant follows from what was typed. */
  readonly fixed: boolean;
  made(s: Survey, row: number): string;
}

const moved = (s: Survey, row: number, by: number) =>
  (Number(typed(s, s.values[row]!)) + by).toFixed(DECIMALS[s.units]);
const eitherWay = (s: Survey) => (s.random.uniform() < 0.5 ? -1 : 1);

function swapped(s: Survey, row: number): string {
  const letters = [...typed(s, s.values[row]!)];
  const places = letters.flatMap((c, at) => (/\d/.test(c) ? [at] : []));
  const pairs = places.slice(1).map((b, k) => [places[k]!, b] as const);
  const different = pairs.filter(([a, b]) => letters[a] !== letters[b]);
  const [a, b] = different[Math.floor(different.length * s.random.uniform())]!;
  [letters[a], letters[b]] = [letters[b]!, letters[a]!];
  return letters.join('');
}

const SLIPS: readonly Slip[] = [
  {
    kind: 'micrometer turn',
    said: /^one micrometer turn/,
    gauge: 0,
    fixed: true,
    made: (s, row) => moved(s, row, eitherWay(s) * (s.units === 'in' ? 0.025 : 0.5)),
  },
  {
    kind: 'dial turn',
    said: /^one dial turn/,
    gauge: 1,
    fixed: true,
    made: (s, row) => moved(s, row, eitherWay(s) * (s.units === 'in' ? 0.1 : 1)),
  },
  { kind: 'digits swapped', said: /^two digits swapped/, fixed: true, made: swapped },
  {
    kind: 'other unit',
    said: /^(inches typed as millimetres|millimetres typed as inches)$/,
    fixed: true,
    made: (s, row) =>
      s.units === 'in' ? s.values[row]!.toFixed(3) : (s.values[row]! / MM_PER_INCH).toFixed(4),
  },
  {
    kind: 'radius for diameter',
    said: /^the radius typed for the diameter/,
    fixed: true,
    made: (s, row) => typed(s, s.values[row]! / 2),
  },
  {
    kind: 'burr',
    said: /^a burr or dirt/,
    fixed: false,
    made: (s, row) => typed(s, s.values[row]! - 0.08 - 0.32 * s.random.uniform()),
  },
  {
    // A gauge tilted by a reads 1 / cos a too large: 0.06 to 0.4 % at 2 to 5 degrees.
    kind: 'not rocked',
    said: /^the gauge not rocked/,
    fixed: false,
    made: (s, row) =>
      typed(s, s.values[row]! / Math.cos(((2 + 3 * s.random.uniform()) * Math.PI) / 180)),
  },
];

interface Tried {
  readonly slip: Slip;
  readonly survey: Survey;
  readonly row: number;
  readonly large: boolean;
  readonly checks: readonly Check[];
}

/** One slip in each of 140 surveys, seeds 1 to 140. */
const tried = Array.from({ length: 140 }, (_, i): Tried => {
  const slip = SLIPS[i % SLIPS.length]!;
  const survey = surveyOf(1 + i, slip.gauge);
  const row = Math.floor(survey.places.length * survey.random.uniform());
  const text = slip.made(survey, row);
  const error = Number(text) * MM[survey.units] - survey.values[row]!;
  return {
    slip,
    survey,
    row,
    large: Math.abs(error) > 6 * predictionSd(survey, row),
    checks: checksOf(jobWith(survey, new Map([[row, text]]))),
  };
});
const large = tried.filter((one) => one.large);
const checkOf = ({ checks, row }: Tried) => checks.find((check) => check.row === row);
const told = (list: readonly Tried[]) =>
  list
    .map((one) => `${one.slip.kind}, seed ${one.survey.seed}: ${checkOf(one)?.slip ?? 'not found'}`)
    .join('; ');

function meantValue(job: Job, row: number): number {
  const feature = job.features[0]!;
  const { readings } = surveyFacts(job, feature, feature.surveys[0]!);
  return readings.find((one) => one.row === row)!.value;
}

describe('one slip in a survey, 140 surveys of seven kinds, seeds 1 to 140', () => {
  it('95 of 100 large slips are found', () => {
    expect(large.length).toBeGreaterThan(110);
    const missed = large.filter((one) => checkOf(one) === undefined);
    expect(missed.length, told(missed)).toBeLessThanOrEqual(0.05 * large.length);
  });

  it.each(SLIPS.map((slip) => slip.kind))('%s: nine of ten found are called so', (kind) => {
    const found = large.filter((one) => one.slip.kind === kind && checkOf(one) !== undefined);
    expect(found.length).toBeGreaterThan(10);
    const wrong = found.filter((one) => !one.slip.said.test(checkOf(one)!.slip));
    expect(wrong.length, told(wrong)).toBeLessThanOrEqual(0.1 * found.length);
  });

  it('what is offered is the reading as it was, to the last digit typed; none is offered where only a retake helps', () => {
    for (const one of large) {
      const check = checkOf(one);
      if (check === undefined || !one.slip.said.test(check.slip)) continue;
      if (!one.slip.fixed) {
        expect(check.suggested).toBeNull();
        continue;
      }
      const { survey, row } = one;
      const unit = survey.units;
      const text = check.suggested!;
      const job = setReading(jobWith(survey), 'b', 's', `r${row}`, { value: { text, unit } });
      const value = meantValue(job, row);
      // Half a last digit; a radius has it twice, and so has a reading typed in the other unit with its own digits.
      const digit = 10 ** -DECIMALS[unit] * MM[unit];
      expect(Math.abs(value - survey.values[row]!), `seed ${survey.seed}: ${text}`).toBeLessThan(
        1.01 * Math.max(digit, 0.5e-4 * MM_PER_INCH),
      );
    }
  });

  it('the other readings are left alone in 98 of 100 of these surveys', () => {
    const more = tried.filter(({ checks, row }) => checks.some((check) => check.row !== row));
    expect(more.length, told(more)).toBeLessThanOrEqual(0.02 * tried.length);
  });
});

describe('one reading far off in a bore nearly round, read at few places', () => {
  // It makes the wall look so dented that by the figures learned with it, it stands off by little more than two of
  // their standard deviations. 5 pairs by 4 or 5 depths, oval of 0.02 mm across, 0.010 mm gauge; 0.18 mm is 13 of them.
  it('is found all the same, seeds 400 to 419', () => {
    const missed = Array.from({ length: 20 }, (_, i) => 400 + i).filter((seed) => {
      const base = surveyOf(seed, 0);
      const truth = wornBore(base.radius, [oval(0.02, 2 * Math.PI * base.random.uniform())]);
      const thetas = clocks(5);
      const depths = depthsWithin(4 + (seed % 2), base.length);
      const places = placesOn(thetas, depths);
      const taking = { noise: 0.01, resolution: 0.001, seed: seed + 1 };
      const values = read(truth, 'two-point', places, taking);
      const s: Survey = { ...base, truth, thetas, depths, places, values };
      const row = Math.floor(places.length * base.random.uniform());
      const burr = typed(s, values[row]! - 0.18);
      return checksOf(jobWith(s, new Map([[row, burr]]))).every((check) => check.row !== row);
    });
    expect(missed).toEqual([]);
  });
});

describe('sound surveys', () => {
  it('fewer than 3 of 100 are flagged, seeds 5000 to 5099', () => {
    const flagged = Array.from({ length: 100 }, (_, i) => surveyOf(5000 + i))
      .map((s) => ({ seed: s.seed, checks: checksOf(jobWith(s)) }))
      .filter(({ checks }) => checks.length > 0);
    const said = flagged.map(({ seed, checks }) => `${seed}: ${checks.map((c) => c.slip)}`);
    expect(flagged.length, said.join('; ')).toBeLessThanOrEqual(2);
  });
});
