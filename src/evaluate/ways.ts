/** The ways of mending of one survey, with what is at hand for them, what stands in their way, and the advice. */
import { MOST_LAYERS } from '../assembly/shims.ts';
import type { Range } from '../assembly/springback.ts';
import { needOf } from '../assembly/squeeze.ts';
import { type Advice, advise, type Gates, type WayRules } from '../bore/advice.ts';
import type { CleanUp } from '../bore/cleanUp.ts';
import { type ShimAim, type SqueezeAim, type Ways, type WaysAsked, waysOf } from '../bore/ways.ts';
import type { WayFigures, WayName, WayOutcome } from '../bore/wayTypes.ts';
import { type BoreEvaluation, evaluate, type Memory, type SurveyEvaluation } from '../evaluate.ts';
import type { MendingFacts } from '../job/mendingFacts.ts';
import { hotWork, type Stop } from '../job/safety.ts';
import type { Decisions, Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { toolFacts } from '../job/tools.ts';
import { wayFigureMm, wayShare } from '../job/wayFigures.ts';
import { type Aimed, aimedAt } from './aimed.ts';
import { isOwnSize } from './ownSize.ts';
import { partnerLimit, partnerOf } from './partner.ts';
import { shimStack } from './shims.ts';
import { heatsOf, perHeat, squeezePlan } from './squeeze.ts';
import { bareOf, grinderOf, isPlanned, standingOf } from './standing.ts';
import type { SurveyOf } from './surveyOf.ts';
import { type Need, needsOf } from './wayNeeds.ts';

/** What keeps somebody from some of the work, and who can settle it. */
export interface WayStop {
  readonly says: string;
  readonly whom: string;
  /** The work that waits: what needs heat, or all of it. */
  readonly closes: 'heat' | 'all';
}

export interface WaysEvaluation extends Ways {
  readonly cleanUp: CleanUp;
  readonly advice: Advice;
  readonly stops: readonly WayStop[];
  /** Questions about heat that nobody has answered yet. */
  readonly asks: readonly string[];
  readonly figures: WayFigures;
  readonly rules: WayRules;
  readonly needs: Readonly<Record<WayName, readonly Need[]>>;
  /** True where the passes go by this survey and those before it together, and all else by this survey alone. */
  readonly together: boolean;
  /** False: the bushing's size is not known, and one is made to suit. */
  readonly bushingKnown: boolean;
}

/**
 * @param memory what was worked out of the job itself; it is read and left as it is
 * @returns null where the job holds no such survey, or it has no target
 */
export function waysAsked(
  job: Job,
  { bore, survey }: SurveyOf,
  memory: Memory,
  shop: Shop | null,
): WaysEvaluation | null {
  const { bores } = evaluate(job, new Map(memory), 'quick', shop);
  const of = bores.find(({ id }) => id === bore);
  const one = of?.surveys.find(({ id }) => id === survey);
  return of === undefined || one === undefined ? null : waysOfSurvey(job, of, one, shop);
}

/** @returns null where the survey has no target, or nothing of the wall is a seat */
export function waysOfSurvey(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): WaysEvaluation | null {
  const aimed = aimedAt(job, bore, survey, shop);
  if (aimed === null) return null;
  const { feature, cleanUp } = aimed;
  const { decisions } = feature;
  const asked = waysMatter(job, aimed, shop);
  const standing =
    isPlanned(survey) && !isOwnSize(decisions)
      ? standingOf({ job, feature, bore, shop }, survey)
      : null;
  const ways = waysOf({ ...asked, standing: standing?.wall ?? null });
  const rules = wayRules(decisions, job.units);
  const work = hotWork(job.safety);
  const stops = [
    ...ownStops(decisions, ways.outcomes, rules),
    ...work.stops.map((stop): WayStop => ({ ...plain(stop), closes: 'heat' })),
  ];
  const gates: Gates = { heat: !work.open, all: stops.some(({ closes }) => closes === 'all') };
  return {
    ...ways,
    cleanUp,
    advice: advise(ways.outcomes, rules, gates, offLine(job, aimed)),
    stops,
    asks: work.asks,
    figures: asked.figures,
    rules,
    together: standing !== null && standing.came !== null,
    needs: needsOf(ways.outcomes, shop),
    bushingKnown: bore.facts.bushingOutside.mm > 0,
  };
}

/**
 * What the ways are worked out of, before anything is said of what stands from earlier surveys.
 *
 * @param only left out: for all of them
 */
export function waysMatter(job: Job, aimed: Aimed, shop: Shop | null, only?: WayName): WaysAsked {
  const { surface, target, removal, feature, cleanUp, facts, bore } = aimed;
  const { seats, keepouts, bushingOutside, pressFit, bossOutside } = bore.facts;
  const { decisions } = feature;
  return {
    surface,
    sd: removal.sd,
    seats,
    keepouts,
    target: target.diameter,
    axis: target.axis,
    bushing: bushingOutside.mm,
    pressFit: pressFit.mm,
    bossOutside: bossOutside.mm,
    figures: wayFigures(decisions, job.units, facts, perHeat(aimed)),
    cleanUp,
    squeeze: only === undefined || only === 'squeeze' ? squeezeAim(aimed) : null,
    shims: only === undefined || only === 'shim' ? shimAim(aimed) : null,
    standing: null,
    bare: bareOf(surface, bore.facts),
    grinder: (diameter) => grinderOf(toolFacts(decisions, shop, diameter, job.units)),
  };
}

/** The squeeze as its own part plans it. */
function squeezeAim(aimed: Aimed): SqueezeAim | null {
  const found = squeezePlan(aimed);
  if (found === null) return null;
  const { jaws, rows, most } = found.plan;
  return {
    jaws,
    rows,
    bent: rows.reduce((largest, { bent }) => Math.max(largest, bent.largest), 0),
    heats: heatsOf(needOf(most), perHeat(aimed)),
    upset: found.asked.upset,
  };
}

function shimAim(aimed: Aimed): ShimAim | null {
  const found = shimStack(aimed);
  return found === null || found.stack === null
    ? null
    : { round: found.round, layers: found.stack.layers };
}

function plain({ says, whom }: Stop): Pick<WayStop, 'says' | 'whom'> {
  return { says, whom };
}

function wayFigures(
  decisions: Decisions,
  units: Units,
  facts: MendingFacts,
  heat: Range,
): WayFigures {
  const mm = (key: Parameters<typeof wayFigureMm>[1]) => wayFigureMm(decisions, key, units);
  return {
    oversizeStep: mm('oversizeStep'),
    sleeveWall: mm('sleeveWall'),
    weldAllowance: facts.weld.allowance.mm,
    weldOver: facts.weld.over,
    squeezeUnder: facts.squeeze.under.mm,
    heatLeast: heat.least,
    heatMost: heat.most,
    shimLayers: MOST_LAYERS,
    shimLeast: facts.shim.least.mm,
    stock: facts.stock.sheets,
  };
}

function wayRules(decisions: Decisions, units: Units): WayRules {
  const mm = (key: Parameters<typeof wayFigureMm>[1]) => wayFigureMm(decisions, key, units);
  return {
    offShare: wayShare(decisions, 'offShare'),
    leastPress: mm('leastPress'),
    acceptLow: mm('acceptLow'),
    acceptShare: wayShare(decisions, 'acceptShare'),
    squeezeLow: mm('squeezeLow'),
    oversizeLow: mm('oversizeLow'),
    wallShare: wayShare(decisions, 'wallShare'),
  };
}

/**
 * How far the planned axis stands off the line of the other bores, per side, at the face where it is farther, as a share
 * of the running clearance; NaN where there is no line, or no clearance is known.
 */
function offLine(job: Job, { feature, bore, target, surface }: Aimed): number {
  const partner = partnerOf(job, feature);
  const limit = partnerLimit(partner, bore.facts.clearance);
  if (partner.status !== 'known' || limit === null || !(limit.clearance > 0)) return Number.NaN;
  const [own, line] = [target.axis, partner.axis];
  const at = (z: number) =>
    Math.hypot(
      own.x - line.x + (own.leanX - line.leanX) * z,
      own.y - line.y + (own.leanY - line.leanY) * z,
    );
  return Math.max(at(0), at(surface.grid.z.at(-1)!)) / limit.clearance;
}

const SPECIALIST =
  'the maker of the machine, or a qualified welding inspector or structural engineer where you are';

function ownStops(
  { crack }: Decisions,
  outcomes: readonly WayOutcome[],
  { wallShare: limit }: WayRules,
): WayStop[] {
  const stops: WayStop[] = [];
  if (crack === 'seen') {
    stops.push({
      says: 'Stop: a crack was seen. A bore that is cracked is not ground, pressed or heated before somebody qualified has looked at it.',
      whom: SPECIALIST,
      closes: 'all',
    });
  }
  const now = outcomes.find(({ name }) => name === 'leave');
  if (now !== undefined && now.wallLeft / now.target < limit) {
    stops.push({
      says: `Stop: the wall of the boss is thinner already than ${Math.round(100 * limit)} % of the bore’s diameter.`,
      whom: SPECIALIST,
      closes: 'all',
    });
  }
  return stops;
}
