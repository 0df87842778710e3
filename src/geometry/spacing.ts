/** How angles lie round a turn. */
export interface Spacing {
  /** rows by rising angle, whole turns taken off */
  order: Int32Array;
  /** radians: the first angle in that order, 0 or more */
  start: number;
  /** radians: of each row, half of the gaps to its neighbours on both sides; they sum to 2 pi */
  share: Float64Array;
  /** radians: the widest gap; `to` may pass 2 pi */
  gap: { from: number; to: number };
  /** true where all gaps are alike, to rounding of angles typed to 1e-6 of a step */
  even: boolean;
}

const ALIKE = 1e-6;

/** @param theta radians, finite, at least one */
export function bySpacing(theta: ArrayLike<number>): Spacing {
  const turn = 2 * Math.PI;
  const count = theta.length;
  const wrapped = Float64Array.from(theta, (t) => {
    const rest = t - turn * Math.floor(t / turn);
    // Just below 0 is 0: it would otherwise stand at the far end of the order.
    return turn - rest < ALIKE * (turn / count) ? 0 : rest;
  });
  const order = Int32Array.from({ length: count }, (_, i) => i).sort(
    (a, b) => wrapped[a]! - wrapped[b]!,
  );
  const share = new Float64Array(count);
  const gap = { from: 0, to: 0 };
  let even = true;
  for (let i = 0; i < count; i++) {
    const from = wrapped[order[i]!]!;
    const to = i + 1 < count ? wrapped[order[i + 1]!]! : wrapped[order[0]!]! + turn;
    share[order[i]!]! += (to - from) / 2;
    share[order[(i + 1) % count]!]! += (to - from) / 2;
    if (to - from > gap.to - gap.from) Object.assign(gap, { from, to });
    const place = wrapped[order[0]!]! + (turn * i) / count;
    if (!(Math.abs(from - place) <= ALIKE * (turn / count))) even = false;
  }
  return { order, start: wrapped[order[0]!]!, share, gap, even };
}
