/** What a way of mending comes to, once it is known what the wall is like before it is ground, and what goes in. */
import { course, fewestPasses, mostLeft, type PassMatter, waitsAt } from './passes.ts';
import { metalVolume, SEATED, STEEL } from './removal.ts';
import { type Seating, type SeatPlaces, seating } from './seating.ts';
import type { Axis, Field, WearSurface } from './types.ts';
import type { Metal, SqueezeOutcome, WayName, WayOutcome } from './wayTypes.ts';

export interface Work {
  readonly name: WayName;
  /** Across, mm. */
  readonly target: number;
  readonly axis: Axis;
  readonly bushing: number;
  readonly outside: number;
  /** The wall before it is ground, and per side about the target; closed in or built up as the way has it. */
  readonly surface: WearSurface;
  readonly deviation: Field;
  /** What the passes go by, where that is another; left out or null: the same. */
  readonly standing?: Pick<PassMatter, 'surface' | 'removal' | 'worked'> | null;
  readonly tool: 'grinder' | 'boring bar' | 'none';
  readonly on?: Metal;
  readonly layers?: readonly number[];
  readonly squeeze?: Omit<SqueezeOutcome, 'drawnIn'>;
  /** The wall after a squeeze that draws in as much as the hot metal may, where `surface` is the one that does least. */
  readonly drawnIn?: Pick<Work, 'surface' | 'deviation'>;
}

export interface SeatKnown {
  readonly wall: SeatPlaces;
  /** Standard deviation of the deviation as measured. */
  readonly sd: Field;
  /** Outside of the boss, across; NaN: not known. */
  readonly bossOutside: number;
  /** As in `PassMatter`. */
  readonly bare: Uint8Array;
  /** What a bore of that size, across, is ground with. */
  readonly grinder: (diameter: number) => Pick<PassMatter, 'tool' | 'slope'>;
}

const NO_METAL: Metal = { volume: 0, mass: 0, greatest: 0 };

export function outcome(work: Work, known: SeatKnown): WayOutcome {
  const { wall, sd, bossOutside } = known;
  const { name, target, axis, bushing, outside, tool } = work;
  const ground = tool !== 'none';
  const off = ground ? metalOff(work, wall) : NO_METAL;
  const { deviation, measuredAnew } = finished(work, wall.places);
  const seen = seating(wall, work.deviation, sd, { target, bushing: outside, pressFit: 0 });
  return {
    name,
    target,
    axis,
    bushing,
    outside,
    off,
    on: work.on ?? NO_METAL,
    pressFit: pressFits(wall, deviation, outside - target, measuredAnew ? null : sd),
    seated: seatedShare(seen, measuredAnew),
    lowShare: shareOver(wall, deviation),
    gap: { over: seen.gap.over, behind: seen.behind, theta: seen.gap.theta, z: seen.gap.z },
    wallLeft: bossOutside / 2 - target / 2 - seen.gap.over,
    ...passesOf(work, known),
    layers: work.layers ?? [],
    squeeze: squeezeOf(work, known),
    deviation,
  };
}

/** The wall once a way is done: its size, axis and what sits in it, as in `WayOutcome`. */
export interface WallAfter
  extends Pick<WayOutcome, 'name' | 'target' | 'axis' | 'bushing' | 'outside' | 'deviation'> {
  /** As `deviation`, before anything is ground: what the give-or-take is laid on. */
  readonly before: Field;
  /** After heat or weld: nothing is known of how well. */
  readonly measuredAnew: boolean;
}

export function finished(work: Work, places: Uint8Array): WallAfter {
  const { name, target, axis, bushing, outside, tool } = work;
  const deviation = work.deviation.slice();
  if (tool !== 'none') toTheTarget(deviation, places);
  const round = { target, axis, bushing, outside };
  return { name, ...round, deviation, before: work.deviation, measuredAnew: isMeasuredAnew(name) };
}

/** Takes off what stands proud on the seats; `max` keeps NaN. */
function toTheTarget(deviation: Field, places: Uint8Array): void {
  for (let k = 0; k < deviation.length; k++) {
    if (places[k] === SEATED) deviation[k] = Math.max(0, deviation[k]!);
  }
}

/** More passes than this nobody takes by hand where a machine can bore: judgement. */
const BY_HAND = 20;

/**
 * The passes as they are given to the bench. A bore that is measured anew before is taken to have become what is predicted
 * of it, and to be known as well as today.
 */
function passesOf(
  work: Work,
  { wall: { places }, sd, bare, grinder }: SeatKnown,
): Pick<WayOutcome, 'passes' | 'stays' | 'fewest' | 'waits'> {
  const { name, tool, target, surface, deviation, standing } = work;
  const none = Number.NaN;
  const machine = { passes: none, stays: none, fewest: none, waits: null };
  if (tool === 'boring bar') return machine;
  const removal = { deviation, sd };
  const radius = target / 2;
  const matter = { surface, removal, places, bare, radius, ...grinder(target) };
  if (tool === 'none') return { ...machine, passes: 0, stays: mostLeft(matter, deviation) };
  if (isMeasuredAnew(name)) {
    const fewest = fewestPasses(matter);
    return fewest > BY_HAND
      ? { ...machine, fewest }
      : { ...machine, passes: course(everyFourth(matter)).removals.length };
  }
  const stands = { ...matter, ...standing };
  const done = course(stands);
  return {
    passes: done.removals.length,
    stays: mostLeft(matter, done.deviation),
    fewest: none,
    waits: done.waiting && waitsAt(stands, done.waiting),
  };
}

