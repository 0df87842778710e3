/**
 * What contact gauges make of a lobed profile, to first order in the lobes: two contacts across, three legs that
 * center themselves, two fixed contacts and one that moves (a vee).
 *
 * Every such reading is a sum of weighted radii at fixed turns from the measuring direction. A vee is two contacts at
 * turns d1 and d2: a profile moved by u keeps touching them when u . d = -(departure of the radius there), the
 * measuring direction is m = a1 d1 + a2 d2, and the needle shows the departure at m less a1 and a2 times those at d1
 * and d2. All of it holds in a bore as on a shaft.
 *
 * Terms and factors as in ISO 4292:1985, Methods for the assessment of departure from roundness - measurement by
 * two- and three-point methods.
 */

/** One radius of the sum: how far round it lies from the measuring direction, radians, and its weight. */
export interface Touch {
  readonly turn: number;
  readonly weight: number;
}

/** Two contacts across: the diameter. */
export const TWO_POINT: readonly Touch[] = [
  { turn: 0, weight: 1 },
  { turn: Math.PI, weight: 1 },
];

/** Three legs 120 degrees apart that move alike: twice the mean radius under them, as the gauge shows it. */
export const THREE_LEG: readonly Touch[] = [0, 1, 2].map((k) => ({
  turn: (2 * Math.PI * k) / 3,
  weight: 2 / 3,
}));

/** Two fixed contacts and one that moves. Angles in radians. */
export interface Vee {
  /** between the two flanks, above 0, below pi; the contacts lie pi less this angle apart */
  readonly angle: number;
  /** summit: measured across from the fixed contacts; rider: measured between them */
  readonly method: 'summit' | 'rider';
  /** from the bisector to the measuring direction; 0, or left out, is the symmetrical setting */
  readonly skew?: number;
}

/**
 * @returns the measuring contact first, then the two fixed ones
 * @throws RangeError when the angle is not between 0 and pi
 */
export function veeTouches({ angle, method, skew = 0 }: Vee): Touch[] {
  if (!(angle > 0 && angle < Math.PI)) {
    throw new RangeError(`a vee of ${angle} rad: the angle must lie between 0 and pi`);
  }
  // From the bisector that points into the vee, the fixed contacts lie at +-side and the measuring one at `at`.
  const side = (Math.PI - angle) / 2;
  const at = (method === 'summit' ? Math.PI : 0) + skew;
  const apart = Math.sin(2 * side);
  return [
    { turn: 0, weight: 1 },
    { turn: side - at, weight: -Math.sin(at + side) / apart },
    { turn: -side - at, weight: Math.sin(at - side) / apart },
  ];
}

/**
 * Factor F of a gauge for one lobe number: largest less smallest reading in a turn, over the lobe's own crest to
 * trough. 0: the gauge cannot see it. For the settings of ISO 4292: two-point 2 for even and 0 for odd numbers;
 * symmetrical vee of angle a |1 + cos n(90 + a/2) / sin(a/2)| by the summit and |1 - cos n(90 - a/2) / sin(a/2)| by
 * the rider method.
 *
 * @param lobes whole number, 0 (size) or more
 */
export function gaugeFactor(touches: readonly Touch[], lobes: number): number {
  let cosine = 0;
  let sine = 0;
  for (const { turn, weight } of touches) {
    cosine += weight * Math.cos(lobes * turn);
    sine += weight * Math.sin(lobes * turn);
  }
  return Math.hypot(cosine, sine);
}
