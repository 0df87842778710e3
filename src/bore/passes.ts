/**
 * The metal taken in passes: each one reached by the tool, blended out, and short of the target.
 *
 * A pass asks for the least of the tool's bite, half of what is left, and, in the first, what is sure at two standard
 * deviations. Of that it takes what the tool reaches, and of that the largest part that is nowhere steeper than the
 * slope. The passes after the first are a forecast: each gate is taken to find what was planned, so that what is left
 * is known there. Worked out anew from the readings at the gate, each becomes a first pass in its turn, and never
 * ends nearer to the target than those readings tell.
 */
import { basins } from './basins.ts';
import { feather, leastBeyond } from './feather.ts';
import type { Left, Pass, PassPlan, Waits } from './passTypes.ts';
import { reach, type Tool } from './reach.ts';
import { KEPT_OFF, metalVolume, SEATED, STEEL } from './removal.ts';
import { roomOf } from './room.ts';
import type { Field, Removal, WearSurface } from './types.ts';
import { highZones } from './zones.ts';

/** Less than this is on size, per side, mm: 0.0001 in. */
export const ON_SIZE = 0.0025;
/** A pass that takes less than this anywhere is no pass, per side, mm: it would not be told from none. */
export const NO_PASS = 0.0005;
/** The last 0.001 in across, per side, mm: common practice. */
const BY_STRIP = 0.0127;
const MOST_PASSES = 60;
/** Standard deviations by which a place may be larger than at the mean. */
export const SURE = 2;

/** What the passes are worked out of. */
export interface PassMatter {
  readonly surface: WearSurface;
  readonly removal: Pick<Removal, 'deviation' | 'sd'>;
  /** As `wallPlaces` gives it. */
  readonly places: Uint8Array;
  /** 1 where something is kept off because there is no metal: a hole, a groove, a chamfer. */
  readonly bare: Uint8Array;
  /** Of the target cylinder, mm. */
  readonly radius: number;
  readonly tool: Tool;
  /** mm a mm along the wall. */
  readonly slope: number;
  /** True at a gate: metal came off since the bore was found. */
  readonly worked?: boolean;
}

/**
 * A first pass nowhere deeper than the give-or-take, and on average over the seats no deeper than this in standard
 * deviations, is no pass. Of a wall that is on size already scatter would have it take 0.0085 of them on average (the mean
 * of what a normal deviate has beyond 2), and rather more after some gates, which pick what scattered: gate after gate
 * slivers would be ground that nobody is sure of.
 */
const CHANCE = 1 / 20;
/**
 * At a gate a pass must promise more: it costs all the readings of another gate, and of simulated repairs one in twelve went
 * on for more than half as many passes again as were planned, for slivers. What it leaves is the strip's.
 */
const CHANCE_AT_GATE = 3 / 20;

/** The passes without what is said of each: fields of what comes off, and the deviation that the last one leaves. */
export interface Course {
  readonly removals: readonly Field[];
  readonly deviation: Field;
  /** What a first pass would take were nothing uncertain, where for the doubt alone there is none; null else. */
  readonly waiting: Field | null;
}

/**
 * @param first standard deviations that the first pass stays off the target by; 0: nothing is uncertain
 */
export function course(matter: PassMatter, first = SURE): Course {
  const removals: Field[] = [];
  const deviation = matter.removal.deviation.slice();
  while (removals.length < MOST_PASSES && mostLeft(matter, deviation) >= ON_SIZE) {
    const removal = onePass(matter, deviation, removals.length === 0 ? first : 0);
    if (!(greatestOf(removal) >= NO_PASS)) break;
    if (removals.length === 0 && first > 0 && isChance(matter, removal)) break;
    takeOff(deviation, removal);
    removals.push(removal);
  }
  return { removals, deviation, waiting: removals.length > 0 ? null : waitingFor(matter) };
}

/**
 * What better readings may let a first pass take, where those of today allow none; null: nothing, whatever they tell.
 */
