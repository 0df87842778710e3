/** `roundhand report`: a job, a CSV of readings or one of points through the same evaluation as the page. */
import { basename } from 'node:path';
import { onePinOf } from '../evaluate/onePin.ts';
import { passesOfSurvey } from '../evaluate/passes.ts';
import { jobFromScan } from '../evaluate/scanJob.ts';
import {
  type BoreEvaluation,
  type Evaluation,
  evaluate,
  type Memory,
  type SurveyEvaluation,
} from '../evaluate.ts';
import { type ReadingsCsv, readReadingsCsv } from '../job/csv.ts';
import { doubtsOf } from '../job/doubts.ts';
import { type CsvSizes, jobFromCsv } from '../job/fromCsv.ts';
import { openShop } from '../job/openShop.ts';
import { openJob } from '../job/parse.ts';
import { isScan, readScan } from '../job/pointsTable.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { lengthMm } from '../job/units.ts';
import { buildUpFinder } from './buildUpReport.ts';
import { centresFinder } from './centresReport.ts';
import { fitFinder } from './fitReport.ts';
import { matrix } from './matrix.ts';
import { otherFinder } from './otherReport.ts';
import { pinFinder } from './pinsReport.ts';
import { cylindersFinder } from './plugsReport.ts';
import { readInput } from './readInput.ts';
import { type Choice, chosen, chosenPins, reportOf } from './report.ts';
import { reportText } from './reportText.ts';
import { temperatureOption } from './temperatureOption.ts';
import { CSV_ONLY, type Options, type Said, UsageError } from './usage.ts';
import { waysFinder } from './waysReport.ts';

export function reportCommand(bytes: Buffer, file: string, options: Options): Said {
  const name = basename(file);
  const read = readFile(bytes, file, options);
  if ('why' in read) return { out: '', fault: read.why };
  const { job } = read;
  const said = shopOf(options);
  if ('why' in said) return { out: '', fault: said.why };
  const choice = { bore: options.bore, survey: options.survey };
  const memory: Memory = new Map();
  const evaluation = evaluate(job, memory, 'settled', said.shop);
  const lost = whyNothing(evaluation, choice);
  if (lost !== null) return { out: '', fault: `${name}: ${lost}` };
  const onePin = onePinOf(job, evaluation, said.shop);
  const finders = {
    other: otherFinder(job, memory, matrix, said.shop),
    buildUp: buildUpFinder(job, said.shop),
    fit: fitFinder(job, said.shop, onePin, evaluation.parts),
    centres: centresFinder(job, memory, said.shop),
    cylinders: cylindersFinder(job, memory, said.shop),
    ways: waysFinder(job, said.shop),
    passes: (bore: BoreEvaluation, survey: SurveyEvaluation) =>
      passesOfSurvey(job, bore, survey, said.shop),
    onePin: () => onePin,
  };
  const pins = pinFinder(job, memory, said.shop);
  const out =
    options.json === true
      ? JSON.stringify(reportOf(evaluation, choice, finders, { job, find: pins }))
      : reportText(job, { ...evaluation, ...told(evaluation, choice) }, said.shop, {
          ...finders,
          pins,
        });
  const fault = faultOf(evaluation, choice);
  return { out, fault: fault === null ? null : `${name}: ${fault}` };
}

/** Of the parts only the pins that were chosen are told of one by one; the joint speaks of all. */
function told(evaluation: Evaluation, choice: Choice): Pick<Evaluation, 'bores' | 'parts'> {
  return { bores: chosen(evaluation, choice), parts: chosenPins(evaluation, choice) };
}

/** What is at hand, where it is said. */
function shopOf({
  shop: file,
}: Options): { readonly shop: Shop | null } | { readonly why: string } {
  if (file === undefined) return { shop: null };
  const input = readInput(file);
  if ('why' in input) return input;
  const opened = openShop(input.bytes.toString('utf8'), basename(file));
  return opened.ok ? { shop: opened.shop } : { why: opened.why };
}

type Read = { readonly job: Job } | { readonly why: string };

function readFile(bytes: Buffer, file: string, options: Options): Read {
  const name = basename(file);
  const scan = !/\.json$/i.test(file) && isScan(bytes);
  if (scan) return readPoints(bytes, name, options);
  const text = bytes.toString('utf8');
  return isJob(text, file) ? readJob(text, name, options) : readCsv(text, name, options);
}

