/** The report for people: the same sentences as in the notebook, in plain text. */

import type { CentreRule } from '../bore/types.ts';
import type { OnePin } from '../evaluate/onePin.ts';
import { passesOfSurvey } from '../evaluate/passes.ts';
import { waysOfSurvey } from '../evaluate/ways.ts';
import type { BoreEvaluation, Evaluation, SurveyEvaluation } from '../evaluate.ts';
import { sayAmounts } from '../figures/amountWords.ts';
import { sayFilled } from '../figures/filledWords.ts';
import {
  jointSentences,
  SIZE_HEADS,
  sizeRows,
  WEAR_HEADS,
  wearRows,
} from '../figures/jointWords.ts';
import { nearPair } from '../figures/nearClock.ts';
import { nextSentences } from '../figures/nextWords.ts';
import { adviceOf, whatWore } from '../figures/patternWords.ts';
import { shapeSentences } from '../figures/shapeWords.ts';
import { temperatureRemarks } from '../figures/temperatureWords.ts';
import { sayTradeOff, tradeOffWords } from '../figures/tradeOffWords.ts';
import { written } from '../figures/written.ts';
import { sayZone } from '../figures/zoneWords.ts';
import { roundGive } from '../geometry/roundGive.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { formatAcross, formatDepth, inUnits } from '../job/units.ts';

import { buildUpParts } from './buildUpText.ts';
import type { FindCentres } from './centresReport.ts';
import { centresText } from './centresText.ts';
import { doubtText } from './checksReport.ts';
import { fitParts } from './fitText.ts';
import { type FindOnePin, onePinText } from './onePinReport.ts';
import { passesText } from './passesReport.ts';
import type { FindPin } from './pinsReport.ts';
import { pinText } from './pinsText.ts';
import { cylindersText, type FindCylinders } from './plugsReport.ts';
import { columns, list, paragraphs, underlined, wrapped } from './textLayout.ts';
import { waysText } from './waysText.ts';

const GRINDING =
  'Before grinding: eyes, lungs and hearing covered, part clamped, wheel guarded and rated for its speed. ' +
  'Stop short, let it cool, and measure again: metal cannot be put back. The maker of the machine and local ' +
  'codes come first.';

interface TextFinders {
  /** What each rule for the centre costs. */
  readonly centres?: FindCentres;
  /** The plan of a pin. */
  readonly pins?: FindPin;
  /** How well the cylinders are known. */
  readonly cylinders?: FindCylinders;
  readonly onePin?: FindOnePin;
}

/**
 * @param shop what is at hand; null: nobody has said
 * @param finders work out what is told beside the evaluation; what is left out is not told
 */
