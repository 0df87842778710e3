/**
 * Points of a wall from its radii about a datum axis: exact, whatever the axis of the wall itself.
 * (Lobe 1 of the radii stands for a shift of the axis to first order only: the limacon of D. G.
 * Chetwynd, Precision Engineering 1 (1979) 137-141.) A depth along the datum axis is z as it stands.
 *
 * @param theta radians clockwise from 12 o'clock seen looking in at face A; any turn
 * @param radius distances from the datum axis, as many as theta, in the unit wanted of the points
 * @returns x to 3 o'clock (radius sin theta) and y to 12 (radius cos theta), one pair a radius; NaN
 *   where either is
 * @throws RangeError when theta and radius differ in length
 */
export function pointsFromRadii(
  theta: ArrayLike<number>,
  radius: ArrayLike<number>,
): [x: Float64Array, y: Float64Array] {
  const count = radius.length;
  if (theta.length !== count) throw new RangeError(`${theta.length} angles and ${count} radii`);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    x[i] = radius[i]! * Math.sin(theta[i]!);
    y[i] = radius[i]! * Math.cos(theta[i]!);
  }
  return [x, y];
}
