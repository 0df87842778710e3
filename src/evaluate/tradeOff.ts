/** What other sizes of target would cost and leave, of one survey: worked out on demand, once for all sizes. */
import { followsBore } from '../bore/centre.ts';
import { SEATED, wallPlaces } from '../bore/removal.ts';
import { type TradeOffPoint, tradeOff } from '../bore/tradeOff.ts';
import type { Plugs, WearSurface } from '../bore/types.ts';
import type { Memory, SurveyEvaluation } from '../evaluate.ts';
import { setDecision } from '../job/edits.ts';
import type { BoreFacts } from '../job/facts.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { MM_PER_INCH } from '../job/units.ts';
import { type SurveyOf, surveyOf } from './surveyOf.ts';

export interface TradeOff {
  /** Round figures of the job's units between which a target may be looked for, and what it moves by, mm. */
  readonly range: { readonly least: number; readonly greatest: number; readonly step: number };
  /** By diameter, ascending. */
  readonly points: readonly TradeOffPoint[];
  readonly marks: readonly SizeMark[];
}

/** A size that means something on this job, across, mm. */
export interface SizeMark {
  readonly kind: 'plug' | 'average' | 'clean-up' | 'usual' | 'bushing';
  readonly diameter: number;
}

/** Even sizes over the range; what a mark or a jump needs comes on top. */
const SIZES = 61;

/**
 * @param memory what was worked out of the job itself; it is read and left as it is
 * @returns null where the job holds no such survey, or it has no surface
 */
export function tradeOffOf(
  job: Job,
  { bore, survey }: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): TradeOff | null {
  const asked = { bore, survey };
  const found = surveyOf(job, asked, memory, shop);
  const surface = found?.one.surface;
  if (!found || !surface) return null;
  const { one, of } = found;
  if (one.target !== null) return ofSurvey(one, of.facts, job.units);
  // While no size is wanted, any will do: neither frame nor give-or-take depend on it.
  const sized = surveyOf(withSize(job, bore, surface), asked, memory, shop);
  return sized && ofSurvey(sized.one, of.facts, job.units);
}

/** The job with the bore's mean size as target. */
function withSize(job: Job, bore: string, { mean }: WearSurface): Job {
  const diameter = (2 * mean.reduce((sum, r) => sum + r, 0)) / mean.length;
  return setDecision(job, bore, { target: { text: diameter.toFixed(4), unit: 'mm' } });
}

/** @returns null where the survey has no target */
export function ofSurvey(
  { surface, target, removal, plugs }: SurveyEvaluation,
  facts: BoreFacts,
  units: Units,
): TradeOff | null {
  if (surface === null || target === null || removal === null) return null;
  const { seats, keepouts, bushingOutside, pressFit } = facts;
  const fit = { bushing: bushingOutside.mm, pressFit: pressFit.mm };
  const marks = marksOf(plugs, fit.bushing - fit.pressFit, fit.bushing);
  const sizes = [...marks.map(({ diameter }) => diameter), target.diameter];
  const range = rangeOf([...sizesAcross(surface, facts), ...sizes], units);
  const axis = followsBore(target.centreRule) ? target.centreRule : target.axis;
  const asked = { surface, sd: removal.sd, axis, seats, keepouts, fit };
  return { range, marks, points: tradeOff(asked, diametersOf(range, marks)) };
}

/** Just under a bushing's own size it is still tight: the curve falls there, and not on a slope before. */
const JUST_UNDER = 1e-4;

function diametersOf({ least, greatest }: TradeOff['range'], marks: readonly SizeMark[]): number[] {
  const even = Array.from(
    { length: SIZES },
    (_, i) => least + ((greatest - least) * i) / (SIZES - 1),
  );
  const more = marks.flatMap(({ kind, diameter }) =>
    kind === 'bushing' ? [diameter - JUST_UNDER, diameter] : [diameter],
  );
  return [...new Set([...even, ...more])].sort((a, b) => a - b);
}

function marksOf(plugs: Plugs | null, usual: number, bushing: number): SizeMark[] {
  const sizes = [
    { kind: 'plug', diameter: plugs?.bore?.entering?.diameter },
    { kind: 'average', diameter: plugs?.bore?.average?.diameter },
    { kind: 'clean-up', diameter: plugs?.bore?.around?.diameter },
    { kind: 'usual', diameter: usual },
    { kind: 'bushing', diameter: bushing },
  ] as const;
  return sizes.flatMap(({ kind, diameter }) =>
    diameter !== undefined && diameter > 0 ? [{ kind, diameter }] : [],
  );
}

/** Least and greatest diameter of the wall that a bushing sits on, mm; none where nothing is a seat. */
function sizesAcross(surface: WearSurface, { seats, keepouts }: BoreFacts): number[] {
  const { grid, mean } = surface;
  const places = wallPlaces(surface, seats, keepouts);
  const columns = grid.theta.length;
  const half = columns / 2;
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < mean.length; k++) {
    if (places[k] !== SEATED) continue;
    const row = k - (k % columns);
    const across = mean[k]! + mean[row + ((k + half) % columns)]!;
    least = Math.min(least, across);
    greatest = Math.max(greatest, across);
  }
  return greatest >= least ? [least, greatest] : [];
}

/** From a little under the smallest to a little over the largest, on round steps of 0.0001 in or 0.002 mm. */
function rangeOf(sizes: readonly number[], units: Units): TradeOff['range'] {
  const step = units === 'in' ? 0.0001 * MM_PER_INCH : 0.002;
  const room = units === 'in' ? 0.001 * MM_PER_INCH : 0.025;
  return {
    least: Math.floor((Math.min(...sizes) - room) / step) * step,
    greatest: Math.ceil((Math.max(...sizes) + room) / step) * step,
    step,
  };
}
