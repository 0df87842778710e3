/** What a bushing sits on once a target is ground: where it is tight against the wall, and where air stays behind it. */
import { cellShares, type Keepout, SEATED, type Span, wallPlaces } from './removal.ts';
import type { Field, Grid, WearSurface } from './types.ts';

/** A share of the seat, 0 to 1: at the mean, and with every place so much larger, or smaller, as the give-or-take. */
export interface Share {
  readonly likely: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Of the seat after grinding. Angle times depth counts as area; places to keep off count for nothing. All NaN where
 * nothing of the wall is a seat.
 */
export interface Seating {
  /** Held tight by the bushing at hand; null: its size is not known. */
  readonly hand: Share | null;
  /** Held tight by a bushing made to suit: the target and the wanted press fit. */
  readonly suit: Share;
  /** The largest place: how far it lies over the target, per side, mm, not below 0; where; two standard deviations. */
  readonly gap: {
    readonly over: number;
    readonly theta: number;
    readonly z: number;
    readonly give: number;
  };
  /** Air left there behind the bushing at hand, per side, mm, not below 0; NaN: its size is not known. */
  readonly behind: number;
}

/** Across, mm. */
export interface Fit {
  readonly target: number;
  /** Outside of the bushing at hand; NaN: not known. */
  readonly bushing: number;
  readonly pressFit: number;
}

/** Standard deviations of the give-or-take. */
const GIVE = 2;

/** The wall as a seat: which of its places count, and for how much. */
export interface SeatPlaces {
  readonly grid: Grid;
  /** As `wallPlaces` gives them. */
  readonly places: Uint8Array;
  /** Angle times depth of one place of each row, rad mm. */
  readonly shares: Float64Array;
}

export function seatPlaces(
  surface: WearSurface,
  seats: readonly Span[],
  keepouts: readonly Keepout[],
): SeatPlaces {
  const { grid } = surface;
  return { grid, places: wallPlaces(surface, seats, keepouts), shares: cellShares(grid) };
}

/**
 * @param deviation per side in the target's frame before grinding; what stands proud (below 0) is ground to 0
 * @param sd its standard deviation
 */
export function seating(wall: SeatPlaces, deviation: Field, sd: Field, fit: Fit): Seating {
  const room = (fit.bushing - fit.target) / 2;
  const rooms = [Number.isNaN(room) ? 0 : room, fit.pressFit / 2] as const;
  const over = new Float64Array(deviation.length);
  const at = (larger: number) => {
    for (let k = 0; k < over.length; k++) over[k] = deviation[k]! + larger * sd[k]!;
    return heldShares(wall, over, rooms);
  };
  const [likely, least, most] = [at(0), at(GIVE), at(-GIVE)];
  const share = (i: 0 | 1): Share => ({ likely: likely[i], least: least[i], most: most[i] });
  const gap = largest(wall, deviation, sd);
  return {
    hand: Number.isNaN(room) ? null : share(0),
    suit: share(1),
    gap,
    behind: Number.isNaN(room) ? Number.NaN : Math.max(0, gap.over - room),
  };
}

/**
 * Shares of the seat where the wall lies within either room of the target; straight between the places of a row, so that
 * an edge between two of them counts where it is.
 *
 * @param rooms mm; a bushing that leaves none is tight nowhere
 */
function heldShares(
  { grid, places, shares }: SeatPlaces,
  over: Field,
  [one, other]: readonly [number, number],
): readonly [number, number] {
  const columns = grid.theta.length;
  let [all, heldOne, heldOther] = [0, 0, 0];
  for (let iz = 0; iz < grid.z.length; iz++) {
    const row = iz * columns;
    let [count, ofOne, ofOther] = [0, 0, 0];
    for (let it = 0; it < columns; it++) {
      const k = row + it;
      const next = it + 1 < columns ? k + 1 : row;
      if (places[k] !== SEATED || places[next] !== SEATED) continue;
      count++;
      if (one > 0) ofOne += shareBelow(over[k]!, over[next]!, one);
      if (other > 0) ofOther += shareBelow(over[k]!, over[next]!, other);
    }
    all += count * shares[iz]!;
    heldOne += ofOne * shares[iz]!;
    heldOther += ofOther * shares[iz]!;
  }
  return all > 0 ? [heldOne / all, heldOther / all] : [Number.NaN, Number.NaN];
}

/** Share of the straight way from a to b that lies below a level; 0 where either is not known. */
function shareBelow(a: number, b: number, level: number): number {
  if (a < level) return b < level ? 1 : b >= level ? (level - a) / (b - a) : 0;
  return b < level && a >= level ? (level - b) / (a - b) : 0;
}

function largest({ grid, places }: SeatPlaces, deviation: Field, sd: Field): Seating['gap'] {
  let most = -1;
  for (let k = 0; k < deviation.length; k++) {
    if (places[k] !== SEATED || Number.isNaN(deviation[k]!)) continue;
    if (most < 0 || deviation[k]! > deviation[most]!) most = k;
  }
  const none = Number.NaN;
  if (most < 0) return { over: none, theta: none, z: none, give: none };
  const columns = grid.theta.length;
  return {
    over: Math.max(0, deviation[most]!),
    theta: grid.theta[most % columns]!,
    z: grid.z[Math.floor(most / columns)]!,
    give: GIVE * sd[most]!,
  };
}
