/**
 * What a pin meets in the bushings of one bore once they are pressed in, in the frame of the pin: the shape that each one's
 * bore takes, about its own axis; a round hole at each end where no shape can be worked out.
 */
import { pressed } from '../../assembly/pressFit.ts';
import type { Circle, HoleWall } from '../../assembly/straightPin.ts';
import { SEATED } from '../../bore/removal.ts';
import type { Axis } from '../../bore/types.ts';
import { lineThrough } from '../partner.ts';
import { type Into, roundOf } from './into.ts';
import type { Placed } from './placed.ts';
import { pressPart } from './press.ts';
import type { RoundFit } from './round.ts';
import type { Seated } from './seated.ts';

/**
 * How a bushing's bore is known: `shape` as it presses in the bore as it is; `formula` as though both were round; `whole` with
 * all of its press fit taken off, which is safe, where the sizes for a formula are missing.
 */
export type BoreBy = 'shape' | 'formula' | 'whole';

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

/** @param into of a bore whose bushings' insides are all known */
export function bushed({ matter, seated }: Into, placed: Placed): Bushed {
  const found = seated.map((one) => {
    const { fit } = roundOf(matter, one);
    if (fit !== null) return shaped(one, fit, placed);
    const press = mean(one);
    const { rings, facts } = pressPart(matter, one);
    const formula = pressed(rings, press - facts.loss.mm).closesIn;
    return Number.isNaN(formula)
      ? rounded(one, placed, press, 'whole')
      : rounded(one, placed, formula, 'formula');
  });
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

const WORST_FIRST: readonly BoreBy[] = ['whole', 'formula', 'shape'];

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
  const { theta, z } = wall.grid;
  const { settled, rows, inside, closedIn } = fit;
  const axis: Axis = {
    x: wall.axis.x + settled.x,
    y: wall.axis.y + settled.y,
    leanX: wall.axis.leanX + settled.leanX,
    leanY: wall.axis.leanY + settled.leanY,
  };
  const out = { x: [] as number[], y: [] as number[], z: [] as number[], circles: [] };
  const [first, last] = rows;
  for (let row = first; row <= last; row = row < last ? Math.min(row + EVERY, last) : row + 1) {
    const centre = inPinFrame(axis, placed, z[row]!);
    theta.forEach((turn, i) => {
      const r = inside[row * theta.length + i]!;
      out.x.push(centre.x + r * Math.sin(turn));
      out.y.push(centre.y + r * Math.cos(turn));
      out.z.push(centre.z);
    });
  }
  const ends = [z[first]!, z[last]!].map((depth) => endOf(axis, depth));
  return { wall: out, ends, by: 'shape', closesIn: Math.max(0, closedIn) };
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
