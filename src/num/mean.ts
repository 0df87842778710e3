/** Mean, corrected once for what rounding lost; NaN for no values. */
export function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  const first = sum / values.length;
  let rest = 0;
  for (let i = 0; i < values.length; i++) rest += values[i]! - first;
  return first + rest / values.length;
}
