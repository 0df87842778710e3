/** The gate after a pass: a few places to measure, what they should then read, and the reading that means stop. */
import type { Instrument } from '../job/schema.ts';
import { sizeGain, touches } from './instruments.ts';
import { NO_PASS, type PassMatter } from './passes.ts';
import type { Expected, GatePlace } from './passTypes.ts';
import { SEATED } from './removal.ts';
import type { Field, Grid, Sighting } from './types.ts';

/** Places where most comes off. */
const MOST = 3;
/** A place that is worked less than this share of the most is not one that tells how the pass went. */
const WORKED = 0.1;
/** Two places nearer than this on the wall are one and the same to a hand, as a share of the radius. */
const APART = 0.5;

/** How the readings of the survey go. */
export interface Readers {
  /** Which way one grows as the bore grows. */
  sign(sighting: Sighting): 1 | -1;
  /** One standard deviation of what the nth would be without its scatter, as it reads, mm. */
  sd(at: number): number;
}

/** One pass between two shapes of the wall; fields per side, mm. */
export interface Step {
  /** Deviation before it. */
  readonly deviation: Field;
  readonly removal: Field;
  /** Standard deviations that count before it: 0 where the gate before is taken to have told. */
  readonly sds: number;
  /** Radius about the reference axis before it. */
  readonly wall: Field;
}

/**
 * @param marks the places that are marked on the metal, each read with its gauges again
 * @returns the most worked, the nearest to the target and one whose readings stay as they are, where there is such a place;
 *   none without a reading on a seat
 */
export function gateOf(
  matter: PassMatter,
  step: Step,
  { across, marks }: Marks,
  readers: Readers,
): GatePlace[] {
  const told = marks.filter((at) => seated(matter, at)).map((at) => tell(matter, step, at));
  const most = Math.max(0, ...told.map(({ work }) => work));
  if (!(most > 0)) return [];
  const chosen = choose(
    told,
    most,
    (a, b) => apart(a, b, matter.radius, across) > APART * matter.radius,
  );
  // All that may come off where anything is to: from there on the metal is no longer sure.
  const allowed = step.removal.map((g, k) => {
    const sure = -step.deviation[k]! - step.sds * matter.removal.sd[k]!;
    return g > 0 ? Math.max(g, sure) : 0;
  });
  return chosen.map(({ theta, z, why, readings }) => ({
    theta,
    z,
    why,
    expected: readings.map((one) => expected(matter.surface.grid, step, allowed, one, readers)),
  }));
}

interface Chosen extends Mark {
  readonly why: GatePlace['why'];
}

/** @param areApart true of two places that are not one and the same to a hand */
function choose(
  told: readonly Told[],
  most: number,
  areApart: (a: Mark, b: Mark) => boolean,
): Chosen[] {
  const chosen: Chosen[] = [];
  const add = (one: Mark, why: GatePlace['why'], readings: readonly Read[]) => {
    const before = chosen.flatMap((other) => other.readings);
    const fresh = readings.filter(({ nth }) => before.every((other) => other.nth !== nth));
    if (fresh.length > 0 && chosen.every((other) => areApart(one, other)))
      chosen.push({ theta: one.theta, z: one.z, why, readings: fresh });
  };
  for (const one of [...told].sort((a, b) => b.work - a.work)) {
    if (chosen.length < MOST) add(one, 'most', one.readings);
  }
  const worked = told.filter(({ work }) => work > WORKED * most);
  const near = [...worked].sort((a, b) => a.margin - b.margin)[0]!;
  add(near, 'near', near.readings);
  const soFar = chosen.length;
  // One that no gauge sees change, or else fewest.
  const changed = ({ readings, still }: Told) => readings.length - still.length;
  const unmoved = told.filter(({ still }) => still.length > 0);
  for (const one of unmoved.sort((a, b) => changed(a) - changed(b) || a.work - b.work)) {
    if (chosen.length === soFar) add(one, 'control', one.still);
  }
  return chosen;
}

/** A place that was read, and what the pass makes of it. */
interface Told extends Mark {
  /** Those that the pass leaves as they are. */
  readonly still: readonly Read[];
  /** What comes off, per side, as the gauge there shows it best. */
  readonly work: number;
  /** The least that is left of what any of its tips touches, per side. */
  readonly margin: number;
}

function tell({ surface: { grid }, removal: { sd } }: PassMatter, step: Step, mark: Mark): Told {
  const { readings } = mark;
  const seen = readings.map(({ sighting }) => Math.abs(reads(grid, step.removal, sighting, 1)));
  const left = ({ instrument, theta, z }: Sighting) =>
    touches(instrument, 1).map(({ turn }) => {
      const told = (field: Field) => fieldAt(grid, field, theta + turn, z);
      return -told(step.deviation) - told(step.removal) - step.sds * told(sd);
    });
  return {
    ...mark,
    still: readings.filter((_, i) => seen[i]! < NO_PASS),
    work: Math.max(...readings.map(({ sighting }, i) => seen[i]! / sizeGain(sighting.instrument))),
    margin: Math.min(...readings.flatMap(({ sighting }) => left(sighting))),
  };
}