function waitingFor(matter: PassMatter): Field | null {
  const { deviation } = matter.removal;
  if (!(mostLeft(matter, deviation) >= ON_SIZE)) return null;
  const free = onePass(matter, deviation, 0);
  return free.some((mm, k) => mm >= NO_PASS && matter.places[k] === SEATED) ? free : null;
}

/** The place that stands the most proud of those that wait for better readings. */
export function waitsAt(
  { surface, removal: { deviation, sd }, places }: PassMatter,
  waiting: Field,
): Waits {
  const { theta, z } = surface.grid;
  let k = -1;
  for (let at = 0; at < waiting.length; at++) {
    const counts = places[at] === SEATED && waiting[at]! >= NO_PASS;
    if (counts && !(deviation[at]! >= deviation[k]!)) k = at;
  }
  return {
    theta: theta[k % theta.length]!,
    z: z[Math.floor(k / theta.length)]!,
    most: -deviation[k]!,
    give: SURE * sd[k]!,
  };
}

/**
 * What one pass takes off a wall of that deviation, per side, mm; NaN where nothing may be ground.
 *
 * It may run past the edge of a seat, into metal that stands proud of the target there too, by as little as the slope
 * allows; nowhere does it end nearer to the target than so many standard deviations.
 */
export function onePass(matter: PassMatter, deviation: Field, sds: number): Field {
  const { surface, places, radius, tool, slope } = matter;
  const size = deviation.length;
  const wanted = wantedOf(matter, deviation, sds, wantedRoom(size).subarray(0, size));
  const reached = reachedRoom(size).subarray(0, size);
  reach(deviation, wanted, surface.grid, radius, tool, reached);
  const blended = blendedRoom(size).subarray(0, size);
  feather(reached, surface.grid, radius, slope, blended);
  const least = leastBeyond(blended, places, surface.grid, radius, slope);
  const asked = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    const most = least[k]! < blended[k]! ? least[k]! : blended[k]!;
    asked[k] = places[k] === KEPT_OFF ? Number.NaN : most;
  }
  return asked;
}

/** What bite, half of what is left and the give-or-take allow, per side, mm; Infinity where there is no metal to cut. */
function wantedOf(
  { removal: { sd }, places, bare, tool: { bite } }: PassMatter,
  deviation: Field,
  sds: number,
  out: Field,
): Field {
  for (let k = 0; k < out.length; k++) {
    const e = deviation[k]!;
    out[k] = 0;
    if (bare[k] === 1) out[k] = Number.POSITIVE_INFINITY;
    else if (e < 0 && places[k] !== KEPT_OFF) {
      out[k] = Math.max(0, Math.min(bite, -e / 2, -e - sds * sd[k]!));
    }
  }
  return out;
}

const wantedRoom = roomOf((length) => new Float64Array(length));
const reachedRoom = roomOf((length) => new Float64Array(length));
const blendedRoom = roomOf((length) => new Float64Array(length));

/** Deviation, or radius, once that is off; where nothing may be ground it stays. */
export function afterPass(wall: Field, removal: Field): Field {
  const out = wall.slice();
  takeOff(out, removal);
  return out;
}

function takeOff(wall: Field, removal: Field): void {
  for (let k = 0; k < wall.length; k++) if (removal[k]! > 0) wall[k] = wall[k]! + removal[k]!;
}

/** The most that still stands proud on the seats, per side, mm. */
export function mostLeft({ places }: Pick<PassMatter, 'places'>, deviation: Field): number {
  let most = 0;
  for (let k = 0; k < deviation.length; k++) {
    if (places[k] === SEATED && -deviation[k]! > most) most = -deviation[k]!;
  }
  return most;
}

/**
 * The fewest passes that bring the highest place of the seats on size: those it takes by bite, half and give-or-take alone,
 * where tool and slope let it have all of that.
 */
