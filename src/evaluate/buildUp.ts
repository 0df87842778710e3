/** Squeezing, shimming and welding one bore, and washers on its rims: worked out on demand, from one survey. */
import { type Rim, rimOf } from '../assembly/rim.ts';
import {
  type Deposit,
  depositOf,
  ELECTRODES,
  type Preheat,
  preheatOf,
  skipOrder,
} from '../assembly/weld.ts';
import { cellShares, SEATED, wallPlaces } from '../bore/removal.ts';
import type { Field, Removal, WearSurface, Zone } from '../bore/types.ts';
import { findZones } from '../bore/zones.ts';
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import { type MendingFacts, mendingFacts } from '../job/mendingFacts.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type Shims, shimsOf } from './shims.ts';
import { type Squeeze, squeezeOf } from './squeeze.ts';
import { type SurveyOf, surveyOf } from './surveyOf.ts';
import type { WithTarget } from './withTarget.ts';

export interface BuildUp {
  readonly facts: MendingFacts;
  /** Null where no place is so large that a squeeze is worth a heat. */
  readonly squeeze: Squeeze | null;
  /** Null where nothing is over the target. */
  readonly shims: Shims | null;
  readonly weld: Weld;
  readonly rims: readonly { readonly face: 'A' | 'B'; readonly rim: Rim }[];
}

export interface Weld {
  readonly deposit: Deposit;
  /** Places lower than finished size and allowance, as they are in this survey. */
  readonly low: readonly Zone[];
  /** Share of the seat that is lower, 0 to 1. */
  readonly lowShare: number;
  /** Stringers of the first layer in the order of welding, by clock position. */
  readonly order: readonly number[];
  /** Null while the carbon equivalent is not given. */
  readonly preheat: Preheat | null;
}

/** @returns null where the job holds no such survey, or it has no target */
export function buildUpOf(
  job: Job,
  asked: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): BuildUp | null {
  const found = surveyOf(job, asked, memory, shop);
  return found && buildUpOfSurvey(job, found.of, found.one, shop);
}

export function buildUpOfSurvey(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): BuildUp | null {
  const feature = job.features.find(({ id }) => id === bore.id);
  const { surface, target, removal } = survey;
  if (feature === undefined || surface === null || target === null || removal === null) return null;
  const facts = mendingFacts(job, feature, shop);
  const places = wallPlaces(surface, bore.facts.seats, bore.facts.keepouts);
  const worked = { bore, survey, surface, target, removal, facts, places };
  return {
    facts,
    squeeze: squeezeOf(worked),
    shims: shimsOf(worked),
    weld: weldOf(worked),
    rims: facts.rims.flatMap(({ face, readings, standOut }) => {
      const rim = rimOf(readings, facts.washers, standOut);
      return rim === null ? [] : [{ face, rim }];
    }),
  };
}

function weldOf({ bore, surface, removal, facts, places }: WithTarget): Weld {
  const { grid, mean } = surface;
  const { allowance, over, electrode, beadHeight, beadWidth, overlap, carbon } = facts.weld;
  const wanted = removal.deviation.map((e, k) => {
    if (places[k] !== SEATED) return Number.NaN;
    return over === 'low' && !(e > 0) ? 0 : Math.max(0, e + allowance.mm);
  });
  const shares = cellShares(grid);
  const share = mean.map((_, k) => shares[Math.floor(k / grid.theta.length)]!);
  const deposit = depositOf({
    thickness: wanted,
    radius: mean,
    share,
    run: seatDepth(bore, surface),
    bead: { height: beadHeight.mm, width: beadWidth.mm, overlap: overlap.value / 100 },
    electrode: ELECTRODES.find(({ core }) => core === electrode) ?? ELECTRODES[1]!,
  });
  const order = skipOrder(deposit.stringers);
  return {
    deposit,
    ...stillLow(surface, removal, wanted),
    order: order.map((place) => (2 * Math.PI * place) / deposit.stringers),
    preheat: preheatOf(carbon),
  };
}

function stillLow(
  surface: WearSurface,
  removal: Removal,
  wanted: Field,
): Pick<Weld, 'low' | 'lowShare'> {
  const low = wanted.map((t) => (t > 0 ? t : Number.NEGATIVE_INFINITY));
  const none = wanted.map((t) => (Number.isNaN(t) ? Number.NaN : 0));
  const shares = cellShares(surface.grid);
  let [all, lower] = [0, 0];
  wanted.forEach((t, k) => {
    if (Number.isNaN(t)) return;
    const share = shares[Math.floor(k / surface.grid.theta.length)]!;
    all += share;
    if (t > 0) lower += share;
  });
  return {
    low: findZones(surface, { ...removal, deviation: low, likely: none }),
    lowShare: all > 0 ? lower / all : Number.NaN,
  };
}

/** Depth that bushings sit on, mm. */
function seatDepth({ facts }: BoreEvaluation, { grid }: WearSurface): number {
  const length = grid.z[grid.z.length - 1]!;
  return facts.seats.reduce((sum, { from, to }) => sum + Math.min(to, length) - from, 0);
}
