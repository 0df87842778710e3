/** Why no contact pressure can be laid over the drawing, in one sentence; null: it can, or nothing is known against it yet. */

import type { FitAnswer } from '../evaluate/fit.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Units } from '../job/schema.ts';
import { roundWords } from './roundWords.ts';

interface Drawn {
  readonly survey: SurveyEvaluation;
  /** False: a change, another reading of the numbers, or a way of mending is drawn, which no fit was worked out of. */
  readonly itself: boolean;
}

/** @param answer null: it was not asked for, or is on its way */
export function pressedWhy(
  { survey, itself }: Drawn,
  answer: Pick<FitAnswer, 'bushings'> | null,
  units: Units,
): string | null {
  if (!itself) {
    return 'Where the bushing presses is worked out of the survey itself: go back to that to see it.';
  }
  if (survey.stage === 'fitted' && survey.target === null) {
    return 'Where the bushing presses shows on the wall behind it: choose a stage from before it went in.';
  }
  if (survey.target === null) {
    return 'Where the bushing presses: give its outside diameter under Measure, or choose a size under Plan.';
  }
  const first = answer?.bushings[0];
  if (first === undefined || answer!.bushings.some(({ round }) => round.fit !== null)) return null;
  return roundWords(first.round, units)[0]!;
}