export function reportText(
  job: Job,
  evaluation: Evaluation,
  shop: Shop | null = null,
  {
    centres = () => null,
    pins = () => null,
    cylinders = () => null,
    onePin = () => null,
  }: TextFinders = {},
): string {
  const head = [job.title, job.machine, job.place].filter(Boolean).join(' · ');
  const together = onePin();
  const bores = evaluation.bores.map((bore) =>
    boreText(bore, { job, shop, others: evaluation.parts, centres, cylinders, onePin: together }),
  );
  const shafts = evaluation.parts
    .filter(({ kind }) => kind === 'pin')
    .map((pin) => pinText(job, pin, pins));
  return [
    head,
    ...bores,
    ...shafts,
    jointText(evaluation),
    onePinText(together, job.units),
    wrapped(GRINDING),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function boreText(bore: BoreEvaluation, of: Of): string {
  const { units } = of.job;
  const { length, bushingOutside, pressFit } = bore.facts;
  const facts = [
    `Bore “${bore.name}”, ${formatDepth(length.mm, units)} long${length.from === 'typed' ? '' : ' (taken from the readings)'}`,
  ];
  if (bushingOutside.mm > 0) {
    facts.push(`bushing ${formatAcross(bushingOutside.mm, units)}`);
    facts.push(
      `press fit ${formatAcross(pressFit.mm, units)}${pressFit.from === 'typed' ? '' : ' (usual)'}`,
    );
  }
  return [`${facts.join(', ')}.`, ...bore.surveys.map((s) => surveyText(s, bore, of))].join('\n\n');
}

/** The job and what is at hand for it. */
interface Of {
  readonly job: Job;
  readonly shop: Shop | null;
  /** What else was measured: pins and bushings. */
  readonly others: readonly BoreEvaluation[];
  readonly centres: FindCentres;
  readonly cylinders: FindCylinders;
  readonly onePin: OnePin | null;
}

function surveyText(survey: SurveyEvaluation, bore: BoreEvaluation, of: Of): string {
  const { job, shop, others, centres, cylinders } = of;
  const { units } = job;
  const length = bore.facts.length.mm;
  const passes = passesOfSurvey(job, bore, survey, shop);
  const waits = passes !== null && passes.plan.waits !== null;
  const parts = [
    underlined(survey.name),
    sectionTable(survey, units),
    paragraphs(shapeSentences(survey, length, units).map((s) => s.before + s.figure + s.after)),
    cylindersText(survey, cylinders(bore, survey), units),
    patternText(survey, bore, units),
    doubtText(survey, units),
    targetText(survey, units),
    seatText(survey, bore, units),
    centresText(centres(bore, survey), units),
    list(survey.zones.map((zone) => sayZone(zone, length, units, survey, waits))),
    waysText(waysOfSurvey(job, bore, survey, shop), units),
    ...passesText(passes, survey, bore, units).map(({ title, lines }) =>
      [wrapped(title), list(lines)].filter((part) => part !== '').join('\n'),
    ),
    ...[
      ...buildUpParts(job, bore, survey, shop),
      ...fitParts(job, bore, survey, shop, of.onePin, others),
    ].map(({ head, lines }) => `${head}:\n${list(lines)}`),
    list(
      [...temperatureRemarks(survey.temperature, units), ...survey.notes].map(({ text }) => text),
    ),
    survey.blindSpots.length === 0
      ? ''
      : `What these readings cannot tell:\n${list(survey.blindSpots.map(({ text }) => text))}`,
    survey.surface === null ? '' : wrapped(sayFilled(survey.surface.smoothness, units)),
    nextText(survey, units),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

/** Every part of the joint side by side; nothing of a job that is one bore and no more. */
function jointText({ joint, units }: Evaluation): string {
  const { parts, fresh } = joint;
  if (parts.length + fresh.length < 2) return '';
  const sizes = sizeRows(joint, units);
  const wear = wearRows(joint, units);
  const rows = sizes.map(({ name, of, cells }, i) => {
    const all = [...cells, ...wear[i]!.cells];
    // Of the taper, the last, it is said which end is larger; places of the others stand with the bore.
    const ends = all.map((_, at) => (at === all.length - 1 ? all[at]!.where : []));
    const told = all.map(({ figure, give }, at) => [`${figure} ${give}`.trim(), ...ends[at]!]);
    return [`${name} (${of})`, ...told.map((parts) => parts.join(', '))];
  });
  const all = [['', ...SIZE_HEADS, ...WEAR_HEADS], ...rows];
  const table = columns(all, (at) => at === 0);
  const sentences = jointSentences(joint, units);
  return [
    underlined('The joint, side by side'),
    `${table}\n(${units}, across but for worn)`,
    list(sentences),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function patternText(survey: SurveyEvaluation, bore: BoreEvaluation, units: Units): string {
  const wore = whatWore(survey, bore, units);
  if (wore === null) return '';
  const lines = wore.patterns.map((one) =>
    [`${one.title}.`, one.evidence, ...adviceOf(one)].join(' '),
  );
  return `What wore:\n${list([...lines, ...wore.open, wore.eyes])}`;
}

function nextText({ next }: SurveyEvaluation, units: Units): string {
  const sentences = nextSentences(next, units);
  return sentences.length === 0 ? '' : `Worth reading next:\n${list(sentences)}`;
}

/** One line a depth; all across. */
function sectionTable(survey: SurveyEvaluation, units: Units): string {
  if (survey.sections.length === 0) return '';
  const rows = survey.sections.map((s) => {
    const { bare } = written(units, s.give);
    const where = (theta: number) => (Number.isNaN(theta) ? '' : ` ${nearPair(theta)}`);
    return [
      inUnits(s.z, units).toFixed(units === 'in' ? 2 : 1),
      bare(s.meanDiameter),
      `${bare(s.greatest.diameter)}${where(s.greatest.theta)}`,
      `${bare(s.least.diameter)}${where(s.least.theta)}`,
      written(units, roundGive(s)).bare(s.outOfRound),
      bare(s.give),
    ];
  });
  const head = ['depth', 'mean', 'greatest', 'least', 'out-of-round', 'give or take'];
  const all = [head, ...rows];
  return `${columns(all, () => false)}\n(${units}, across)`;
}

const ABOUT: Readonly<Record<CentreRule, string>> = {
  free: 'its centre free to move',
  'least-cut': 'its centre where the deepest cut is least',
  keep: 'about the old centre',
  partner: 'in line with the partner bore',
  'by-hand': 'its centre set by hand',
};

function targetText({ target, removal }: SurveyEvaluation, units: Units): string {
  if (target === null || removal === null) return '';
  const assumed = target.assumed === null ? '' : ` Assumed: ${target.assumed}.`;
  return wrapped(
    `Target ${formatAcross(target.diameter, units)}, ${ABOUT[target.centreRule]}: ${sayAmounts(removal)}.${assumed}`,
  );
}

function seatText(
  { target, removal, seating }: SurveyEvaluation,
  { facts }: BoreEvaluation,
  units: Units,
): string {
  if (target === null || removal === null || seating === null) return '';
  const words = tradeOffWords(target, removal, seating, facts.bushingOutside.mm, units);
  return wrapped(sayTradeOff(words));
}
