/**
 * What the passes of a survey go by. Of a wall that was ground since, that is what all surveys of the grinding tell
 * together, each less what came off (`bore/standing.ts`); the survey's own map stays what its own readings tell.
 */
import { toldSd } from '../bore/leaveOneOut.ts';
import type { PassMatter } from '../bore/passes.ts';
import { onePass, SURE } from '../bore/passes.ts';
import { KEPT_OFF, wallPlaces } from '../bore/removal.ts';
import { type Stage, standing } from '../bore/standing.ts';
import { posteriorOf } from '../bore/surface.ts';
import type { Field, Removal, Target, WearSurface } from '../bore/types.ts';
import type { Came } from '../bore/worked.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { clockTheta } from '../job/clock.ts';
import { type BoreFacts, surveyFacts } from '../job/facts.ts';
import type { Feature, Issued, Job, Survey } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type ToolFacts, toolFacts } from '../job/tools.ts';
import { partnerOf } from './partner.ts';
import { chooseTarget, planRemoval } from './wanted.ts';

/** A survey whose plan can be made. */
export type Planned = SurveyEvaluation & {
  readonly surface: WearSurface;
  readonly target: Target;
  readonly removal: Removal;
};

export function isPlanned(survey: SurveyEvaluation): survey is Planned {
  return survey.surface !== null && survey.target !== null && survey.removal !== null;
}

/** A bore of a job, and what is at hand for it. */
interface Bench {
  readonly job: Job;
  readonly feature: Feature;
  readonly bore: BoreEvaluation;
  readonly shop: Shop | null;
}

/** Surface, target and metal that the passes go by; whether metal came off since the bore was found. */
interface Wall extends Pick<Planned, 'surface' | 'target' | 'removal'> {
  readonly worked: boolean;
  /** One standard deviation of what a reading of the survey would be without its scatter, as it reads, mm. */
  readonly readingSd: (at: number) => number;
}

interface Standing {
  readonly wall: Wall;
  /** The survey that this one follows a pass of, and what that pass asked; null: it follows none. */
  readonly before: {
    readonly survey: Planned;
    readonly asked: Field;
    /** The pass as it was given to the bench; null: none was, and what the plan asked stands in for it. */
    readonly issued: Issued | null;
  } | null;
  /** What several surveys tell together of the last pass; null: the wall is what its own survey tells. */
  readonly came: Came | null;
}

/** Stages that metal has been taken off before. Of a fitted bushing the wall behind it is not read. */
const GROUND: ReadonlySet<Survey['stage']> = new Set(['pass']);

/** Of so many surveys, as found and at the first gates, the smoothness is tried. */
const LEARNED = 3;
/** More readings than this tell a wall by themselves; the surveys before them would only take time. */
const MOST_READINGS = 640;

export function standingOf(bench: Bench, survey: Planned): Standing {
  const chain = sinceFound(bench, survey);
  const stages: Stage[] = [];
  let wall: Wall = itself(chain[0]!, false);
  for (let at = 1; at < chain.length; at++) {
    const before = chain[at - 1]!;
    const issued = issuedFrom(bench.feature, before);
    // What an issued pass was worked out of need not be worked out again.
    if (at > 1 && issued === null) {
      wall = together(bench, chain.slice(0, at), stages)?.wall ?? itself(before, true);
    }
    const asked = issued === null ? askedOf(bench, wall) : issuedField(issued);
    stages.push({ ...readingsOf(bench, before), asked });
  }
  const joined = chain.length > 1 ? together(bench, chain, stages) : null;
  const before = beforeOf(bench, survey, stages.at(-1)?.asked);
  return {
    wall: joined?.wall ?? itself(survey, before !== null),
    came: joined?.came ?? null,
    before,
  };
}

/** What its own survey tells of it. */
function itself({ surface, target, removal }: Planned, worked: boolean): Wall {
  const posterior = posteriorOf(surface);
  const readingSd = (at: number) => (posterior === undefined ? Number.NaN : toldSd(posterior, at));
  return { surface, target, removal, worked, readingSd };
}

/** @param known what the pass before asked, where it was worked out already */
function beforeOf(bench: Bench, survey: Planned, known: Field | undefined): Standing['before'] {
  const before = groundBefore(bench, survey);
  if (before === null) return null;
  const issued = issuedFrom(bench.feature, before);
  const asked =
    issued === null ? (known ?? askedOf(bench, itself(before, false))) : issuedField(issued);
  return { survey: before, asked, issued };
}

