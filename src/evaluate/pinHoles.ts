/** The holes that a pin runs in, as far as the job knows their size. */
import type { BoreEvaluation, Evaluation, SurveyEvaluation } from '../evaluate.ts';
import type { PinFacts } from '../job/pinFacts.ts';
import type { Job } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';
import type { Hole } from './pinTypes.ts';

/** Those that its stretches are said to run in; where none is, every hole of the job. */
export function holesOf(job: Job, { bores, parts }: Evaluation, { lands }: PinFacts): Hole[] {
  const named = lands.flatMap(({ runsIn }) => (runsIn === null ? [] : [runsIn]));
  const wanted = (id: string) => named.length === 0 || named.includes(id);
  const seen = [...bores, ...parts].filter(({ id, kind }) => wanted(id) && isHole(kind));
  const found = seen.flatMap((one) => {
    const hole = holeOf(job, one);
    return hole === null ? [] : [hole];
  });
  // What is bought goes before what came out, where nothing is said of either.
  const bought = found.filter(({ from }) => from === 'bought');
  return named.length === 0 && bought.length > 0 ? bought : found;
}

function isHole(kind: BoreEvaluation['kind']): boolean {
  return kind === 'bore' || kind === 'bushing-inside';
}

function holeOf(job: Job, { id, name, kind, surveys }: BoreEvaluation): Hole | null {
  const last = surveys.findLast((one) => one.sections.length > 0);
  if (last !== undefined && kind === 'bore' && last.stage === 'fitted') return read(name, last);
  const bushings = job.features.find((one) => one.id === id)?.bushings ?? [];
  const insides = bushings.map(({ inside }) => lengthMm(inside)).filter((mm) => mm > 0);
  if (insides.length > 0) return { name, size: Math.min(...insides), from: 'bought' };
  if (bushings.length > 0) return null;
  return last === undefined ? null : read(name, last);
}

function read(name: string, { sections }: SurveyEvaluation): Hole {
  const least = sections.map((s) => (s.least.diameter > 0 ? s.least.diameter : s.meanDiameter));
  return { name, size: Math.min(...least), from: 'measured' };
}
