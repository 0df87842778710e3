/**
 * What an instrument would read in a bore whose true wall is known: the touching points are found on the wall
 * itself, and not by any formula of lobes. Millimetres and radians, as in `wear.ts`.
 */
import type { Instrument } from '../job/schema.ts';
import { type Random, seededRandom } from '../num/random.ts';
import type { Truth } from './wear.ts';

export interface Place {
  readonly theta: number;
  readonly z: number;
}

/** Where a spindle, a centred pin or a boss stands: at face A (x to 3 o'clock, y to 12), and its run per mm. */
export interface Standing {
  readonly x: number;
  readonly y: number;
  readonly leanX: number;
  readonly leanY: number;
}

export interface Reader {
  /** One standard deviation of the hand and the gauge. */
  readonly noise: number;
  /** Step of the gauge, to which every reading is rounded; 0: none. */
  readonly resolution: number;
  readonly seed: number;
  /** Of the spindle (sweep), the pin (radius) or the boss's centre (wall); left out: on the axis. */
  readonly standing?: Standing;
  /** sweep: what the needle shows at `zero` radius; the needle falls on a larger radius where sign is -1. */
  readonly sign?: 1 | -1;
  readonly zero?: number;
  /** wall: radius of the boss outside. */
  readonly boss?: number;
}

const ON_AXIS: Standing = { x: 0, y: 0, leanX: 0, leanY: 0 };

/** Every clock position at every depth, depth by depth. */
export function placesOn(thetas: readonly number[], depths: readonly number[]): Place[] {
  return depths.flatMap((z) => thetas.map((theta) => ({ theta, z })));
}

/**
 * Readings at the places, in order: a diameter (two-point), the mean diameter as three self-centring legs find
 * it, a needle (sweep), a thickness (wall), a radius (radius). The same seed gives the same readings.
 */
export function read(
  truth: Truth,
  instrument: Instrument,
  places: readonly Place[],
  reader: Reader,
): number[] {
  const random: Random = seededRandom(reader.seed);
  return places.map((place) => {
    const noisy = exact(truth, instrument, place, reader) + reader.noise * random.normal();
    return reader.resolution > 0 ? inSteps(noisy, reader.resolution) : noisy;
  });
}

/** Whole steps, divided where the step is a decimal's inverse, so that 0.01 gives 2.5 and not 2.5000000000000004. */
function inSteps(value: number, step: number): number {
  const inverse = Math.round(1 / step);
  if (Math.abs(inverse * step - 1) < 1e-12) return Math.round(value * inverse) / inverse;
  return Math.round(value / step) * step;
}

function exact(truth: Truth, instrument: Instrument, place: Place, reader: Reader): number {
  const { theta, z } = place;
  const centre = standingAt(reader.standing ?? ON_AXIS, z);
  switch (instrument) {
    case 'two-point':
      return truth(theta, z) + truth(theta + Math.PI, z);
    case 'three-leg':
      return threeLegs(truth, theta, z);
    case 'radius':
      return wallFrom(truth, centre, theta, z);
    case 'sweep':
      return (reader.sign ?? 1) * (wallFrom(truth, centre, theta, z) - (reader.zero ?? 0));
    case 'wall':
      return circleFrom(reader.boss ?? Number.NaN, centre, theta) - truth(theta, z);
  }
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

function standingAt({ x, y, leanX, leanY }: Standing, z: number): Spot {
  return { x: x + leanX * z, y: y + leanY * z };
}

/** Distance from a point inside to the wall, in the direction of a clock position. */
function wallFrom(truth: Truth, from: Spot, theta: number, z: number): number {
  const [dx, dy] = [Math.sin(theta), Math.cos(theta)];
  let reach = truth(theta, z);
  // each turn the wall's radius is taken where the last reach ended; the error falls by offset/radius every time
  for (let turn = 0; turn < 60; turn++) {
    const radius = truth(Math.atan2(from.x + reach * dx, from.y + reach * dy), z);
    const along = from.x * dx + from.y * dy;
    const aside = from.x * dy - from.y * dx;
    const next = Math.sqrt(radius * radius - aside * aside) - along;
    if (Math.abs(next - reach) < 1e-12) return next;
    reach = next;
  }
  return reach;
}

/** Distance from the bore's axis to a circle about another centre. */
function circleFrom(radius: number, centre: Spot, theta: number): number {
  const [dx, dy] = [Math.sin(theta), Math.cos(theta)];
  const aside = centre.x * dy - centre.y * dx;
  return centre.x * dx + centre.y * dy + Math.sqrt(radius * radius - aside * aside);
}

/** Twice the common reach of three legs, 120 degrees apart, about the centre at which they are equal. */
function threeLegs(truth: Truth, theta: number, z: number): number {
  const legs = [0, 1, 2].map((leg) => theta + (leg * 2 * Math.PI) / 3);
  let centre: Spot = { x: 0, y: 0 };
  let mean = Number.NaN;
  for (let turn = 0; turn < 100; turn++) {
    const at = centre;
    const reaches = legs.map((leg) => wallFrom(truth, at, leg, z));
    mean = (reaches[0]! + reaches[1]! + reaches[2]!) / 3;
    // a longer leg pulls the centre its way: for three legs the shift is two thirds of what each is over
    const pull = (along: (angle: number) => number) =>
      legs.reduce((sum, leg, k) => sum + (2 / 3) * (reaches[k]! - mean) * along(leg), 0);
    centre = { x: at.x + pull(Math.sin), y: at.y + pull(Math.cos) };
    if (Math.max(...reaches) - Math.min(...reaches) < 1e-11) break;
  }
  return 2 * mean;
}