/** The survey before one that was taken after grinding; null: none, or metal was put on in between. */
function groundBefore(
  { feature: { surveys }, bore }: Bench,
  survey: SurveyEvaluation,
): Planned | null {
  let at = surveys.findIndex(({ id }) => id === survey.id);
  for (; at > 0 && GROUND.has(surveys[at]!.stage); at--) {
    const found = bore.surveys.find(({ id }) => id === surveys[at - 1]!.id);
    if (found !== undefined && isPlanned(found)) return found;
  }
  return null;
}

/**
 * The survey, and those before it back to the last that was not taken after a pass, in their order; back to where one is
 * missing, since what came off meanwhile is not known.
 */
function sinceFound(bench: Bench, survey: Planned): Planned[] {
  const { surveys } = bench.feature;
  const place = ({ id }: SurveyEvaluation) => surveys.findIndex((one) => one.id === id);
  const chain = [survey];
  let readings = survey.sightings.length;
  for (;;) {
    const before = groundBefore(bench, chain[0]!);
    if (before === null || place(before) !== place(chain[0]!) - 1) return chain;
    readings += before.sightings.length;
    const sameGrid = before.surface.mean.length === survey.surface.mean.length;
    if (readings > MOST_READINGS || !sameGrid) return chain;
    chain.unshift(before);
  }
}

/** The wall after the last of these surveys; null where what they tell does not go together. */
function together(
  { job, feature, bore: { facts } }: Bench,
  chain: readonly Planned[],
  stages: readonly Stage[],
): { readonly wall: Wall; readonly came: Came } | null {
  const last = chain.at(-1)!;
  const survey = surveyIn(feature, last);
  const found = standing(
    [...stages, { ...readingsOf({ job, feature }, last), asked: new Float64Array(0) }],
    {
      radius: Math.max(0, facts.nominal.mm) / 2,
      length: facts.length.mm,
      smoothness: chain.slice(0, LEARNED).map((one) => one.surface.smoothness),
      wornSide: clockTheta(surveyIn(feature, chain[0]!).wornSide),
    },
    last.surface.grid,
  );
  if (found === null) return null;
  const { surface, posterior, spread, through, readingSd } = found;
  const target = chooseTarget(facts, feature, survey, posterior, surface, partnerOf(job, feature));
  if (target === null) return null;
  const removal = planRemoval(posterior, surface, spread, target, facts, through);
  return {
    wall: { surface, target, removal, worked: true, readingSd },
    came: { share: found.shares.at(-1)!, shareSd: found.shareSds.at(-1)! },
  };
}

function surveyIn({ surveys }: Feature, { id }: Planned): Survey {
  return surveys.find((one) => one.id === id)!;
}

function readingsOf(
  { job, feature }: Pick<Bench, 'job' | 'feature'>,
  survey: Planned,
): Omit<Stage, 'asked'> {
  const { setups } = surveyFacts(job, feature, surveyIn(feature, survey));
  return { sightings: survey.sightings, setups };
}

/** The newest pass that was given to the bench from a survey; null: none, or its bore had another length then. */
export function issuedFrom({ issued }: Feature, { id, surface: { grid } }: Planned): Issued | null {
  const last = issued.filter(({ survey }) => survey === id).at(-1);
  const fits = last?.theta.length === grid.theta.length && last.z.at(-1) === grid.z.at(-1);
  return last !== undefined && fits && last.z.length === grid.z.length ? last : null;
}

/** What it asked off, per side, mm, on the survey's grid. */
function issuedField({ removal }: Issued): Field {
  return Float64Array.from(removal.flat());
}

/** The first pass that is planned of that wall. */
function askedOf(bench: Bench, wall: Wall): Field {
  return onePass(matterOf(bench, wall), wall.removal.deviation, SURE);
}

export function matterOf(
  { job, feature: { decisions }, bore: { facts }, shop }: Bench,
  { surface, target, removal, worked }: Wall,
): PassMatter {
  return {
    surface,
    removal,
    worked,
    places: wallPlaces(surface, facts.seats, facts.keepouts),
    bare: bareOf(surface, facts),
    radius: target.diameter / 2,
    ...grinderOf(toolFacts(decisions, shop, target.diameter, job.units)),
  };
}

/** 1 where nothing is ground as there is no metal. */
export function bareOf(surface: WearSurface, { keepouts }: BoreFacts): Uint8Array {
  const holes = keepouts.filter(({ kind }) => kind !== 'other');
  return wallPlaces(surface, [], holes).map((place) => (place === KEPT_OFF ? 1 : 0));
}

export function grinderOf({
  rigid,
  diameter,
  width,
  bite,
  slope,
}: ToolFacts): Pick<PassMatter, 'tool' | 'slope'> {
  return {
    tool: { rigid, radius: diameter.mm / 2, width: width.mm, bite: bite.mm },
    slope: slope.mm,
  };
}
