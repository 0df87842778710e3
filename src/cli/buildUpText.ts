/** The chosen way of squeezing, shimming or welding, and the rim faces, as lines of the report for people. */
import { type BuildUp, buildUpOfSurvey } from '../evaluate/buildUp.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { heatWords, logRows, logWords } from '../figures/heatWords.ts';
import { rimWords } from '../figures/rimWords.ts';
import { NO_SHIMS, shimWords } from '../figures/shimWords.ts';
import { COLD, giveOf, NO_SQUEEZE, squeezeWords } from '../figures/squeezeWords.ts';
import { weldStage, weldWords } from '../figures/weldWords.ts';
import { HEAT_RULES, heatCautions, hotWork } from '../job/safety.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';

export interface Part {
  readonly head: string;
  readonly lines: readonly string[];
}

export function buildUpParts(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): Part[] {
  const feature = job.features.find(({ id }) => id === bore.id);
  const found = buildUpOfSurvey(job, bore, survey, shop);
  if (feature === undefined || found === null) return [];
  const { way } = feature.decisions;
  const hot = hotLines(job);
  const parts: Part[] = [];
  if (way === 'squeeze') {
    const { squeeze } = found;
    const words = squeeze && squeezeWords(squeeze, found, survey, job.units);
    const depths = [...new Set(words?.cold.map(({ depth }) => depth))];
    const cold = depths.map((depth) => {
      const at = words!.cold.filter((one) => one.depth === depth);
      const ranges = at.map(({ pair, range }) => `${pair} ${range}`).join(', ');
      return `${depth} deep: ${ranges} ${job.units} across.`;
    });
    if (cold.length > 0) cold.unshift(`${COLD}:`);
    const lines = words && [...words.ends, ...hot([...words.steps, ...cold])];
    parts.push({
      head: 'Squeeze with heat',
      lines: [...(lines ?? [NO_SQUEEZE]), ...broughtLines(found, survey, job.units)],
    });
  }
  if (way === 'shim') {
    const { shims } = found;
    const words = shims && shimWords(shims, found, job.units);
    const strips = words?.strips.map(
      ({ layer, thickness, length, butt, hole }) =>
        `Strip ${layer}: ${thickness} thick, ${length} long, ends butt at ${butt}; hole: ${hole}.`,
    );
    const lines = words && [...words.stack, ...strips!, ...words.rules, ...words.cautions];
    parts.push({ head: 'Shims', lines: lines ?? [NO_SHIMS] });
  }
  if (way === 'weld') {
    const stage = feature.surveys.find(({ id }) => id === survey.id)?.stage ?? '';
    const words = weldWords(found, weldStage(survey, stage), bore.facts.length.mm, job.units);
    parts.push({ head: 'Weld', lines: [...words.metal, ...words.low, ...hot(words.steps)] });
  }
  const rims = found.rims.flatMap((rim) => rimWords(rim, job.units));
  return rims.length === 0 ? parts : [...parts, { head: 'Rim faces', lines: rims }];
}

/** What was measured after a squeeze, and what the shop's log of them teaches. */
function broughtLines(found: BuildUp, survey: SurveyEvaluation, units: Units): string[] {
  const words = found.heat?.brought && heatWords(found.heat, giveOf(survey), units);
  const pairs = words?.pairs.map(
    ({ pair, before, after, closed }) => `${pair} ${before} to ${after}, closed by ${closed}`,
  );
  const logged = logWords(found);
  return [
    ...(words ? [words.where, ...words.brought] : []),
    ...(pairs === undefined || pairs.length === 0
      ? []
      : [`By clock position, ${units} across: ${pairs.join('; ')}.`]),
    ...(logged === '' ? [] : [logged]),
    ...logRows(found.facts, units).map(
      ({ when, what, moved, stayed, sprang, drew }) =>
        `Logged ${when}, ${what}: jaws moved ${moved}, ${stayed} stayed, ${units} across; ${sprang} sprang back, the mean drew in by ${drew} of its size.`,
    ),
  ];
}

/** Steps with heat and their cautions once every question is answered; before that, what stands in the way. */
export function hotLines(
  job: Job,
  of: 'bore' | 'pin' | 'fit' = 'bore',
): (steps: readonly string[]) => string[] {
  const { open, stops, asks } = hotWork(job.safety);
  return (steps) =>
    open
      ? [...steps, ...heatCautions(job.safety, of), HEAT_RULES]
      : [
          'No step with heat is told before the questions on it are answered.',
          ...stops.map(({ says, whom }) => `${says} Ask ${whom}.`),
          ...asks.map((question) => `Still to be answered: ${question}`),
        ];
}
