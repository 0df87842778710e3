/** Whether the pin turns in the bushing once that is pressed in: how freely, where it is tightest, and what to open. */
import {
  type AcrossAt,
  type Hole,
  holeSizes,
  type LargestPin,
  largestPin,
  radiusAbout,
} from '../../assembly/running.ts';
import { SEATED } from '../../bore/removal.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { gaugeKind } from '../../job/gauges.ts';
import { type RunningFacts, runningFacts, WORTH_HONING } from '../../job/runningFacts.ts';
import type { Feature, Job } from '../../job/schema.ts';
import { measuredHole } from './fitted.ts';
import { type PinSizes, pinOf } from './pinOf.ts';
import type { RoundPart } from './round.ts';
import type { Seated } from './seated.ts';

/** Per side, mm, at one clock hour, the pin in the middle of the largest that goes through: over all depths. */
export interface ClockClearance {
  readonly theta: number;
  readonly least: number;
  readonly greatest: number;
}

/** What to take off the bushing's bore at one clock hour, per side, mm, at the most, and between which depths. */
export interface OpenAt {
  readonly theta: number;
  readonly most: number;
  readonly from: number;
  readonly to: number;
}

/** The clearance with the bushing in. Across unless it says per side; mm. */
export interface Installed {
  /** Least diameter of the hole less the pin's greatest, greatest less its least, and the mean of both. */
  readonly tightest: AcrossAt;
  readonly loosest: AcrossAt;
  readonly mean: number;
  /** Two standard deviations of the tightest. */
  readonly give: number;
  /** The largest straight pin that goes through, and what it leaves of room for this one. */
  readonly largest: LargestPin;
  readonly room: number;
  readonly byClock: readonly ClockClearance[];
  /** `near`: short of the least wanted by less than is known of it, or than is worth honing. */
  readonly verdict: 'stuck' | 'tight' | 'near' | 'good' | 'wide' | 'worn';
  /** What the tightest, by diameters and by the largest pin, is short of the least wanted; below 0 it is more. */
  readonly short: number;
  /** Where it is tight: the size to open to, and what comes off; null where it need not be opened. */
  readonly open: { readonly to: number; readonly hours: readonly OpenAt[] } | null;
  readonly hole: Hole;
}

export interface RunningPart {
  readonly pin: PinSizes | null;
  readonly limits: RunningFacts;
  /** Bore of the bushing before it goes in less the pin's greatest and least; null where either is not known. */
  readonly free: { readonly tightest: number; readonly loosest: number } | null;
  /**
   * The tightest, by diameters and by the largest straight pin, were all of the press fit to close the hole, and no more than
   * is left as it really sits: the plan that is safe; NaN not known.
   */
  readonly safe: number;
  /** With the bushing in: as it was measured then, else as worked out. */
  readonly installed: Installed | null;
  /** Null: nobody has read the bushing's bore since it went in. */
  readonly measured: Measured | null;
}

/** What is told beside a clearance that comes from readings of the fitted bushing's own bore. */
export interface Measured {
  /** Name of the survey. */
  readonly survey: string;
  /** As worked out from the bore that the bushing went into; null: it cannot be. */
  readonly computed: Installed | null;
  /** How much smaller the mean of the bushing's bore is than before, across: as read, and as worked out; NaN not known. */
  readonly closedIn: number;
  readonly closesIn: number;
}

export interface RunningMatter {
  readonly job: Job;
  readonly feature: Feature;
  readonly parts: readonly BoreEvaluation[];
  readonly bushing: Pick<Seated, 'inside' | 'seat'>;
  /** How it sits in the bore that it went into; null: of that nothing is known. */
  readonly worked: { readonly seated: Seated; readonly round: RoundPart } | null;
  /** The survey of the bushing's own bore, taken once it was in; null: none. */
  readonly fitted: SurveyEvaluation | null;
}

/** Two standard deviations of a bushing's bore as typed: nobody says with what it was read. */
const TYPED = 2 * gaugeKind('outside-micrometer').repeatability;

export function runningPart(matter: RunningMatter): RunningPart {
  const { job, feature, parts, bushing, worked, fitted } = matter;
  const pin = pinOf(job, feature, parts);
  const limits = runningFacts(feature, pin?.mean ?? Number.NaN);
  const { inside, seat } = bushing;
  if (pin === null) {
    return { pin, limits, free: null, safe: Number.NaN, installed: null, measured: null };
  }
  const free = inside > 0 ? { tightest: inside - pin.greatest, loosest: inside - pin.least } : null;
  const closed = worked && holeAndGive(worked);
  const computed = closed && installedOf(closed, pin, limits);
  const read = fitted && measuredHole(fitted, seat);
  const now = read && installedOf(read, pin, limits);
  return {
    pin,
    limits,
    free,
    safe: free === null || worked === null ? Number.NaN : safeOf(worked.seated, pin, computed),
    installed: now ?? computed,
    measured: now && {
      survey: fitted!.name,
      computed,
      closedIn: inside - now.mean - pin.mean,
      closesIn: worked?.round.fit?.closedIn ?? Number.NaN,
    },
  };
}

function safeOf(seated: Seated, pin: PinSizes, installed: Installed | null): number {
  const left = leastOfSafe(seated) - pin.greatest;
  return installed === null ? left : Math.min(left, installed.tightest.mm, installed.room);
}

/** Temperatures, limits and the pin have no part in it. */
const knownLeast = new WeakMap<Seated, number>();

