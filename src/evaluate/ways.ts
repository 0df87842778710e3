/** The ways of mending of one survey, with what is at hand for them, what stands in their way, and the advice. */
import { type Advice, advise, type Gates, type WayRules } from '../bore/advice.ts';
import { followsBore, freeAxis } from '../bore/centre.ts';
import { wallPlaces } from '../bore/removal.ts';
import type { Axis, Target, WearSurface } from '../bore/types.ts';
import { type Ways, waysOf } from '../bore/ways.ts';
import type { WayFigures, WayName, WayOutcome } from '../bore/wayTypes.ts';
import { type BoreEvaluation, evaluate, type Memory, type SurveyEvaluation } from '../evaluate.ts';
import type { BoreFacts } from '../job/facts.ts';
import { OWN_SIZE } from '../job/featureEdits.ts';
import { hotWork, type Stop } from '../job/safety.ts';
import type { Decisions, Feature, Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { lengthMm } from '../job/units.ts';
import { usualStock, wayFigureMm, wayShare } from '../job/wayFigures.ts';
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
  readonly advice: Advice;
  readonly stops: readonly WayStop[];
  /** Questions about heat that nobody has answered yet. */
  readonly asks: readonly string[];
  readonly figures: WayFigures;
  readonly rules: WayRules;
  readonly needs: Readonly<Record<WayName, readonly Need[]>>;
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
  { id, facts }: Pick<BoreEvaluation, 'id' | 'facts'>,
  survey: SurveyEvaluation,
  shop: Shop | null,
): WaysEvaluation | null {
  const feature = job.features.find((one) => one.id === id);
  const { surface, target, removal } = survey;
  if (feature === undefined || surface === null || target === null || removal === null) return null;
  const { seats, keepouts, bushingOutside, pressFit, bossOutside } = facts;
  const figures = wayFigures(feature.decisions, job.units, shop);
  const ways = waysOf({
    surface,
    sd: removal.sd,
    seats,
    keepouts,
    ...standardTarget(feature, facts, target, surface),
    bushing: bushingOutside.mm,
    pressFit: pressFit.mm,
    bossOutside: bossOutside.mm,
    figures,
  });
  if (ways === null) return null;
  const rules = wayRules(feature.decisions, job.units);
  const work = hotWork(job.safety);
  const stops = [
    ...ownStops(feature.decisions, ways.outcomes, rules),
    ...work.stops.map((stop): WayStop => ({ ...plain(stop), closes: 'heat' })),
  ];
  const gates: Gates = { heat: !work.open, all: stops.some(({ closes }) => closes === 'all') };
  return {
    ...ways,
    advice: advise(ways.outcomes, rules, gates),
    stops,
    asks: work.asks,
    figures,
    rules,
    needs: needsOf(ways.outcomes, shop),
    bushingKnown: bushingOutside.mm > 0,
  };
}

function plain({ says, whom }: Stop): Pick<WayStop, 'says' | 'whom'> {
  return { says, whom };
}

/** What the ways aim at that keep the bushing's size: the target, unless that is another way's. */
function standardTarget(
  { decisions }: Feature,
  { bushingOutside, pressFit, seats, keepouts }: BoreFacts,
  { diameter, axis, centreRule }: Target,
  surface: WearSurface,
): { readonly target: number; readonly axis: Axis; readonly free: boolean } {
  const free = followsBore(centreRule);
  const usual = bushingOutside.mm - pressFit.mm;
  const { way } = decisions;
  const others = way !== undefined && OWN_SIZE.includes(way) && lengthMm(decisions.target) > 0;
  if (!others || !(usual > 0)) return { target: diameter, axis, free };
  const places = wallPlaces(surface, seats, keepouts);
  const at = followsBore(centreRule) ? freeAxis(surface, usual / 2, places, centreRule) : axis;
  return { target: usual, axis: at, free };
}

/** Layers that still hold each other: more slide. Judgement. */
const SHIM_LAYERS = 3;
/** Sheet that is thicker is no shim, mm. */
const THICKEST_SHIM = 1.6;

function wayFigures(decisions: Decisions, units: Units, shop: Shop | null): WayFigures {
  const own = (shop?.stock ?? []).map(({ thickness }) => lengthMm(thickness));
  const stock = own.filter((mm) => mm > 0 && mm <= THICKEST_SHIM);
  const mm = (key: Parameters<typeof wayFigureMm>[1]) => wayFigureMm(decisions, key, units);
  return {
    oversizeStep: mm('oversizeStep'),
    sleeveWall: mm('sleeveWall'),
    weldAllowance: mm('weldAllowance'),
    weldOver: decisions.weld?.over ?? 'seat',
    squeezeUnder: mm('squeezeUnder'),
    heatLeast: mm('heatLeast'),
    heatMost: mm('heatMost'),
    shimLayers: SHIM_LAYERS,
    shimLeast: mm('shimLeast'),
    stock: stock.length > 0 ? stock : usualStock(units),
  };
}

function wayRules(decisions: Decisions, units: Units): WayRules {
  const mm = (key: Parameters<typeof wayFigureMm>[1]) => wayFigureMm(decisions, key, units);
  return {
    leastPress: mm('leastPress'),
    acceptLow: mm('acceptLow'),
    acceptShare: wayShare(decisions, 'acceptShare'),
    squeezeLow: mm('squeezeLow'),
    oversizeLow: mm('oversizeLow'),
    wallShare: wayShare(decisions, 'wallShare'),
  };
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