/** A reading of the survey, and which of them it is. */
interface Read {
  readonly nth: number;
  readonly sighting: Sighting;
}

/** A place that was read: of each kind of gauge the first reading one of whose tips touches it. */
interface Mark {
  readonly theta: number;
  readonly z: number;
  readonly readings: readonly Read[];
}

export interface Marks {
  /** True where all is read across: those straight across from one another are then one. */
  readonly across: boolean;
  readonly marks: readonly Mark[];
}

const SAME_ANGLE = 1e-6;

/** Each place once. */
export function marksOf(sightings: readonly Sighting[]): Marks {
  const across = sightings.every(({ instrument }) => instrument === 'two-point');
  const turn = across ? Math.PI : 2 * Math.PI;
  const depths = new Map<string, Read[]>();
  sightings.forEach((sighting, nth) => {
    const key = sighting.z.toFixed(4);
    const there = depths.get(key) ?? [];
    depths.set(key, there);
    there.push({ nth, sighting });
  });
  const marks = [...depths.values()].flatMap((there) => {
    const thetas = new Map<string, number>();
    for (const { sighting } of there) {
      const within = ((sighting.theta % turn) + turn) % turn;
      // A whole turn less a rounding is none.
      const at = turn - within < SAME_ANGLE ? 0 : within;
      if (!thetas.has(at.toFixed(6))) thetas.set(at.toFixed(6), at);
    }
    const { z } = there[0]!.sighting;
    return [...thetas.values()].map((theta) => ({ theta, z, readings: touching(there, theta) }));
  });
  return { across, marks };
}

/** @param there the readings of one depth */
function touching(there: readonly Read[], theta: number): Read[] {
  const found = new Map<Instrument, Read>();
  for (const one of there) {
    const { instrument, theta: from } = one.sighting;
    if (found.has(instrument)) continue;
    const here = touches(instrument, 1).some(
      ({ turn }) => Math.abs(Math.sin((from + turn - theta) / 2)) < SAME_ANGLE,
    );
    if (here) found.set(instrument, one);
  }
  return [...found.values()];
}

function seated({ surface: { grid }, places }: PassMatter, { theta, z }: Mark): boolean {
  const columns = grid.theta.length;
  const it = Math.round((theta / (2 * Math.PI)) * columns) % columns;
  let row = 0;
  grid.z.forEach((at, i) => {
    if (Math.abs(at - z) < Math.abs(grid.z[row]! - z)) row = i;
  });
  return places[row * columns + it] === SEATED;
}

/** Between the places of the grid, straight; NaN counts as 0: nothing is taken off there. */
export function fieldAt({ theta, z }: Grid, field: Field, angle: number, deep: number): number {
  const columns = theta.length;
  const turns = angle / (2 * Math.PI);
  const x = (turns - Math.floor(turns)) * columns;
  const it = Math.floor(x) % columns;
  let row = 0;
  while (row < z.length - 2 && z[row + 1]! <= deep) row++;
  const next = Math.min(row + 1, z.length - 1);
  const step = z[next]! - z[row]!;
  const v = step > 0 ? Math.min(1, Math.max(0, (deep - z[row]!) / step)) : 0;
  const u = x - Math.floor(x);
  const at = (r: number, c: number) => {
    const value = field[r * columns + (c % columns)]!;
    return Number.isNaN(value) ? 0 : value;
  };
  const along = (r: number) => (1 - u) * at(r, it) + u * at(r, it + 1);
  return (1 - v) * along(row) + v * along(next);
}

/** mm on a wall of that radius; the shorter way round. */
function apart(a: Mark, b: Mark, radius: number, across: boolean): number {
  const turn = across ? Math.PI : 2 * Math.PI;
  const gap = Math.abs(a.theta - b.theta) % turn;
  return Math.hypot(radius * Math.min(gap, turn - gap), a.z - b.z);
}

/** Those read against a zero of their own: what is expected is the change since before, which counts as 0. */
const FROM_ZERO: ReadonlySet<Instrument> = new Set(['sweep', 'wall']);

/** What a gauge makes of a field of radii or of what comes off them. */
function reads(grid: Grid, field: Field, { instrument, theta, z }: Sighting, sign: number): number {
  return touches(instrument, sign).reduce(
    (sum, { turn, weight }) => sum + weight * fieldAt(grid, field, theta + turn, z),
    0,
  );
}

function expected(
  grid: Grid,
  { removal: off, wall }: Step,
  allowed: Field,
  { nth, sighting }: Read,
  readers: Readers,
): Expected {
  const { instrument } = sighting;
  const sign = readers.sign(sighting);
  const before = FROM_ZERO.has(instrument) ? 0 : reads(grid, wall, sighting, sign);
  return {
    instrument,
    before,
    after: before + reads(grid, off, sighting, sign),
    stop: before + reads(grid, allowed, sighting, sign),
    give: 2 * readers.sd(nth),
  };
}