/** The lesser of its least diameter and its largest straight pin; NaN: nothing is a seat. */
function leastOfSafe(seated: Seated): number {
  const before = knownLeast.get(seated);
  if (before !== undefined) return before;
  const hole = holeOfSafe(seated);
  const [sizes, straight] = [holeSizes(hole), largestPin(hole)];
  const least =
    sizes === null || straight === null ? Number.NaN : Math.min(sizes.least.mm, straight.diameter);
  knownLeast.set(seated, least);
  return least;
}

/** As though the bushing's bore came in by all that its outside stands over the wall. */
function holeOfSafe({ wall, inside }: Seated): Hole {
  const { theta, z } = wall.grid;
  const radius = wall.press.map((over, k) =>
    wall.places[k] === SEATED ? (inside - Math.max(0, over)) / 2 : Number.NaN,
  );
  return { radius, z, columns: theta.length };
}

interface Found {
  readonly hole: Hole;
  readonly give: number;
}

function holeAndGive({ seated, round }: NonNullable<RunningMatter['worked']>): Found | null {
  const { fit } = round;
  if (fit === null) return null;
  const { grid, sd, press, places } = seated.wall;
  const columns = grid.theta.length;
  const [first, last] = fit.rows;
  const hole = {
    radius: fit.inside.slice(first * columns, (last + 1) * columns),
    z: grid.z.slice(first, last + 1),
    columns,
  };
  // What is not known of the wall reaches the hole as the press fit does.
  const seat = (k: number) => places[k] === SEATED;
  const over = average(press, seat);
  const share = over > 0 ? Math.min(1, fit.closedIn / over) : 0;
  const wall = sd === null ? 0 : 4 * share * average(sd, seat);
  return { hole, give: Math.hypot(TYPED, wall) };
}

function average(field: Float64Array, counts: (k: number) => boolean): number {
  let [sum, count] = [0, 0];
  for (let k = 0; k < field.length; k++) {
    if (!counts(k) || Number.isNaN(field[k]!)) continue;
    sum += field[k]!;
    count += 1;
  }
  return count > 0 ? sum / count : 0;
}

function installedOf({ hole, give }: Found, pin: PinSizes, limits: RunningFacts): Installed | null {
  const sizes = holeSizes(hole);
  const largest = largestPin(hole);
  if (sizes === null || largest === null) return null;
  const tightest = { ...sizes.least, mm: sizes.least.mm - pin.greatest };
  const loosest = { ...sizes.greatest, mm: sizes.greatest.mm - pin.least };
  const room = largest.diameter - pin.greatest;
  const least = Math.min(tightest.mm, room);
  const known = Math.hypot(give, pin.give);
  const verdict = verdictOf(least, loosest.mm, known, limits);
  const to = pin.greatest + limits.least.mm;
  const hours = byHour(hole, radiusAbout(hole, largest), pin, to);
  const opens = verdict === 'stuck' || verdict === 'tight';
  return {
    tightest,
    loosest,
    mean: sizes.mean - pin.mean,
    give: known,
    largest,
    room,
    byClock: hours.map(({ clock }) => clock),
    verdict,
    short: limits.least.mm - least,
    open: opens
      ? { to, hours: hours.map(({ open }) => open).filter(({ from }) => !Number.isNaN(from)) }
      : null,
    hole,
  };
}

/** What does not go in at all comes first; what is worn out before what is only wide. */
function verdictOf(
  tightest: number,
  loosest: number,
  give: number,
  { least, most, worn }: RunningFacts,
): Installed['verdict'] {
  const short = least.mm - tightest;
  if (short > Math.max(give, WORTH_HONING)) return tightest > 0 ? 'tight' : 'stuck';
  if (loosest > worn.mm + WORTH_HONING) return 'worn';
  if (loosest > most.mm + WORTH_HONING) return 'wide';
  return short > UNWRITTEN ? 'near' : 'good';
}

/** Across, mm: as good as nothing in sums of sizes. */
const UNWRITTEN = 1e-6;

const HOURS = Array.from({ length: 12 }, (_, hour) => (hour * Math.PI) / 6);

/** Half of what lies between two hours. */
const HALF_HOUR = Math.PI / 12;

/** Per side, mm: nobody hones less, nor writes it. 0.00005 in. */
const NOTHING = 0.00127;

/**
 * By clock hour, half an hour to either side: how freely a pin runs, and what must come off for a larger one.
 *
 * @param radius about the middle of the largest pin
 * @param to across, mm, of the pin that is to go through
 */
function byHour({ columns, z }: Hole, radius: Float64Array, pin: PinSizes, to: number) {
  const near = Math.floor((HALF_HOUR / (2 * Math.PI)) * columns);
  return HOURS.map((theta) => {
    const middle = Math.round((theta / (2 * Math.PI)) * columns);
    let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    let [from, until] = [Number.NaN, Number.NaN];
    for (let row = 0; row < z.length; row++) {
      for (let d = -near; d <= near; d++) {
        const r = radius[row * columns + ((middle + d + columns) % columns)]!;
        least = Math.min(least, Number.isNaN(r) ? least : r);
        greatest = Math.max(greatest, Number.isNaN(r) ? greatest : r);
        if (!(to / 2 - r > NOTHING)) continue;
        if (Number.isNaN(from)) from = z[row]!;
        until = z[row]!;
      }
    }
    return {
      clock: { theta, least: least - pin.greatest / 2, greatest: greatest - pin.greatest / 2 },
      open: { theta, most: to / 2 - least, from, to: until },
    };
  });
}
