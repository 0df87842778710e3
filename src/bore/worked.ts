/** What a pass took off, by the survey after it: how much of what was asked, where more, and whether past the target. */
import { fieldAt } from './gate.ts';
import { SEATED } from './removal.ts';
import type { Field, Removal, Sighting, WearSurface } from './types.ts';

/** A place read after the pass; across, mm: what both ends together gave. */
export interface CameOff {
  readonly theta: number;
  readonly z: number;
  readonly asked: number;
  readonly came: number;
  /** Two standard deviations of what came. */
  readonly give: number;
}

export interface WorkedOff {
  /** All places read, where something was asked or came off. */
  readonly places: readonly CameOff[];
  /** What came for what was asked; one standard deviation. NaN where nothing was asked. */
  readonly share: number;
  readonly shareSd: number;
  /** What this hand took in the pass where most was asked, per side, mm; NaN where nothing was asked. */
  readonly perPass: number;
  /** Where the difference is more than its give-or-take, the worst; null: nowhere. */
  readonly more: CameOff | null;
  readonly less: CameOff | null;
}

/** What came for what was asked, and one standard deviation of it. */
export type Came = Pick<WorkedOff, 'share' | 'shareSd'>;

/** Less asked than this across tells nothing of a hand, mm. */
const ASKED = 0.005;

/**
 * Across, both ends of a pair together: that is what every kind of survey knows, whichever side it takes as worn.
 *
 * @param planned per side, mm, on the grid of `before`; NaN nothing
 * @param sightings where it was read afterwards
 * @param together what all surveys together tell of the hand: the two surfaces by themselves are both guesses where only one of
 *   them was read; null: the surfaces alone tell
 */
export function workedOff(
  before: WearSurface,
  after: WearSurface,
  planned: Field,
  sightings: readonly Sighting[],
  together: Came | null = null,
): WorkedOff {
  const seen = new Set<string>();
  const places: CameOff[] = [];
  for (const { theta, z } of sightings) {
    const half = ((theta % Math.PI) + Math.PI) % Math.PI;
    const at = Math.PI - half < 1e-9 ? 0 : half;
    const key = `${at.toFixed(6)} ${z.toFixed(4)}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const pair = (of: WearSurface, field: Field) =>
      fieldAt(of.grid, field, at, z) + fieldAt(of.grid, field, at + Math.PI, z);
    const came = pair(after, after.mean) - pair(before, before.mean);
    const give = 2 * Math.hypot(pair(before, before.sdSeen), pair(after, after.sdSeen));
    places.push({ theta: at, z, asked: pair(before, planned), came, give });
  }
  const told = places.filter(({ asked }) => asked >= ASKED);
  const { share, shareSd } = told.length > 0 ? (together ?? leastSquares(told)) : UNTOLD;
  const greatest = planned.reduce((most, g) => (g > most ? g : most), 0);
  const off = [...places].sort((a, b) => a.came - a.asked - (b.came - b.asked));
  const [less, more] = [off[0], off.at(-1)];
  return {
    places,
    share,
    shareSd,
    perPass: share * greatest,
    more: more !== undefined && more.came - more.asked > more.give ? more : null,
    less: less !== undefined && less.asked - less.came > less.give ? less : null,
  };
}

const UNTOLD: Came = { share: Number.NaN, shareSd: Number.NaN };

function leastSquares(told: readonly CameOff[]): Came {
  const weight = told.reduce((sum, { asked }) => sum + asked * asked, 0);
  const share = told.reduce((sum, { asked, came }) => sum + asked * came, 0) / weight;
  const spread = told.reduce((sum, { asked, give }) => sum + (asked * give) ** 2 / 4, 0);
  return { share, shareSd: Math.sqrt(spread) / weight };
}

/** Metal is gone past the target. */
export interface Past {
  readonly theta: number;
  readonly z: number;
  /** How far the wall lies outside the target there, per side, mm, and two standard deviations. */
  readonly over: number;
  readonly give: number;
  /** Share of the seat that is past it for sure. */
  readonly share: number;
  /** Diameter about the same centre that cleans up all of the seat. */
  readonly cleanUp: number;
}

/**
 * Places where metal stood before the work and where the wall now lies outside the target by more than the
 * give-or-take. A place that was low as found is none of them.
 *
 * @param before the deviation before the work
 * @param places as `wallPlaces` gives it
 * @returns the worst; null: nowhere
 */
export function pastTarget(
  before: Field,
  now: Pick<Removal, 'deviation' | 'sd'>,
  places: Uint8Array,
  { grid: { theta, z } }: WearSurface,
  diameter: number,
): Past | null {
  let worst = -1;
  let beyond = 0;
  let seat = 0;
  let largest = 0;
  now.deviation.forEach((e, k) => {
    if (places[k] !== SEATED) return;
    seat++;
    largest = Math.max(largest, e);
    if (!(before[k]! < 0 && e > 2 * now.sd[k]!)) return;
    beyond++;
    if (worst < 0 || e > now.deviation[worst]!) worst = k;
  });
  if (worst < 0) return null;
  return {
    theta: theta[worst % theta.length]!,
    z: z[Math.floor(worst / theta.length)]!,
    over: now.deviation[worst]!,
    give: 2 * now.sd[worst]!,
    share: beyond / seat,
    cleanUp: diameter + 2 * largest,
  };
}
