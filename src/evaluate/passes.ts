/** The passes of one survey, what the pass before it took off, and the stages so far: worked out on demand. */
import { betweenMarks } from '../bore/between.ts';
import { gateOf, marksOf, type Readers } from '../bore/gate.ts';
import { afterPass, type PassMatter, planPasses, SURE } from '../bore/passes.ts';
import type { Pass, PassPlan } from '../bore/passTypes.ts';
import { SEATED, wallPlaces } from '../bore/removal.ts';
import type { Field, WearSurface } from '../bore/types.ts';
import { type Past, pastTarget, type WorkedOff, workedOff } from '../bore/worked.ts';
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import { surveyFacts } from '../job/facts.ts';
import type { Feature, Issued, Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type ToolFacts, toolFacts } from '../job/tools.ts';
import { isPlanned, issuedFrom, matterOf, type Planned, standingOf } from './standing.ts';
import { type SurveyOf, surveyOf } from './surveyOf.ts';

/** How far the wall is from round and from its target at one stage; a forecast once the pass is done as planned. */
export interface StageFigures {
  readonly name: string;
  readonly forecast: boolean;
  /** Greatest less least diameter at one depth of the seats, the worst depth; across, mm. */
  readonly outOfRound: number;
  /** Per side, mm, 0 and more: most that stands proud of the target on the seats, and most that is missing. */
  readonly high: number;
  readonly low: number;
}

export interface Passes {
  readonly tool: ToolFacts;
  readonly plan: PassPlan;
  /** How many passes were done before: the plan's first is the next after them. */
  readonly done: number;
  /** True where the passes go by this survey and those before it, each less what came off since. */
  readonly together: boolean;
  /** What the pass before this survey took off; null: this survey follows no pass. */
  readonly worked: {
    readonly off: WorkedOff;
    readonly since: string;
    /** When the pass was given to the bench that it is held against; null: none was, and the plan stands in for it. */
    readonly given: string | null;
  } | null;
  /** The pass that was given to the bench from this survey, and whether it is the plan's first still; null: none. */
  readonly issued:
    | (Pick<Issued, 'title' | 'when' | 'words'> & {
        readonly same: boolean;
      })
    | null;
  readonly past: Past | null;
  readonly stages: readonly StageFigures[];
}

/**
 * @param memory what was worked out of the job itself; it is read and left as it is
 * @returns null where the job holds no such survey, or it has no target
 */
export function passesOf(
  job: Job,
  asked: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): Passes | null {
  const found = surveyOf(job, asked, memory, shop);
  return found && passesOfSurvey(job, found.of, found.one, shop);
}

/** @returns null where the survey has no target */
export function passesOfSurvey(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): Passes | null {
  const feature = job.features.find(({ id }) => id === bore.id);
  if (feature === undefined || !isPlanned(survey)) return null;
  const bench = { job, feature, bore, shop };
  const { wall, before, came } = standingOf(bench, survey);
  const matter = matterOf(bench, wall);
  const done = passesDone(feature, survey);
  const readers = readersOf(bench, survey, wall.readingSd);
  const plan = withGates(survey, matter, readers, done);
  return {
    tool: toolFacts(feature.decisions, shop, survey.target.diameter, job.units),
    plan,
    done,
    together: came !== null,
    worked: before && {
      since: before.survey.name,
      given: before.issued?.when ?? null,
      off: workedOff(before.survey.surface, survey.surface, before.asked, survey.sightings, came),
    },
    issued: issuedNow(feature, survey, plan),
    past:
      before &&
      pastTarget(
        before.survey.removal.deviation,
        wall.removal,
        matter.places,
        wall.surface,
        wall.target.diameter,
      ),
    stages: [...stagesSoFar(bore, survey), ...forecast(matter, plan.passes, done)],
  };
}

/** Two passes are the same where they ask for the same within this, per side, mm: what is kept of one. */
const SAME = 1e-5;

