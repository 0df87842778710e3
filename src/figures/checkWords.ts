/** Readings in doubt, in sentences: what stands there, what the others lead one to expect, and the likely slip. */
import type { Check } from '../bore/types.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth, formatLength } from '../job/units.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { written } from './written.ts';

type Sighting = SurveyEvaluation['sightings'][number];

/** One doubt, of one reading or of several that one slip explains. */
export interface Doubt {
  /** Rows of the survey's list of readings, from 0. */
  readonly rows: readonly number[];
  /** Where, for the names of buttons. */
  readonly place: string;
  readonly text: string;
  /** In a few words, where there is no room for the text: `one micrometer turn, 0.025 in?` */
  readonly brief: string;
  /** As it would be typed in the job's units; null where only a retake helps. */
  readonly suggested: string | null;
}

/** Readings that cannot be used at all are not among them: their reason stands beside them already. */
export function sayDoubts(survey: SurveyEvaluation, units: Units): Doubt[] {
  const seen = new Map(survey.sightings.map((s) => [s.row, s]));
  const single: Doubt[] = [];
  const together = new Map<string, Sighting[]>();
  for (const check of survey.checks) {
    const sighting = seen.get(check.row);
    if (!check.suspect || sighting === undefined) continue;
    if (Number.isNaN(check.expected)) {
      together.set(check.slip, [...(together.get(check.slip) ?? []), sighting]);
    } else single.push(singleDoubt(check, sighting, units));
  }
  return [...single, ...[...together].map(([slip, all]) => doubtOfMany(slip, all, units))];
}

function placeOf({ instrument, theta, z }: Sighting, units: Units): string {
  const clock = instrument === 'two-point' ? nearPair(theta) : nearClock(theta);
  return `${clock} at ${formatDepth(z, units)} deep`;
}

function singleDoubt(check: Check, s: Sighting, units: Units): Doubt {
  const place = placeOf(s, units);
  const reads = `${formatLength(s.value, units)}${kindOf(s)}`;
  const { bare, plain } = written(units, check.give);
  const expected = `${plain(check.expected)}${kindOf(s)}, give or take ${bare(check.give)}`;
  const text = `${place} reads ${reads}, and the others lead one to expect ${expected}. ${likely(check)}`;
  const brief = check.slip === 'unexplained' ? 'read it again' : `${check.slip}?`;
  return { rows: [check.row], place, text, brief, suggested: check.suggested };
}

function kindOf({ instrument }: Sighting): string {
  if (instrument === 'two-point' || instrument === 'three-leg') return ' across';
  return instrument === 'radius' ? ' per side' : '';
}

function likely({ slip, suggested }: Check): string {
  if (slip === 'unexplained') return 'No usual slip explains it: read it again.';
  return suggested === null ? `Likely ${slip}: wipe, deburr and read it again.` : `Likely ${slip}.`;
}

function doubtOfMany(slip: string, all: readonly Sighting[], units: Units): Doubt {
  const rows = all.map(({ row }) => row);
  const [first] = all;
  const depths = all.map(({ z }) => z);
  const span = [Math.min(...depths), Math.max(...depths)].map((z) => formatDepth(z, units));
  const from = span[0] === span[1] ? `at ${span[0]}` : `from ${span[0]} to ${span[1]}`;
  const place = all.length === 1 ? placeOf(first!, units) : `${all.length} readings ${from} deep`;
  const text = `${place}: ${slip}? Check, and read again.`;
  return { rows, place, text, brief: `${slip}?`, suggested: null };
}
