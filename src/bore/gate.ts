/** The gate after a pass: a few places to measure, what they should then read, and the reading that means stop. */
import type { Instrument } from '../job/schema.ts';
import type { PassMatter } from './passes.ts';
import type { Expected, GatePlace } from './passTypes.ts';
import { SEATED } from './removal.ts';
import type { Field, Grid, Sighting } from './types.ts';

/** Places where most comes off. */
const MOST = 3;
/** A place that is worked less than this share of the most is one to check the others by. */
const CONTROL = 0.1;
/** Two places nearer than this on the wall are one and the same to a hand, as a share of the radius. */
const APART = 0.5;

/** An instrument in use, and which way its reading goes as the bore grows. */
export interface InUse {
  readonly instrument: Instrument;
  readonly sign: 1 | -1;
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
 * @param sightings where the survey was read: the places that are marked on the metal
 * @returns the most worked, the nearest to the target and one that is not worked; none without a reading on a seat
 */
export function gateOf(
  matter: PassMatter,
  step: Step,
  sightings: readonly Sighting[],
  inUse: readonly InUse[],
): GatePlace[] {
  const across = inUse.every(({ instrument }) => instrument === 'two-point');
  const places = placesRead(sightings, across).filter((at) => seated(matter, at));
  if (places.length === 0) return [];
  const { grid } = matter.surface;
  const left = step.deviation.map((e, k) => -e - (step.removal[k]! > 0 ? step.removal[k]! : 0));
  const margin = left.map((m, k) => m - step.sds * matter.removal.sd[k]!);
  const told = places.map((at) => ({
    at,
    work: both(grid, step.removal, at, across, (a, b) => a + b),
    margin: both(grid, margin, at, across, Math.min),
  }));
  const most = Math.max(...told.map(({ work }) => work));
  if (!(most > 0)) return [];
  const chosen: { at: Place; why: GatePlace['why'] }[] = [];
  const add = (at: Place, why: GatePlace['why']) => {
    if (chosen.every((one) => apart(one.at, at, matter.radius, across) > APART * matter.radius)) {
      chosen.push({ at, why });
    }
  };
  for (const { at } of [...told].sort((a, b) => b.work - a.work)) {
    if (chosen.length < MOST) add(at, 'most');
  }
  const worked = told.filter(({ work }) => work > CONTROL * most);
  add([...worked].sort((a, b) => a.margin - b.margin)[0]!.at, 'near');
  const still = [...told].sort((a, b) => a.work - b.work)[0]!;
  if (still.work <= CONTROL * most) add(still.at, 'control');
  // All that may come off where anything is to: from there on the metal is no longer sure.
  const allowed = step.removal.map((g, k) => {
    const sure = -step.deviation[k]! - step.sds * matter.removal.sd[k]!;
    return g > 0 ? Math.max(g, sure) : 0;
  });
  return chosen.map(({ at, why }) => ({
    ...at,
    why,
    expected: inUse.map((one) => expected(matter, step, allowed, at, one)),
  }));
}

interface Place {
  readonly theta: number;
  readonly z: number;
}

/** Each place once; those straight across from one another are one where all is read across. */
function placesRead(sightings: readonly Sighting[], across: boolean): Place[] {
  const turn = across ? Math.PI : 2 * Math.PI;
  const found = new Map<string, Place>();
  for (const { theta, z } of sightings) {
    const within = ((theta % turn) + turn) % turn;
    // A whole turn less a rounding is none.
    const at = turn - within < 1e-9 ? 0 : within;
    const key = `${at.toFixed(6)} ${z.toFixed(4)}`;
    if (!found.has(key)) found.set(key, { theta: at, z });
  }
  return [...found.values()];
}

function seated({ surface: { grid }, places }: PassMatter, { theta, z }: Place): boolean {
  const columns = grid.theta.length;
  const it = Math.round((theta / (2 * Math.PI)) * columns) % columns;
  let row = 0;
  grid.z.forEach((at, i) => {
    if (Math.abs(at - z) < Math.abs(grid.z[row]! - z)) row = i;
  });
  return places[row * columns + it] === SEATED;
}

function both(
  grid: Grid,
  field: Field,
  { theta, z }: Place,
  across: boolean,
  join: (a: number, b: number) => number,
): number {
  const here = fieldAt(grid, field, theta, z);
  return across ? join(here, fieldAt(grid, field, theta + Math.PI, z)) : here;
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

/** mm on the wall; the shorter way round. */
function apart(a: Place, b: Place, radius: number, across: boolean): number {
  const turn = across ? Math.PI : 2 * Math.PI;
  const gap = Math.abs(a.theta - b.theta) % turn;
  return Math.hypot(radius * Math.min(gap, turn - gap), a.z - b.z);
}

/** What an instrument sees of the wall, in radii: where, and how much of each. */
const SEES: Readonly<Record<Instrument, readonly { turn: number; share: number }[]>> = {
  'two-point': [0, 1 / 2].map((turn) => ({ turn, share: 1 })),
  'three-leg': [0, 1 / 3, 2 / 3].map((turn) => ({ turn, share: 2 / 3 })),
  radius: [{ turn: 0, share: 1 }],
  sweep: [{ turn: 0, share: 1 }],
  wall: [{ turn: 0, share: 1 }],
};
/** Those read against a zero of their own: what is expected is the change since before, which counts as 0. */
const FROM_ZERO: ReadonlySet<Instrument> = new Set(['sweep', 'wall']);

function expected(
  { surface: { grid, sdSeen } }: PassMatter,
  { removal: off, wall }: Step,
  allowed: Field,
  { theta, z }: Place,
  { instrument, sign }: InUse,
): Expected {
  const reads = (field: Field) =>
    SEES[instrument].reduce(
      (sum, { turn, share }) => sum + share * fieldAt(grid, field, theta + 2 * Math.PI * turn, z),
      0,
    );
  const before = FROM_ZERO.has(instrument) ? 0 : reads(wall);
  return {
    instrument,
    before,
    after: before + sign * reads(off),
    stop: before + sign * reads(allowed),
    // What is read goes together with what was read before: no give-or-take of parts that no reading sees.
    give: 2 * reads(sdSeen),
  };
}