/**
 * The same wall at every fourth place round the clock, at all depths: how many passes a bore will take that is still to become
 * what is predicted needs no more, and a quarter of the time.
 */
function everyFourth(matter: PassMatter): PassMatter {
  const { surface, removal, places, bare } = matter;
  const { theta } = surface.grid;
  if (theta.length % 4 !== 0) return matter;
  const few = (field: Field) => fourths(field, new Float64Array(field.length / 4));
  const flags = (field: Uint8Array) => fourths(field, new Uint8Array(field.length / 4));
  return {
    ...matter,
    surface: {
      ...surface,
      grid: { ...surface.grid, theta: few(theta) },
      mean: few(surface.mean),
      sd: few(surface.sd),
    },
    removal: { deviation: few(removal.deviation), sd: few(removal.sd) },
    places: flags(places),
    bare: flags(bare),
  };
}

function fourths<Kind extends Field | Uint8Array>(field: Kind, out: Kind): Kind {
  for (let k = 0; k < out.length; k++) out[k] = field[4 * k]!;
  return out;
}

function squeezeOf(work: Work, known: SeatKnown): WayOutcome['squeeze'] {
  const { squeeze, drawnIn } = work;
  if (squeeze === undefined) return null;
  const smallest = { ...work, ...drawnIn };
  const { passes } = passesOf(smallest, known);
  return { ...squeeze, drawnIn: { passes, off: metalOff(smallest, known.wall) } };
}

/** After heat or weld the bore is another one, and is measured before it is ground. */
function isMeasuredAnew(name: WayName): boolean {
  return name === 'squeeze' || name === 'weld';
}

export function metal(volume: number, greatest: number): Metal {
  return { volume, mass: volume * STEEL, greatest };
}

function metalOff({ surface, deviation }: Work, { places }: SeatPlaces): Metal {
  const proud = new Float64Array(deviation.length);
  let greatest = 0;
  for (let k = 0; k < proud.length; k++) {
    if (places[k] !== SEATED || !(deviation[k]! < 0)) continue;
    proud[k] = -deviation[k]!;
    greatest = Math.max(greatest, proud[k]!);
  }
  return metal(metalVolume(surface, proud), greatest);
}

/** The seat that is held, of a bushing whose size is known. */
export function seatedShare({ hand }: Seating, measuredAnew: boolean): WayOutcome['seated'] {
  const none = Number.NaN;
  const { likely, least, most } = hand ?? { likely: none, least: none, most: none };
  return measuredAnew ? { likely, least: none, most: none } : { likely, least, most };
}

/**
 * Least, mean and greatest local press fit, across, over the seat.
 *
 * @param deviation per side, of the finished wall; the bushing stands `tight` over a wall of 0, across
 * @param sd null: the bore is measured anew before, and nothing is known of how well
 */
export function pressFits(
  { grid, places, shares }: SeatPlaces,
  deviation: Field,
  tight: number,
  sd: Field | null,
): WayOutcome['pressFit'] {
  const columns = grid.theta.length;
  let [least, greatest] = [-1, -1];
  let [sum, all] = [0, 0];
  for (let k = 0; k < deviation.length; k++) {
    const e = deviation[k]!;
    if (places[k] !== SEATED || Number.isNaN(e)) continue;
    const share = shares[Math.floor(k / columns)]!;
    all += share;
    sum += share * e;
    if (least < 0 || e > deviation[least]!) least = k;
    if (greatest < 0 || e < deviation[greatest]!) greatest = k;
  }
  const none = Number.NaN;
  if (least < 0) {
    return { least: none, mean: none, greatest: none, theta: none, z: none, give: none };
  }
  const tightAt = (e: number) => tight - 2 * e;
  return {
    least: tightAt(deviation[least]!),
    mean: tightAt(sum / all),
    greatest: tightAt(deviation[greatest]!),
    theta: grid.theta[least % columns]!,
    z: grid.z[Math.floor(least / columns)]!,
    // Two standard deviations per side are four across.
    give: sd === null ? none : 4 * sd[least]!,
  };
}

function shareOver({ grid, places, shares }: SeatPlaces, deviation: Field): number {
  const columns = grid.theta.length;
  let [over, all] = [0, 0];
  for (let k = 0; k < deviation.length; k++) {
    if (places[k] !== SEATED || Number.isNaN(deviation[k]!)) continue;
    const share = shares[Math.floor(k / columns)]!;
    all += share;
    if (deviation[k]! > OVER) over += share;
  }
  return all > 0 ? over / all : Number.NaN;
}

/** A place that lies over the target by no more than this is on it: far under what any gauge reads, mm. */
const OVER = 1e-6;
