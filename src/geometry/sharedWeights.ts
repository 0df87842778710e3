/**
 * Weights on heights that all hold alike, as near to even as their balance allows: positive, sum 1,
 * `sum weight * gradient = 0`. Some heights may get none. Null when no such weights are found.
 *
 * @param gradients one a height, all of the same length
 */
export function sharedWeights(
  gradients: readonly (readonly number[])[],
): { at: number; weight: number }[] | null {
  let kept = gradients.map((_, at) => at);
  while (kept.length > 1) {
    const weights = nearestToEven(kept.map((at) => gradients[at]!));
    if (weights === null) return null;
    if (weights.every((w) => w > 0)) return kept.map((at, i) => ({ at, weight: weights[i]! }));
    const lowest = weights.indexOf(Math.min(...weights));
    kept = kept.filter((_, i) => i !== lowest);
  }
  return null;
}

/** What is left of a condition on the weights when it says nothing beyond the ones before. */
const NOTHING = 1e-9;

/** Least change from even weights that meets every condition, or null when they contradict. */
function nearestToEven(gradients: readonly (readonly number[])[]): number[] | null {
  const count = gradients.length;
  const conditions = gradients[0]!.map((_, j) => ({ row: gradients.map((g) => g[j]!), sum: 0 }));
  conditions.unshift({ row: new Array<number>(count).fill(1), sum: 1 });
  const weights = new Array<number>(count).fill(1 / count);
  const units: { row: number[]; sum: number }[] = [];
  for (const { row, sum } of conditions) {
    const rest = [...row];
    let left = sum;
    for (let twice = 0; twice < 2; twice++) {
      for (const unit of units) {
        const part = unit.row.reduce((s, v, i) => s + v * rest[i]!, 0);
        for (let i = 0; i < count; i++) rest[i]! -= part * unit.row[i]!;
        left -= part * unit.sum;
      }
    }
    const length = Math.hypot(...rest);
    if (length > NOTHING) {
      const unit = { row: rest.map((v) => v / length), sum: left / length };
      const off = unit.row.reduce((s, v, i) => s + v * weights[i]!, 0) - unit.sum;
      for (let i = 0; i < count; i++) weights[i]! -= off * unit.row[i]!;
      units.push(unit);
    } else if (Math.abs(left) > NOTHING) return null;
  }
  return weights;
}
