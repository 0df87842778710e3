/** The bore and the survey that are being looked at, as typed and as worked out. */
import type { BoreEvaluation, Evaluation, SurveyEvaluation } from '../evaluate.ts';
import type { Feature, Job, Survey } from '../job/schema.ts';

export interface Bench {
  readonly job: Job;
  /** Every bore, pin and bushing of the job; the session counts in these. */
  readonly bores: readonly Feature[];
  /** The one on the bench: a bore, or a pin or bushing that is measured the same way. */
  readonly bore: Feature;
  readonly survey: Survey;
  /** Null until it has been worked out. */
  readonly boreSeen: BoreEvaluation | null;
  readonly surveySeen: SurveyEvaluation | null;
  /** The job's parts held against each other. */
  readonly joint: Evaluation['joint'] | null;
}

/** Indices that point past the end (a stage was undone) mean the last one. */
function within<T>(list: readonly T[], index: number): T | undefined {
  return list[Math.min(Math.max(index, 0), list.length - 1)];
}

/** Null where what is chosen has no survey. */
export function benchOf(
  job: Job,
  evaluation: Evaluation | null,
  place: { readonly bore: number; readonly survey: number },
): Bench | null {
  const bores = job.features;
  const bore = within(bores, place.bore);
  const survey = bore && within(bore.surveys, place.survey);
  if (bore === undefined || survey === undefined) return null;
  const all = evaluation === null ? [] : [...evaluation.bores, ...evaluation.parts];
  const boreSeen = all.find(({ id }) => id === bore.id) ?? null;
  const surveySeen = boreSeen?.surveys.find(({ id }) => id === survey.id) ?? null;
  const joint = evaluation?.joint ?? null;
  return { job, bores, bore, survey, boreSeen, surveySeen, joint };
}
