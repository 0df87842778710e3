/**
 * Several bores on one pin: the largest straight pin that passes through all of them, whether the pin of the job does, and
 * which bore stands off the line of the others. Each bore counts as its last survey has it.
 */
import { type HoleWall, type StraightPin, straightPin } from '../assembly/straightPin.ts';
import type { Axis, WearSurface } from '../bore/types.ts';
import type { BoreEvaluation, Evaluation, SurveyEvaluation } from '../evaluate.ts';
import type { Feature, Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type BoreBy, bushed, inPinFrame } from './fit/bushed.ts';
import { fittedAfter, measuredHole, wallBefore } from './fit/fitted.ts';
import { type Into, intoOf } from './fit/into.ts';
import { type Placed, placedOf } from './fit/placed.ts';
import type { Seated } from './fit/seated.ts';
import { lineThrough } from './partner.ts';

/** One bore on the pin. Lengths in mm. */
export interface PinHole {
  readonly id: string;
  readonly name: string;
  /** What the pin meets: the inside of its bushings, or the bare wall. */
  readonly through: 'bushing' | 'wall';
  /** How much the bushing closes in when it is pressed, mean, across; NaN: a bare wall. */
  readonly closesIn: number;
  /** How the bushing's bore is known; null: a bare wall. */
  readonly by: BoreBy | null;
  readonly placed: Placed;
  /** The largest straight pin that this hole lets through by itself, across. */
  readonly alone: number;
  /** Its axis at both faces, from the line of the largest pin: x to 3 o'clock, y to 12; NaN where there is none. */
  readonly beside: Readonly<Record<'A' | 'B', { readonly x: number; readonly y: number }>>;
  /** From the line of the others to this one's axis, at the face where they are farther apart; null: no other. */
  readonly off: Off | null;
  /** Where the largest pin comes nearest: the air left there, per side; clock position, and depth from face A. */
  readonly nearest: { readonly air: number; readonly theta: number; readonly z: number };
  /** How far the pin of the job would bite there, per side, where it does not pass; 0 where it clears, NaN not known. */
  readonly bites: number;
}

export interface Off {
  readonly perSide: number;
  readonly theta: number;
  readonly face: 'A' | 'B';
  /** Farther than half of the running clearance; null where that is not known. */
  readonly over: boolean | null;
}

export interface OnePin {
  readonly holes: readonly PinHole[];
  /** Bores that cannot be counted, and why, without a full stop. */
  readonly leftOut: readonly { readonly name: string; readonly why: string }[];
  /** Readings from the bar that cannot be used, a sentence each without a full stop. */
  readonly faults: readonly string[];
  /** Across; NaN: fewer than two bores can be counted, or nothing goes through all. */
  readonly largest: number;
  /** What holds the largest pin: names of bores with clock position and depth. */
  readonly contacts: readonly {
    readonly name: string;
    readonly theta: number;
    readonly z: number;
  }[];
  /** The greatest diameter of the pin that the job tells of; NaN: none. */
  readonly pin: number;
  /** Running clearance, across, by which a bore is called off the line: the least that is wanted; NaN not known. */
  readonly clearance: number;
}

/** @returns null where the job has but one bore */
export function onePinOf(job: Job, evaluation: Evaluation, shop: Shop | null): OnePin | null {
  if (evaluation.bores.length < 2) return null;
  const found = evaluation.bores.map((bore) => holeOf(job, bore, shop));
  const met = found.flatMap((one) => (one.ok ? [one] : []));
  const all = met.length > 1 ? throughAll(met.map(({ wall }) => wall)) : null;
  const pin = evaluation.joint.parts
    .filter(({ kind }) => kind === 'pin')
    .reduce((most, { size }) => fmax(most, size.greatest.mm), Number.NaN);
  const clearance = evaluation.bores.reduce((least, { facts }) => {
    const { mm } = facts.clearance;
    return mm < least || Number.isNaN(least) ? mm : least;
  }, Number.NaN);
  return {
    holes: met.map((one, i) => holeFound(one, i, { met, all, pin, clearance })),
    leftOut: found.flatMap((one) => (one.ok ? [] : [{ name: one.name, why: one.why }])),
    faults: met.flatMap(({ faults }) => faults),
    largest: all?.diameter ?? Number.NaN,
    contacts: (all?.contacts ?? []).map(({ hole, theta, z }) => ({
      name: met[hole]!.name,
      theta,
      z: z - met[hole]!.placed.station,
    })),
    pin,
    clearance,
  };
}

/** The largest pin through these very walls is found once. */
function foundOnce(): typeof straightPin {
  const known = new WeakMap<HoleWall, { walls: readonly HoleWall[]; pin: StraightPin | null }>();
  return (walls) => {
    const before = known.get(walls[0]!);
    const same =
      before?.walls.length === walls.length && walls.every((wall, i) => wall === before.walls[i]);
    if (same) return before.pin;
    const pin = straightPin(walls);
    known.set(walls[0]!, { walls, pin });
    return pin;
  };
}

const throughAll = foundOnce();
const throughOne = foundOnce();

function fmax(a: number, b: number): number {
  return b > a || Number.isNaN(a) ? b : a;
}

/** A bore that can be counted, its wall and axis in the frame of the pin. */
interface Hole {
  readonly ok: true;
  readonly id: string;
  readonly name: string;
  readonly through: PinHole['through'];
  readonly closesIn: number;
  readonly by: BoreBy | null;
  readonly placed: Placed;
  readonly faults: readonly string[];
  readonly wall: HoleWall;
  /** Of what the pin meets, at face A of the bore. */
  readonly axis: Axis;
}

