/** Where the readings of a survey touched the wall. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { turned } from './sample.ts';

type Instrument = SurveyEvaluation['sightings'][number]['instrument'];

export interface Mark {
  readonly instrument: Instrument;
  readonly theta: number;
  readonly z: number;
  /** Row in the survey's list of readings, from 0. */
  readonly row: number;
  /** True where the reading is in doubt. */
  readonly suspect: boolean;
}

/** How many places of the wall an instrument touches at once, evenly round. */
const TOUCHES: Readonly<Record<Instrument, number>> = {
  'two-point': 2,
  'three-leg': 3,
  sweep: 1,
  wall: 1,
  radius: 1,
};

/** Every place that was touched: both ends of a diameter, all three legs, the point of a stylus. */
export function marksOf(survey: SurveyEvaluation): Mark[] {
  const suspects = new Set(survey.checks.filter((check) => check.suspect).map((c) => c.row));
  return survey.sightings.flatMap(({ row, theta, z, instrument }) =>
    touchesOf(instrument, theta, z).map((touch) => ({
      ...touch,
      instrument,
      row,
      suspect: suspects.has(row),
    })),
  );
}

/** The places of the wall that an instrument touches when it reads at a clock position. */
export function touchesOf(
  instrument: Instrument,
  theta: number,
  z: number,
): { theta: number; z: number }[] {
  const count = TOUCHES[instrument];
  return Array.from({ length: count }, (_, k) => ({
    theta: turned(theta + (2 * Math.PI * k) / count),
    z,
  }));
}

/** Where the next reading would touch, the one most worth taking; none where none is told of. */
export function nextMarks(survey: SurveyEvaluation): { theta: number; z: number }[] {
  const [next] = survey.next.readings;
  if (next === undefined) return [];
  return touchesOf(next.instrument, next.clocks[0]!, next.depths[0]!);
}

/** At most `most` of the marks, evenly chosen; suspects are always among them. */
export function thinned(marks: readonly Mark[], most: number): Mark[] {
  if (marks.length <= most) return [...marks];
  const every = Math.ceil(marks.length / most);
  return marks.filter((mark, i) => mark.suspect || i % every === 0);
}
