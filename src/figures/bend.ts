/**
 * The roll-out: how the wall goes from a hole to a flat map, and how the piece is turned meanwhile.
 *
 * The wall is a strip whose middle lies opposite the cut. At roll 0 it is bent to a full round of radius R, at
 * roll 1 it is flat; between, it is bent to radius R / (1 - roll), so that every arc keeps its length. Depth is
 * never touched. Coordinates are right-handed: x to 3 o'clock, y to 12 o'clock and -z inward, so that nothing
 * is mirrored.
 */
import { turned } from './sample.ts';

/** A direction or place in the plane of the rim: x to 3 o'clock, y to 12 o'clock. */
export interface Flat {
  readonly x: number;
  readonly y: number;
}

/** The bent middle line of the strip at one clock position. */
export interface Bend {
  /** On the round that deviations are counted from, mm. */
  readonly at: Flat;
  /** Unit vector away from the bore's axis, into the metal. */
  readonly outward: Flat;
}

/** Clock position opposite the cut: the middle of the map. */
export function middleOf(cut: number): number {
  return turned(cut + Math.PI);
}

/** Angle from the middle of the map, clockwise, in [-pi, pi). */
export function fromMiddle(theta: number, cut: number): number {
  return turned(theta - cut) - Math.PI;
}

/**
 * Where the strip is at `phi` from its middle.
 * @param radius mm
 * @param roll 0 hole to 1 flat
 */
export function bend(phi: number, radius: number, cut: number, roll: number): Bend {
  const middle = middleOf(cut);
  const angle = (1 - roll) * phi;
  // Along the strip and away from the axis at the middle; sin(a)/a keeps the flat end free of 0/0.
  const along = radius * phi * sinc(angle);
  const fallen = radius * phi * sinc(angle / 2) * Math.sin(angle / 2);
  const out = radius - fallen;
  const cos = Math.cos(middle);
  const sin = Math.sin(middle);
  return {
    at: { x: along * cos + out * sin, y: -along * sin + out * cos },
    outward: { x: Math.sin(middle + angle), y: Math.cos(middle + angle) },
  };
}

function sinc(angle: number): number {
  return Math.abs(angle) < 1e-9 ? 1 : Math.sin(angle) / angle;
}

/** The cut has come to the bottom by this roll, before the piece opens far: one never looks at its back. */
const SPUN_BY = 0.35;

/**
 * How the piece is turned before it is looked at, radians: first `spin` about z, then `tip` about x. At roll 0
 * one looks in at face A with 12 o'clock up; at roll 1 one looks at the wall from inside with the rim on top
 * and the clock rising to the right.
 */
export function poseAt(roll: number, cut: number): { spin: number; tip: number } {
  const middle = fromMiddle(middleOf(cut), Math.PI);
  const early = Math.min(1, roll / SPUN_BY);
  return { spin: middle * early * early * (3 - 2 * early), tip: (-Math.PI / 2) * roll };
}

/** A place turned as `poseAt` says. */
export function posed(
  at: readonly [number, number, number],
  roll: number,
  cut: number,
): [number, number, number] {
  const { spin, tip } = poseAt(roll, cut);
  const x = at[0] * Math.cos(spin) - at[1] * Math.sin(spin);
  const y = at[0] * Math.sin(spin) + at[1] * Math.cos(spin);
  return [x, y * Math.cos(tip) - at[2] * Math.sin(tip), y * Math.sin(tip) + at[2] * Math.cos(tip)];
}