export function fewestPasses(matter: PassMatter): number {
  const { tool, removal, places } = matter;
  let left = mostLeft(matter, removal.deviation);
  let doubt = Number.POSITIVE_INFINITY;
  for (let k = 0; k < places.length; k++) {
    if (places[k] === SEATED && -removal.deviation[k]! === left)
      doubt = Math.min(doubt, removal.sd[k]!);
  }
  let passes = 0;
  for (let sure = left - SURE * doubt; left >= ON_SIZE; sure = left, passes++) {
    const cut = Math.min(tool.bite, left / 2, sure);
    if (!(cut >= NO_PASS)) break;
    left -= cut;
  }
  return passes;
}

/** The whole plan; gates, and what is felt for before, need the readings. */
export function planPasses(matter: PassMatter): Omit<PassPlan, 'passes'> & {
  readonly passes: readonly Omit<Pass, 'gate' | 'between'>[];
} {
  const { removals, deviation, waiting } = course(matter);
  const { tool, slope, surface, removal: today } = matter;
  const now = today.deviation.slice();
  const passes = removals.map((removal, at) => {
    const standing = mostLeft(matter, now);
    takeOff(now, removal);
    const volume = metalVolume(surface, removal);
    return {
      removal,
      greatest: greatestOf(removal),
      volume,
      mass: volume * STEEL,
      zones: highZones(surface, removal, today.sd),
      byStrip: standing <= BY_STRIP,
      beyondDoubt: at > 0 && endsInDoubt(now, removal, today.sd),
    };
  });
  return {
    tool,
    slope,
    passes,
    waits: waiting && waitsAt(matter, waiting),
    left: leftOver(matter, deviation, waiting),
    leftMost: mostLeft(matter, deviation),
  };
}

/** True where a worked place ends nearer to the target than so much give-or-take. */
function endsInDoubt(deviation: Field, removal: Field, sd: Field): boolean {
  for (let k = 0; k < removal.length; k++) {
    if (removal[k]! >= NO_PASS && -deviation[k]! < SURE * sd[k]! - NO_PASS) return true;
  }
  return false;
}

/** True where a pass asks for hardly more than readings that scatter would make it ask of a bore on size. */
export function isChance(
  { places, removal: { sd }, worked = false }: PassMatter,
  removal: Field,
): boolean {
  let seat = 0;
  let asked = 0;
  for (let k = 0; k < removal.length; k++) {
    if (places[k] !== SEATED) continue;
    seat++;
    if (!(removal[k]! >= NO_PASS)) continue;
    if (!(removal[k]! <= SURE * sd[k]!)) return false;
    asked += removal[k]! / sd[k]!;
  }
  return asked < (worked ? CHANCE_AT_GATE : CHANCE) * seat;
}

/** The hills that no pass takes down, the highest first. */
function leftOver(matter: PassMatter, deviation: Field, waiting: Field | null): Left[] {
  const { surface, places, removal } = matter;
  const { theta, z } = surface.grid;
  const height = deviation.map((e, k) => (places[k] === SEATED && e < 0 ? -e : 0));
  const { summits } = basins(height, theta.length, ON_SIZE, (h) => Math.max(0.3 * h, ON_SIZE));
  const open = reach(
    deviation,
    freely(matter, deviation),
    surface.grid,
    matter.radius,
    matter.tool,
  );
  return summits.map((k) => ({
    theta: theta[k % theta.length]!,
    z: z[Math.floor(k / theta.length)]!,
    most: height[k]!,
    give: SURE * removal.sd[k]!,
    why:
      waiting !== null && waiting[k]! >= NO_PASS
        ? 'doubt'
        : open[k]! < height[k]! / 2
          ? 'tool'
          : 'slope',
  }));
}

/** All that stands proud, without bite or half. */
function freely({ places, bare }: PassMatter, deviation: Field): Field {
  return deviation.map((e, k) => {
    if (bare[k] === 1) return Number.POSITIVE_INFINITY;
    return places[k] !== KEPT_OFF && e < 0 ? -e : 0;
  });
}

function greatestOf(field: Field): number {
  let most = 0;
  for (let k = 0; k < field.length; k++) if (field[k]! > most) most = field[k]!;
  return most;
}
