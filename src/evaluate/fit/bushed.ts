/**
 * What a pin meets in the bushings of one bore once they are pressed in, in the frame of the pin: each one's bore as it was
 * read then, else the shape that it takes, about its own axis; a round hole at each end where no shape can be worked out.
 */
import { pressed } from '../../assembly/pressFit.ts';
import type { Hole } from '../../assembly/running.ts';
import type { Circle, HoleWall } from '../../assembly/straightPin.ts';
import { SEATED } from '../../bore/removal.ts';
import type { Axis } from '../../bore/types.ts';
import type { SurveyEvaluation } from '../../evaluate.ts';
import { lineThrough } from '../partner.ts';
import { measuredHole } from './fitted.ts';
import { type Into, roundOf } from './into.ts';
import type { Placed } from './placed.ts';
import { pressPart } from './press.ts';
import type { RoundFit, RoundPart } from './round.ts';
import type { FitMatter, Seated } from './seated.ts';

/**
 * How a bushing's bore is known: `measured` once it was in; `shape` as it presses in the bore as it is; `formula` as though both were round; `whole` with
 * all of its press fit taken off, which is safe, where the sizes for a formula are missing.
 */
export type BoreBy = 'measured' | 'shape' | 'formula' | 'whole';

export interface Bushed {
  readonly wall: HoleWall;
  /** Of the bushings, from face A of the bore. */
  readonly axis: Axis;
  readonly by: BoreBy;
  /** How much the bushing's bore closes in, mean, across; of two the greatest. */
  readonly closesIn: number;
}

/** Rows of the wall that are asked: between them it is smooth. */
const EVERY = 2;

/** Of the bushings of a bore what was last found, and of what: temperatures and limits have no part in it. */
const known = new WeakMap<
  readonly Seated[],
  {
    readonly rounds: readonly RoundPart[];
    readonly fitted: SurveyEvaluation | null;
    readonly place: string;
    readonly found: Bushed;
  }
>();

/**
 * @param into of a bore whose bushings' insides are all known, or were read once in
 * @param fitted the survey of those readings; null: none
 */
export function bushed(
  { matter, seated }: Into,
  fitted: SurveyEvaluation | null,
  placed: Placed,
): Bushed {
  const rounds = seated.map((one) => roundOf(matter, one));
  const place = JSON.stringify(placed);
  const before = known.get(seated);
  const same =
    before?.place === place &&
    before.fitted === fitted &&
    rounds.every((round, i) => round === before.rounds[i]);
  if (same) return before.found;
  const found = together(seated.map((one, i) => met(matter, one, rounds[i]!, fitted, placed)));
  known.set(seated, { rounds, fitted, place, found });
  return found;
}

function met(
  matter: FitMatter,
  one: Seated,
  { fit }: RoundPart,
  fitted: SurveyEvaluation | null,
  placed: Placed,
): One {
  const read = fitted && measuredHole(fitted, one.seat);
  if (read !== null) return asRead(one, read.hole, fit, placed);
  if (fit !== null) return shaped(one, fit, placed);
  const press = mean(one);
  const { rings, facts } = pressPart(matter, one);
  const formula = pressed(rings, press - facts.loss.mm).closesIn;
  return Number.isNaN(formula)
    ? rounded(one, placed, press, 'whole')
    : rounded(one, placed, formula, 'formula');
}

function together(found: readonly One[]): Bushed {
  const walls = found.map(({ wall }) => wall);
  return {
    wall: {
      x: walls.flatMap(({ x }) => x),
      y: walls.flatMap(({ y }) => y),
      z: walls.flatMap(({ z }) => z),
      circles: walls.flatMap(({ circles }) => circles),
    },
    axis: lineThrough(found.flatMap(({ ends }) => ends)),
    by: WORST_FIRST.find((by) => found.some((one) => one.by === by))!,
    closesIn: Math.max(...found.map(({ closesIn }) => closesIn)),
  };
}

const WORST_FIRST: readonly BoreBy[] = ['whole', 'formula', 'shape', 'measured'];

interface One {
  readonly wall: {
    readonly x: readonly number[];
    readonly y: readonly number[];
    readonly z: readonly number[];
    readonly circles: readonly Circle[];
  };
  /** Of its axis, at both ends of its seat, in the frame of the bore. */
  readonly ends: readonly { readonly station: number; readonly x: number; readonly y: number }[];
  readonly by: BoreBy;
  readonly closesIn: number;
}

