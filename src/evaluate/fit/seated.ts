/**
 * A bushing in its bore, before anything is pressed: the wall as the chosen way is to leave it, or as it was measured,
 * and how far the bushing's outside stands over it at every place.
 */

import type { Span } from '../../bore/removal.ts';
import { type Share, seating, seatPlaces } from '../../bore/seating.ts';
import type { Axis, Field, Grid } from '../../bore/types.ts';
import { seatedShare, type WallAfter } from '../../bore/wayOutcome.ts';
import { wallAfter } from '../../bore/ways.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { seatOf } from '../../job/facts.ts';
import type { Bushing, Feature, Job } from '../../job/schema.ts';
import type { Shop } from '../../job/shop.ts';
import { bushingOutsideMm } from '../../job/sizes.ts';
import { lengthMm } from '../../job/units.ts';
import { type Aimed, aimedAt } from '../aimed.ts';
import { waysMatter } from '../ways.ts';

/** One bushing of one bore; mm, NaN not known. */
export interface Seated {
  readonly id: string;
  readonly name: string;
  /** `made`: to suit the target, as none is at hand or the way asks for one of its own. */
  readonly from: 'measured' | 'made';
  /** Across; outside as it goes in, shims and sleeve left out. */
  readonly outside: number;
  readonly inside: number;
  readonly length: number;
  /** Depths from face A between which it sits. */
  readonly seat: Span;
  /** As typed; undefined: not said. */
  readonly material: string | undefined;
  readonly boss: { readonly outside: number; readonly material: string | undefined };
  readonly wall: SeatedWall;
  /** Of the pin as typed into the list of its sizes. */
  readonly pins: readonly number[];
}

/** The wall that it sits on, about the axis on which it sits; fields `[z][theta]`. */
export interface SeatedWall {
  readonly kind: 'planned' | 'measured';
  readonly way: WallAfter['name'];
  readonly grid: Grid;
  readonly axis: Axis;
  /** Size of the wall where it is on target, across. */
  readonly target: number;
  /** Of the bushing with its shims or sleeve, across. */
  readonly outside: number;
  /** Shares of the seat that are held, as the ways of mending tell them. */
  readonly held: Share;
  /** 1 where this bushing sits and is to be held (`SEATED`), 2 kept off, 0 elsewhere. */
  readonly places: Uint8Array;
  /** Angle times depth of one place of each row, rad mm. */
  readonly shares: Float64Array;
  /** Across: what the bushing, with shims or sleeve, stands over the wall there; below 0 is air; NaN not known. */
  readonly press: Field;
  /** Per side: one standard deviation of the wall; null where it is measured anew before. */
  readonly sd: Field | null;
}

/** What the fit of one bore is worked out of. */
export interface FitMatter extends Aimed {
  readonly job: Job;
  readonly shop: Shop | null;
}

export function fitMatter(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): FitMatter | null {
  const aimed = aimedAt(job, bore, survey, shop);
  return aimed && { ...aimed, job, shop };
}

/** Every bushing of the bore; one made to suit the target where the job names none. */
export function seatedOf(matter: FitMatter): readonly Seated[] {
  const { feature, bore } = matter;
  const after = afterOf(matter);
  const boss = { outside: bore.facts.bossOutside.mm, material: feature.boss?.material };
  const pins = (feature.pin?.diameters ?? []).map((d) => lengthMm(d)).filter((mm) => mm > 0);
  const length = bore.facts.length.mm;
  const common = { boss, pins };
  if (feature.bushings.length === 0) {
    const seat = { from: 0, to: length };
    const none = Number.NaN;
    return [
      {
        ...common,
        id: '',
        name: 'A bushing made to suit',
        from: 'made',
        outside: after.bushing,
        inside: none,
        length: none,
        seat,
        material: undefined,
        wall: wallFor(matter, after, after.outside, seat),
      },
    ];
  }
  return feature.bushings.map((bushing) => {
    const seat = seatOf(bushing, length);
    const own = bushingOutsideMm(bushing);
    const suits = isMade(matter.feature, own);
    const outside = suits ? after.bushing : own;
    return {
      ...common,
      id: bushing.id,
      name: bushing.name,
      from: suits ? ('made' as const) : ('measured' as const),
      outside,
      ...insideOf(bushing),
      seat,
      material: bushing.material,
      // Shims or a sleeve come on top of the bushing that goes in.
      wall: wallFor(matter, after, outside + (after.outside - after.bushing), seat),
    };
  });
}

function insideOf(bushing: Bushing): Pick<Seated, 'inside' | 'length'> {
  return { inside: lengthMm(bushing.inside), length: lengthMm(bushing.length) };
}

/** A way that brings its own size brings its own bushing, but for a sleeve and shims, which take the one at hand. */
function isMade({ decisions: { way } }: Feature, own: number): boolean {
  return !(own > 0) || way === 'oversize';
}

/** Nobody has said: the bore is ground to the target. A way that has nothing to do here leaves what grinding leaves. */
function afterOf({ feature, job, shop, ...aimed }: FitMatter): WallAfter {
  const { way, fit } = feature.decisions;
  const measured = fit?.wall === 'measured';
  const wanted = measured ? 'leave' : way === undefined || way === 'undecided' ? 'grind' : way;
  const asked = waysMatter(job, { ...aimed, feature }, shop, wanted);
  return wallAfter(asked, wanted) ?? wallAfter(asked, 'grind')!;
}

function wallFor(matter: FitMatter, after: WallAfter, outside: number, seat: Span): SeatedWall {
  const { surface, bore, removal, feature } = matter;
  const far = surface.grid.z.at(-1)!;
  const within = bore.facts.seats
    .map(({ from, to }) => ({ from: Math.max(from, seat.from), to: Math.min(to, seat.to, far) }))
    .filter(({ from, to }) => to > from);
  const { grid, places, shares } = seatPlaces(surface, within, bore.facts.keepouts);
  const fit = { target: after.target, bushing: outside, pressFit: 0 };
  const seen = seating({ grid, places, shares }, after.before, removal.sd, fit);
  const press = after.deviation.map((e) => outside - after.target - 2 * e);
  return {
    kind: feature.decisions.fit?.wall ?? 'planned',
    way: after.name,
    grid,
    axis: after.axis,
    target: after.target,
    outside,
    held: seatedShare(seen, after.measuredAnew),
    places,
    shares,
    press,
    sd: after.measuredAnew ? null : removal.sd,
  };
}