type HoleOrNot = Hole | { readonly ok: false; readonly name: string; readonly why: string };

function holeOf(job: Job, bore: BoreEvaluation, shop: Shop | null): HoleOrNot {
  const { id, name } = bore;
  const not = (why: string): HoleOrNot => ({ ok: false, name, why });
  const feature = job.features.find((one) => one.id === id);
  const last = bore.surveys.findLast(({ surface }) => surface !== null);
  if (feature === undefined || last?.surface == null) return not('it has no readings yet');
  const wall = wallBefore(bore, last);
  const fitted = fittedAfter(bore, last);
  const place = placedOf(job, feature, wall?.surface ?? null);
  if (!place.ok) return not(place.why);
  const into = wall && intoOf(job, bore, wall, shop);
  const { placed, faults } = place;
  const common = { ok: true as const, id, name, placed, faults };
  if (into !== null && complete(feature, into, fitted)) {
    return { ...common, through: 'bushing', ...bushed(into, fitted, placed) };
  }
  const none = { ...common, closesIn: Number.NaN };
  return fitted?.surface == null
    ? { ...none, through: 'wall', by: null, ...bare(last.surface, placed) }
    : { ...none, through: 'bushing', by: 'measured', ...bare(fitted.surface, placed) };
}

/** Every bushing's inside is known or was read: one alone would let a pin through where the other may hold it. */
function complete(
  { bushings }: Feature,
  { seated }: Into,
  fitted: SurveyEvaluation | null,
): boolean {
  const read = ({ seat }: Seated) => fitted !== null && measuredHole(fitted, seat) !== null;
  return bushings.length > 0 && seated.every((one) => one.inside > 0 || read(one));
}

/** Rows of the surface that are asked: between them it is smooth. */
const EVERY = 2;
const NO_LEAN: Axis = { x: 0, y: 0, leanX: 0, leanY: 0 };

function bare({ grid, mean }: WearSurface, placed: Placed): Pick<Hole, 'wall' | 'axis'> {
  const turns = grid.theta.length;
  const rows = Array.from(grid.z.keys()).filter((row) => row % EVERY === 0);
  const columns = [0, 1, 2].map(() => new Float64Array(rows.length * turns));
  const [x, y, z] = columns as [Float64Array, Float64Array, Float64Array];
  const middles = rows.map((row, level) => {
    const depth = grid.z[row]!;
    const centre = inPinFrame(NO_LEAN, placed, depth);
    let [sideX, sideY] = [0, 0];
    for (let i = 0; i < turns; i++) {
      const [r, theta] = [mean[row * turns + i]!, grid.theta[i]!];
      const k = level * turns + i;
      x[k] = centre.x + r * Math.sin(theta);
      y[k] = centre.y + r * Math.cos(theta);
      z[k] = centre.z;
      sideX += (2 * r * Math.sin(theta)) / turns;
      sideY += (2 * r * Math.cos(theta)) / turns;
    }
    return { station: depth, x: sideX, y: sideY };
  });
  return { wall: { x, y, z, circles: [] }, axis: lineThrough(middles) };
}

interface Among {
  readonly met: readonly Hole[];
  readonly all: StraightPin | null;
  readonly pin: number;
  readonly clearance: number;
}

function holeFound(hole: Hole, i: number, { met, all, pin, clearance }: Among): PinHole {
  const { id, name, through, by, closesIn, placed, wall } = hole;
  const near = all?.nearest[i];
  const air = near === undefined ? Number.NaN : near.distance - all!.diameter / 2;
  const bites = near === undefined ? Number.NaN : Math.max(0, pin / 2 - near.distance);
  return {
    id,
    name,
    through,
    closesIn,
    by,
    placed,
    alone: throughOne([wall])?.diameter ?? Number.NaN,
    beside: { A: from(hole, all, 0), B: from(hole, all, placed.length) },
    off: offOf(
      hole,
      met.filter((one) => one !== hole),
      clearance,
    ),
    nearest: {
      air,
      theta: near?.theta ?? Number.NaN,
      z: near === undefined ? Number.NaN : near.z - placed.station,
    },
    bites,
  };
}

/** The axis of a hole at a depth, from the line of the largest pin. */
function from({ axis, placed }: Hole, all: StraightPin | null, depth: number) {
  const { x, y, z } = inPinFrame(axis, placed, depth);
  const line = all?.line;
  return {
    x: line === undefined ? Number.NaN : x - line.x - line.leanX * z,
    y: line === undefined ? Number.NaN : y - line.y - line.leanY * z,
  };
}

/** Against the straight line through the middles of the others; through a single one, along the bar or the stated line. */
function offOf({ axis, placed }: Hole, others: readonly Hole[], clearance: number): Off | null {
  if (others.length === 0) return null;
  const line = lineThrough(
    others.map((one) => {
      const { x, y, z } = inPinFrame(one.axis, one.placed, one.placed.length / 2);
      return { station: z, x, y };
    }),
  );
  const [far] = (['A', 'B'] as const)
    .map((face) => {
      const own = inPinFrame(axis, placed, face === 'A' ? 0 : placed.length);
      const [x, y] = [own.x - line.x - line.leanX * own.z, own.y - line.y - line.leanY * own.z];
      const theta = Math.atan2(x, y);
      const perSide = Math.hypot(x, y);
      return {
        perSide,
        theta: theta < 0 ? theta + 2 * Math.PI : theta,
        face,
        over: clearance >= 0 ? perSide > clearance / 2 : null,
      };
    })
    .sort((a, b) => b.perSide - a.perSide);
  return far ?? null;
}
