/** Places that are told apart. */

/** Two clock positions nearer than this (2 degrees) are one. */
const SAME_CLOCK = 0.035;

/** Values without near repeats, sorted; on a circle of the given period where it is finite. */
export function distinct(values: readonly number[], period: number, near = SAME_CLOCK): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const out: number[] = [];
  for (const v of sorted) {
    const last = out[out.length - 1];
    if (last === undefined || v - last > near) out.push(v);
  }
  if (out.length > 1 && out[0]! + period - out[out.length - 1]! <= near) out.pop();
  return out;
}
