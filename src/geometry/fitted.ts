/** What the fits answer when they answer. Lengths are in the unit of the points. */

/** How far the points lie from the fitted feature, per side, positive away from the axis. */
export interface Deviation {
  min: number;
  max: number;
  /** max - min */
  range: number;
}

interface Fitted {
  status: 'ok';
  /** passes over the points, or steps tried, until nothing moved any more */
  iterations: number;
  /** square to the wall */
  deviation: Deviation;
}

export interface LeastSquares extends Fitted {
  /**
   * by how much, at worst, an error made alike in size at every reading is magnified in the radius
   * or the place of the center (at either end of the points, of an axis): 1.4 for a circle read
   * evenly all round, hundreds for a short arc
   */
  conditioning: number;
  /** rows, from 0, of the least and the greatest deviation (the first such row) */
  contacts: [number, number];
}

export interface Minimax extends Fitted {
  /**
   * by how much, at worst, errors of one at the contacts move the center (at either end of the
   * points, of an axis), the radius or the range
   */
  conditioning: number;
  /** rows, from 0, rising, of the points that hold the feature */
  contacts: number[];
  /**
   * one a contact: by how much the range of a zone, or the radius of another feature, grows for
   * each unit that the point moves outward. Those of one side of a zone sum to 1 or -1; where the
   * range is nothing the same points may hold both sides, and theirs cancel
   */
  multipliers: number[];
}

export interface RoundPlace {
  center: [number, number];
  /** of a zone: midway between its two circles */
  diameter: number;
}

export interface CylinderPlace {
  /**
   * `point` is the place on the axis level with the mean of the points; `direction` has length 1
   * and its largest component is positive
   */
  axis: { point: [number, number, number]; direction: [number, number, number] };
  /** of a zone: midway between its two cylinders */
  diameter: number;
}

export interface ConePlace {
  /**
   * `point` is the place on the axis level with the mean of the points; `direction` has length 1
   * and points to where the cone widens (with a half-angle of exactly 0, its largest component is
   * positive)
   */
  axis: { point: [number, number, number]; direction: [number, number, number] };
  /** across, square to the axis, at `axis.point`; of a zone: midway between its two cones */
  diameter: number;
  /** between axis and wall, radians, 0 to pi / 2: half of the taper across */
  halfAngle: number;
}
