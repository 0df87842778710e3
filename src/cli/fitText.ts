/** The fit of each bushing, as lines of the report for people. */
import { fitOfSurvey } from '../evaluate/fit.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { fitHead } from '../figures/fitWords.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import type { Part } from './buildUpText.ts';
import { pressLines } from './pressReport.ts';

export function fitParts(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): Part[] {
  const found = fitOfSurvey(job, bore, survey, shop);
  if (found === null) return [];
  return found.bushings.map(({ seated, press }) => ({
    head: `Fit of ${seated.name}`,
    lines: [fitHead(seated, job.units), ...pressLines(press, job.units)],
  }));
}
