/**
 * A bore closed by heat and jaws, as it is aimed for. Two limits: what is bent closes one way and opens the other, so
 * that the mean size stays; metal that is hot and held also shortens, and what bending leaves too large closes by that.
 */
import { SEATED } from './removal.ts';
import type { Field, Grid } from './types.ts';

export interface Squeezed {
  /** Per side about the target, after the squeeze. */
  readonly deviation: Field;
  /** How far it closes where it closes most, across, mm; of that by shortening. */
  readonly closing: number;
  readonly upset: number;
  /** Where bending alone would end: the largest place of all depths over the target, per side. */
  readonly bentOver: number;
}

/** Halvings until the share of the oval is as fine as the last bits of a figure. */
const HALVINGS = 40;

/**
 * Depth by depth no farther than needed: first the oval is bent out, then the size is taken down, until the largest place
 * of the seat ends `under` the target.
 *
 * @param deviation per side about the target, as it is
 * @param under across, mm
 */
export function squeezed(
  { theta, z }: Grid,
  places: Uint8Array,
  deviation: Field,
  under: number,
): Squeezed {
  const columns = theta.length;
  const out = deviation.slice();
  const aim = -under / 2;
  let [closing, upset, bentOver] = [0, 0, Number.NEGATIVE_INFINITY];
  for (let iz = 0; iz < z.length; iz++) {
    const row = iz * columns;
    const seated = Array.from({ length: columns }, (_, it) => it).filter(
      (it) => places[row + it] === SEATED && !Number.isNaN(deviation[row + it]!),
    );
    if (seated.length === 0) continue;
    const { oval, amplitude } = ovalOf(theta, deviation.subarray(row, row + columns));
    const largest = (share: number) =>
      seated.reduce(
        (most, it) => Math.max(most, deviation[row + it]! - share * oval[it]!),
        Number.NEGATIVE_INFINITY,
      );
    const share = leastShare(largest, aim);
    const left = largest(share);
    const by = Math.max(0, left - aim);
    bentOver = Math.max(bentOver, left);
    upset = Math.max(upset, 2 * by);
    closing = Math.max(closing, 2 * (share * amplitude + by));
    for (let it = 0; it < columns; it++) out[row + it]! -= share * oval[it]! + by;
  }
  return { deviation: out, closing, upset, bentOver };
}

/** The second lobe of one depth, per side; a place that is not known counts for nothing. */
function ovalOf(theta: Float64Array, row: Field): { oval: Float64Array; amplitude: number } {
  let [c, s] = [0, 0];
  for (let it = 0; it < theta.length; it++) {
    const e = Number.isNaN(row[it]!) ? 0 : row[it]!;
    c += (2 * e * Math.cos(2 * theta[it]!)) / theta.length;
    s += (2 * e * Math.sin(2 * theta[it]!)) / theta.length;
  }
  const oval = theta.map((t) => c * Math.cos(2 * t) + s * Math.sin(2 * t));
  return { oval, amplitude: Math.hypot(c, s) };
}

/**
 * The least share of the oval to be bent out so that the largest place ends at the aim, 0 to 1; where none does, all of it,
 * or none where bending makes the largest place no smaller.
 *
 * @param largest convex in the share
 */
function leastShare(largest: (share: number) => number, aim: number): number {
  if (largest(0) <= aim) return 0;
  if (!(largest(1) <= aim)) return largest(1) < largest(0) ? 1 : 0;
  let [over, under] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (over + under) / 2;
    if (largest(middle) <= aim) under = middle;
    else over = middle;
  }
  return under;
}
