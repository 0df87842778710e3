/** The fit of each bushing, as lines of the report for people. */
import { type BushingFit, fitOfSurvey } from '../evaluate/fit.ts';
import type { OnePin } from '../evaluate/onePin.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { publishedWords } from '../figures/clearanceTable.ts';
import { clockWords } from '../figures/clockWords.ts';
import { degreesName } from '../figures/degrees.ts';
import { fitAnswers } from '../figures/fitAnswers.ts';
import { fitWants, wantWords } from '../figures/fitMissing.ts';
import { fitHead, NO_WALL } from '../figures/fitWords.ts';
import { orderSteps } from '../figures/orderWords.ts';
import { roundWords } from '../figures/roundWords.ts';
import { runningWords } from '../figures/runningWords.ts';
import { sideGapMissing, sideGapWords } from '../figures/sideGapWords.ts';
import { slipWords } from '../figures/slipWords.ts';
import { hotWork } from '../job/safety.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { hotLines, type Part } from './buildUpText.ts';
import { pressLines } from './pressReport.ts';

export function fitParts(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
  onePin: OnePin | null = null,
  parts: readonly BoreEvaluation[] = [],
): Part[] {
  const found = fitOfSurvey(job, bore, survey, shop, parts);
  if (found === null) return [];
  const { side } = found;
  const feature = job.features.find(({ id }) => id === bore.id)!;
  const order = {
    head: 'Order of the work',
    lines: orderSteps(found, onePin, job, feature).map(({ says, cautions }) =>
      [says, ...cautions].join(' '),
    ),
  };
  const gap = {
    head: 'Side gap along the pin',
    lines: [...sideGapWords(side, job.units), ...sideGapMissing(side)],
  };
  return [
    ...found.alone.map(({ name, running }) => ({
      head: `Fit of ${name}`,
      lines: [NO_WALL, ...Object.values(runningWords(running, job.units)).flat()],
    })),
    ...found.bushings.flatMap((one) => [
      {
        head: `Fit of ${one.seated.name}`,
        lines: [
          fitHead(one.seated, job.units),
          ...shortLines(one, job),
          ...pressLines(one.press, job.units),
          ...roundWords(one.round, job.units),
          ...Object.values(runningWords(one.running, job.units)).flat(),
          publishedWords(job.units),
        ],
      },
      slipPart(one, job),
    ]),
    ...(feature.sideGap === undefined ? [] : [gap]),
    order,
  ];
}

/** The answers first. */
function shortLines(one: BushingFit, { units, safety }: Job): string[] {
  const { open } = hotWork(safety);
  return [
    ...fitAnswers(one, units, open).map(({ question, says }) => `${question} ${says}`),
    ...wantWords(fitWants(one, open)),
  ];
}

/** Heat, cold and the clock; of heat nothing before its questions are answered. */
function slipPart(one: BushingFit, job: Job): Part {
  const { heat, clock, seated } = one;
  const slip = slipWords(one, job.units);
  const told = clockWords(clock, heat, seated, job.units);
  const { open } = hotWork(job.safety);
  const unit = degreesName(job.units);
  const rows = slip.rows.map(({ name, entry, smaller, boss, off, verdict }) => {
    const larger = smaller.startsWith('−');
    const small =
      smaller === '–'
        ? ''
        : `, ${smaller.replace('−', '')} ${job.units} across ${larger ? 'larger' : 'smaller'}`;
    const warm = off === '–' ? verdict : `boss ${boss} then, heated to ${off}: ${verdict}`;
    return `Bushing ${name}: ${entry} ${unit} when it touches${small}${open || off === '–' ? `; ${warm}` : ''}.`;
  });
  const steps = [...slip.chosen, ...slip.cautions, ...told.says, ...told.helps, ...told.stuck];
  return {
    head: `Heat and cold for ${seated.name}`,
    lines: [
      ...slip.wrong,
      ...slip.needs,
      ...rows,
      ...told.missing,
      ...(slip.hot ? hotLines(job, 'fit')(steps) : open ? steps : steps.slice(0, -2)),
    ],
  };
}