function shaped({ wall }: Seated, fit: RoundFit, placed: Placed): One {
  const { grid, axis } = wall;
  const columns = grid.theta.length;
  const [first, last] = fit.rows;
  const hole: Hole = {
    radius: fit.inside.slice(first * columns, (last + 1) * columns),
    z: grid.z.slice(first, last + 1),
    columns,
  };
  const out = placesOf(hole, settledOn(axis, fit), placed);
  return { ...out, by: 'shape', closesIn: Math.max(0, fit.closedIn) };
}

/** Where the bushing comes to sit; where that is not known, on the axis of its seat. */
function settledOn({ x, y, leanX, leanY }: Axis, fit: RoundFit | null): Axis {
  const moved = fit?.settled ?? { x: 0, y: 0, leanX: 0, leanY: 0 };
  return {
    x: x + moved.x,
    y: y + moved.y,
    leanX: leanX + moved.leanX,
    leanY: leanY + moved.leanY,
  };
}

/** What was read of it counts about its own middle, since it was read in a set-up of its own, on the axis of the bushing. */
function asRead({ wall, inside }: Seated, hole: Hole, fit: RoundFit | null, placed: Placed): One {
  const { columns, z } = hole;
  const centres = Array.from(z, (station, row) => {
    const radius = hole.radius.subarray(row * columns, (row + 1) * columns);
    return { station, ...firstLobe(radius) };
  });
  const own = lineThrough(centres);
  const radius = hole.radius.map((r, k) => {
    const theta = (2 * Math.PI * (k % columns)) / columns;
    const deep = z[Math.floor(k / columns)]!;
    return (
      r -
      (own.x + own.leanX * deep) * Math.sin(theta) -
      (own.y + own.leanY * deep) * Math.cos(theta)
    );
  });
  const mean = radius.reduce((sum, r) => sum + r, 0) / radius.length;
  const out = placesOf({ radius, z, columns }, settledOn(wall.axis, fit), placed);
  return { ...out, by: 'measured', closesIn: inside - 2 * mean };
}

/** How far the middle of a section lies to 3 and to 12 o'clock. */
function firstLobe(radius: Float64Array): { readonly x: number; readonly y: number } {
  let [x, y] = [0, 0];
  radius.forEach((r, i) => {
    const theta = (2 * Math.PI * i) / radius.length;
    x += (2 * r * Math.sin(theta)) / radius.length;
    y += (2 * r * Math.cos(theta)) / radius.length;
  });
  return { x, y };
}

function placesOf(
  { radius, z, columns }: Hole,
  axis: Axis,
  placed: Placed,
): Pick<One, 'wall' | 'ends'> {
  const out = { x: [] as number[], y: [] as number[], z: [] as number[], circles: [] };
  const last = z.length - 1;
  for (let row = 0; row <= last; row = row < last ? Math.min(row + EVERY, last) : row + 1) {
    const centre = inPinFrame(axis, placed, z[row]!);
    for (let i = 0; i < columns; i++) {
      const theta = (2 * Math.PI * i) / columns;
      const r = radius[row * columns + i]!;
      out.x.push(centre.x + r * Math.sin(theta));
      out.y.push(centre.y + r * Math.cos(theta));
      out.z.push(centre.z);
    }
  }
  return { wall: out, ends: [z[0]!, z[last]!].map((depth) => endOf(axis, depth)) };
}

function rounded(
  { wall, seat, inside }: Seated,
  placed: Placed,
  closesIn: number,
  by: BoreBy,
): One {
  const depths = [seat.from, Math.min(seat.to, placed.length)];
  const radius = (inside - closesIn) / 2;
  const circles = depths.map((depth) => ({ ...inPinFrame(wall.axis, placed, depth), radius }));
  const ends = depths.map((depth) => endOf(wall.axis, depth));
  return { wall: { x: [], y: [], z: [], circles }, ends, by, closesIn };
}

function endOf({ x, y, leanX, leanY }: Axis, depth: number): One['ends'][number] {
  return { station: depth, x: x + leanX * depth, y: y + leanY * depth };
}

/** Mean press fit where it is to be held, across; 0 where there is none. */
function mean({ wall: { press, places } }: Seated): number {
  let [sum, count] = [0, 0];
  press.forEach((mm, k) => {
    if (places[k] !== SEATED || Number.isNaN(mm)) return;
    sum += mm;
    count += 1;
  });
  return count > 0 ? Math.max(0, sum / count) : 0;
}

/** A place on an axis of the bore, in the frame of the pin. */
export function inPinFrame({ x, y, leanX, leanY }: Axis, placed: Placed, z: number) {
  return {
    x: placed.x + x + (placed.leanX + leanX) * z,
    y: placed.y + y + (placed.leanY + leanY) * z,
    z: placed.station + z,
  };
}