/** A job is JSON; anything else is taken for readings, unless it is called a job. */
function isJob(text: string, file: string): boolean {
  return /\.json$/i.test(file) || /^\uFEFF?\s*[{[]/.test(text.slice(0, 200));
}

function readJob(text: string, name: string, options: Options): Read {
  for (const option of CSV_ONLY) {
    if (options[option] !== undefined) {
      throw new UsageError(`--${option} goes with a CSV of readings; a job says it itself.`);
    }
  }
  const opened = openJob(text, name);
  if (!opened.ok) return { why: opened.why };
  const [doubt] = opened.doubts;
  return doubt === undefined ? { job: opened.job } : { why: `${name}: ${doubt}` };
}

function readCsv(text: string, name: string, options: Options): Read {
  const rows = readReadingsCsv(text, name);
  if (!rows.ok) return { why: rows.why };
  if (options.accuracy !== undefined) {
    throw new UsageError('--accuracy goes with a CSV of points; readings have a column sd.');
  }
  const units = unitsOf(options.units ?? usualUnits(rows));
  return checked(jobFromCsv(rows, { units, ...sizesOf(options, units, name) }), name);
}

function readPoints(bytes: Buffer, name: string, options: Options): Read {
  const units = unitsOf(options.units ?? 'mm');
  const sizes = sizesOf(options, units, name);
  const { accuracy } = options;
  if (accuracy !== undefined && !(lengthMm({ text: accuracy, unit: units }) > 0)) {
    throw new UsageError(
      `--accuracy takes a length above 0, such as 0.005, and not “${accuracy}”.`,
    );
  }
  const columns = readScan(bytes);
  if ('error' in columns) return { why: `${name}: ${columns.error}.` };
  const made = jobFromScan({ name, columns }, { units, accuracy, ...sizes });
  return made.ok ? checked(made.job, name) : { why: `${name}: ${made.why}.` };
}

function sizesOf(options: Options, units: Units, title: string): Omit<CsvSizes, 'units'> {
  for (const option of ['nominal', 'length'] as const) {
    if (options[option] === undefined) {
      throw new UsageError(`a CSV needs --${option}, in ${units}. See --help.`);
    }
  }
  return {
    nominal: options.nominal!,
    length: options.length!,
    bushing: options.bushing,
    pressFit: options['press-fit'],
    title,
    temperature: temperatureOption(options),
  };
}

function checked(job: Job, name: string): Read {
  const [doubt] = doubtsOf(job);
  return doubt === undefined ? { job } : { why: `${name}: ${doubt}` };
}

/** Where the options' unit is not said, it is that of the rows; millimetres where they do not say either. */
function usualUnits(rows: Extract<ReadingsCsv, { ok: true }>): Units {
  const said = rows.readings.find(({ unit }) => unit !== '')?.unit;
  return said === undefined || said === 'mm' ? 'mm' : 'in';
}

function unitsOf(text: string): Units {
  if (text === 'mm' || text === 'in') return text;
  throw new UsageError(`no units “${text}”: there are mm and in.`);
}

/** Why the choice names nothing that could be reported; null where it does. */
function whyNothing(evaluation: Evaluation, choice: Choice): string | null {
  const { bores, parts } = evaluation;
  const named = [...bores, ...parts.filter(({ kind }) => kind === 'pin')];
  const found = (of: Choice) => [...chosen(evaluation, of), ...chosenPins(evaluation, of)];
  if (named.length === 0) return 'the job has no bore and no pin; report speaks of those.';
  const all = found({ bore: choice.bore });
  if (all.length === 0) {
    const what = named.every(({ kind }) => kind === 'bore') ? 'bore' : 'bore or pin';
    return `no ${what} is called “${choice.bore}”; there is ${listed(named)}.`;
  }
  const surveys = all.flatMap((bore) => bore.surveys);
  if (surveys.length === 0) return 'there is no survey in it yet; measure the bore as found.';
  const picked = found(choice).flatMap((bore) => bore.surveys);
  if (picked.length === 0) {
    return `no survey is called “${choice.survey}”; there is ${listed(surveys)}.`;
  }
  if (picked.every((s) => s.status === 'no-readings')) {
    return 'there are no readings in it; a shape needs readings at two clock positions and two depths at least.';
  }
  return null;
}

function listed(named: readonly { readonly name: string }[]): string {
  return named.map(({ name }) => `“${name}”`).join(', ');
}

/** The first sentence about readings from which no shape can be believed, where none of those reported is better. */
function faultOf(evaluation: Evaluation, choice: Choice): string | null {
  const bores = chosen(evaluation, choice);
  const surveys = (bores.length > 0 ? bores : chosenPins(evaluation, choice))
    .flatMap((one) => one.surveys)
    .filter((survey) => survey.status !== 'no-readings');
  const faults = surveys.map((s) => s.notes.find(({ kind }) => kind === 'fault')?.text ?? null);
  return faults.every((text) => text !== null) ? (faults[0] ?? null) : null;
}