function issuedNow(feature: Feature, survey: Planned, { passes }: PassPlan): Passes['issued'] {
  const issued = issuedFrom(feature, survey);
  if (issued === null) return null;
  const now = passes[0]?.removal;
  const same =
    now !== undefined &&
    issued.removal.flat().every((mm, k) => Math.abs(mm - Math.max(0, now[k] || 0)) <= SAME);
  const { title, when, words } = issued;
  return { title, when, words, same };
}

function withGates(survey: Planned, matter: PassMatter, readers: Readers, done: number): PassPlan {
  const { passes, ...plan } = planPasses(matter);
  const marks = marksOf(survey.sightings);
  let deviation = matter.removal.deviation;
  let wall = matter.surface.mean;
  const gated = passes.map((pass, at): Pass => {
    const step = { deviation, wall, removal: pass.removal, sds: at === 0 ? SURE : 0 };
    deviation = afterPass(deviation, pass.removal);
    wall = afterPass(wall, pass.removal);
    return {
      ...pass,
      gate: gateOf(matter, step, marks, readers),
      between: done + at > 0 ? [] : betweenMarks(matter, pass.removal, survey.sightings),
    };
  });
  return { ...plan, passes: gated };
}

/** How the survey's readings go: which way a reading grows with the bore, and how well it is told. */
function readersOf(
  { job, feature }: { readonly job: Job; readonly feature: Feature },
  { id }: Planned,
  sd: Readers['sd'],
): Readers {
  const survey = feature.surveys.find((one) => one.id === id);
  const setups = survey === undefined ? [] : surveyFacts(job, feature, survey).setups;
  return { sign: ({ setup }) => setups[setup]?.sign ?? 1, sd };
}

function stagesSoFar({ surveys, facts }: BoreEvaluation, upTo: SurveyEvaluation): StageFigures[] {
  const at = surveys.findIndex(({ id }) => id === upTo.id);
  return surveys.slice(0, at + 1).flatMap((survey) => {
    if (!isPlanned(survey)) return [];
    const { surface, removal, name } = survey;
    const places = wallPlaces(surface, facts.seats, facts.keepouts);
    return [
      { name, forecast: false, ...shapeFigures(surface, surface.mean, removal.deviation, places) },
    ];
  });
}

/** Stages up to this survey that were taken after a pass. */
function passesDone({ surveys }: Feature, { id }: SurveyEvaluation): number {
  const at = surveys.findIndex((one) => one.id === id);
  return surveys.slice(0, at + 1).filter(({ stage }) => stage === 'pass').length;
}

function forecast(
  { surface, removal, places }: PassMatter,
  passes: readonly Pass[],
  done: number,
): StageFigures[] {
  let deviation = removal.deviation;
  let wall = surface.mean;
  return passes.map((pass, at) => {
    deviation = afterPass(deviation, pass.removal);
    wall = afterPass(wall, pass.removal);
    return {
      name: `pass ${done + at + 1}`,
      forecast: true,
      ...shapeFigures(surface, wall, deviation, places),
    };
  });
}

function shapeFigures(
  { grid: { theta, z } }: WearSurface,
  wall: Field,
  deviation: Field,
  places: Uint8Array,
): Pick<StageFigures, 'outOfRound' | 'high' | 'low'> {
  const columns = theta.length;
  const half = columns / 2;
  let [outOfRound, high, low] = [0, 0, 0];
  for (let row = 0; row < z.length; row++) {
    let least = Number.POSITIVE_INFINITY;
    let greatest = Number.NEGATIVE_INFINITY;
    for (let it = 0; it < columns; it++) {
      const k = row * columns + it;
      if (places[k] !== SEATED) continue;
      high = Math.max(high, -deviation[k]!);
      low = Math.max(low, deviation[k]!);
      const across = wall[k]! + wall[row * columns + ((it + half) % columns)]!;
      least = Math.min(least, across);
      greatest = Math.max(greatest, across);
    }
    if (greatest >= least) outOfRound = Math.max(outOfRound, greatest - least);
  }
  return { outOfRound, high, low };
}
