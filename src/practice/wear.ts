/**
 * True worn bores, put together from parts that are each a plain formula of clock position and depth. Nothing
 * here is shared with the way in which readings are turned into a surface: a model that is tried on bores made by
 * itself proves nothing.
 *
 * Millimetres and radians; theta clockwise from 12 seen looking in at face A, z inward from face A. All parts are
 * per side; above zero is metal that is gone.
 */

/** Radius of the wall about the bore's own new axis. */
export type Truth = (theta: number, z: number) => number;
/** What a part adds to the radius there. */
export type Part = (theta: number, z: number) => number;
/** How much of a part there is at a depth, 1 all of it. */
export type Along = (z: number) => number;

/** A round bore of that radius with its wear. */
export function wornBore(radius: number, parts: readonly Part[]): Truth {
  return (theta, z) => parts.reduce((sum, part) => sum + part(theta, z), radius);
}

export const throughout: Along = () => 1;

/** All of it at face A, none from depth `reach` on, in a straight line. */
export function fading(reach: number): Along {
  return (z) => Math.max(0, 1 - z / reach);
}

/** From one share at face A in a straight line to another at the bottom. */
export function between(atA: number, atB: number, length: number): Along {
  return (z) => atA + ((atB - atA) * z) / length;
}

/** Ends that are worn more than the middle, by the shape of a mouth: `exponential` has no end of its own. */
export type MouthShape = 'exponential' | 'quadratic' | 'linear';

/** 1 at the face; at `reach` 0 (linear, quadratic) or 1/e (exponential). */
export function mouth(shape: MouthShape, reach: number, face: 'A' | 'B', length: number): Along {
  return (z) => {
    const t = (face === 'A' ? z : length - z) / reach;
    if (shape === 'exponential') return Math.exp(-t);
    const left = Math.max(0, 1 - t);
    return shape === 'linear' ? left : left * left;
  };
}

/** All round, as much as `along` says. */
export function round(perSide: number, along: Along): Part {
  return (_, z) => perSide * along(z);
}

/** n lobes: `perSide` proud of the mean at `theta`, and as much short of it between. */
export function lobes(n: number, perSide: number, theta: number, along = throughout): Part {
  return (at, z) => perSide * along(z) * Math.cos(n * (at - theta));
}

/** An oval of the given difference of diameters (across), its long axis towards `theta`. */
export function oval(outOfRound: number, theta: number, along = throughout): Part {
  return lobes(2, outOfRound / 4, theta, along);
}

/** Straight taper: nothing at face A, `perSide` at the bottom; below zero it is the mouth that is wide. */
export function taper(perSide: number, length: number): Part {
  return (_, z) => (perSide * z) / length;
}

/** Fattest in the middle by `perSide`, nothing at both faces. */
export function barrel(perSide: number, length: number): Part {
  return (_, z) => perSide * (1 - ((2 * z) / length - 1) ** 2);
}

/** Tightest in the middle: nothing there, `perSide` at both faces. */
export function waist(perSide: number, length: number): Part {
  return (_, z) => perSide * ((2 * z) / length - 1) ** 2;
}

/**
 * What a round part leaves that is smaller than the bore by `smaller` per side and has worn its way `wear` deep
 * towards `theta`. Exact: the wall is the farther of the old circle and the part's circle, seen from the old
 * axis. To first order in wear over radius it is max(0, (wear + smaller) cos(at - theta) - smaller).
 *
 * @param radius of the new bore
 */
export function crescent(
  radius: number,
  wear: number,
  smaller: number,
  theta: number,
  along = throughout,
): Part {
  const part = radius - smaller;
  return (at, z) => {
    // the part lies against the old wall before it wears: it moves by its clearance first
    const moved = wear * along(z) + smaller;
    const sine = moved * Math.sin(at - theta);
    if (!(Math.abs(sine) < part)) return 0;
    const reach = moved * Math.cos(at - theta) + Math.sqrt(part * part - sine * sine);
    return Math.max(0, reach - radius);
  };
}

/** Where a gouge is and how far it goes round and along, each way from its middle, mm. */
export interface Spot {
  readonly theta: number;
  readonly z: number;
  readonly halfWidth: number;
  readonly halfLength: number;
}

/** One hollow (or, below zero, one dent that stands proud) with a rounded floor and a definite edge. */
export function gouge(perSide: number, radius: number, spot: Spot): Part {
  return (at, z) => {
    const turn = Math.abs(Math.atan2(Math.sin(at - spot.theta), Math.cos(at - spot.theta)));
    const out = Math.hypot((turn * radius) / spot.halfWidth, (z - spot.z) / spot.halfLength);
    return out < 1 ? perSide * Math.cos((out * Math.PI) / 2) ** 2 : 0;
  };
}

/** A shoulder: `perSide` from face A to the given depth, nothing beyond. */
export function step(perSide: number, depth: number): Part {
  return (_, z) => (z < depth ? perSide : 0);
}

/** What a hole of its own size rubs off a pin on one side, to first order in wear over radius; below zero is gone. */
export function rubbed(perSide: number, theta: number, along = throughout): Part {
  return (at, z) => -perSide * along(z) * Math.max(0, Math.cos(at - theta));
}
