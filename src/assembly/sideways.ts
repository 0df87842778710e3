/**
 * A thick ring under one lobe of pressure, which pushes it sideways.
 *
 * Nothing in the plane holds against it. In a boss, and in a bushing that keeps straight, the push is carried along the
 * length by the slices beside it; it counts as spread evenly over the section, as a body force. Moves count from the
 * mean of the section, which is where the straight axis has the slice. Plane stress, radii 1 and b: the stress function
 * (A r^3 + B / r + C r ln r) cos theta + D r theta sin theta with the body force's potential V = -f r cos theta
 * (Michell 1899; moves of the terms: Barber, Elasticity, table 9.1; those of V by Hooke's law).
 */
export interface LobeMoves {
  /** Outward move of the bore at the crest of the load: E u / (p a), with a the bore's radius. */
  readonly bore: number;
  /** Outward move of the outside at the crest: E u / (p a). */
  readonly outside: number;
  /** Hoop stress at the bore at the crest: s / p, positive pulls. */
  readonly hoop: number;
}

/**
 * @param b outside over bore, above 1, finite
 * @param on where p cos(theta) presses; positive on the metal at theta 0
 * @returns as of `lobeMoves`
 */
export function oneLobe(b: number, poisson: number, on: 'bore' | 'outside'): LobeMoves {
  const k = (3 - poisson) / (1 + poisson);
  // Forces balance: the body force takes up the push.
  const f = on === 'bore' ? -1 / (b * b - 1) : b / (b * b - 1);
  const D = on === 'bore' ? (f * b * b) / 2 : f / 2;
  // Once round the clock, the metal meets itself.
  const C = (-D * (k - 1)) / (k + 1);
  // No shear on either wall.
  const B = (C * b * b) / (2 * (1 + b * b));
  const A = -C / (2 * (1 + b * b));
  const mean = sectionMean(A, (D * 4 * k) / (k + 1), b);
  const move = (r: number) =>
    (1 + poisson) *
    (A * (k - 2) * r * r +
      B / (r * r) +
      (C * ((k - 1) * Math.log(r) - 1) + D * ((k + 1) * Math.log(r) - 1)) / 2 -
      (f * r * r * (k - 1)) / 4 -
      mean);
  return { bore: move(1), outside: move(b), hoop: 6 * A + 2 * B + C - f };
}

/** Mean over the section of the move along theta 0, whose mean round a circle is -2 A r^2 + logs ln(r) / 2. */
function sectionMean(A: number, logs: number, b: number): number {
  const area = b * b - 1;
  const squares = (b ** 4 - 1) / 2 / area;
  const logarithm = (b * b * Math.log(b)) / area - 1 / 2;
  return -2 * A * squares + (logs / 2) * logarithm;
}
