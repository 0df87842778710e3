/** How far a hole is from round by its radius: what diameters cannot tell of an odd number of lobes. First order. */
import { choleskyInPlace, solveLower, solveLowerTransposed } from '../num/cholesky.ts';
import { type Hole, turns } from './running.ts';

export interface RadialSpan {
  /** Greatest less least radius about the least-squares middle at one depth, where that is most; mm per side. */
  readonly perSide: number;
  readonly z: number;
  /** Lobes there: the number of waves round the clock that is strongest, 2 an oval; 0: as good as round. */
  readonly lobes: number;
}

/** More waves than this are told as nothing but rough. */
const MOST_LOBES = 12;
/** Share of the places that must be known: no circle is told from a short arc. Judgement. */
const ENOUGH = 0.25;
/** mm: what is left by rounding. */
const ROUND = 1e-9;

/** @returns null where no depth has a quarter of its places known */
export function radialSpan({ radius, z, columns }: Hole): RadialSpan | null {
  const basis = turns(columns);
  let worst: (RadialSpan & { readonly off: Float64Array }) | null = null;
  for (let row = 0; row < z.length; row++) {
    const off = aboutMiddle(radius.subarray(row * columns, (row + 1) * columns), basis);
    if (off === null) continue;
    const perSide = spanOf(off);
    if (worst === null || perSide > worst.perSide) {
      worst = { perSide, z: z[row]!, lobes: 0, off };
    }
  }
  if (worst === null) return null;
  const { off, ...found } = worst;
  return found.perSide > ROUND ? { ...found, lobes: strongest(off) } : found;
}

function spanOf(off: Float64Array): number {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < off.length; i++) {
    if (off[i]! < least) least = off[i]!;
    if (off[i]! > greatest) greatest = off[i]!;
  }
  return greatest - least;
}

/** What is left of the radii about their least-squares circle; null: too few places. */
function aboutMiddle(
  radius: Float64Array,
  { sines, cosines }: ReturnType<typeof turns>,
): Float64Array | null {
  const columns = radius.length;
  let known = 0;
  const normal = new Float64Array(9);
  const right = new Float64Array(3);
  const one = new Float64Array([1, 0, 0]);
  for (let i = 0; i < columns; i++) {
    const r = radius[i]!;
    if (Number.isNaN(r)) continue;
    known++;
    one[1] = sines[i]!;
    one[2] = cosines[i]!;
    for (let j = 0; j < 3; j++) {
      right[j]! += one[j]! * r;
      for (let k = 0; k < 3; k++) normal[3 * j + k]! += one[j]! * one[k]!;
    }
  }
  if (!(known >= ENOUGH * columns) || !choleskyInPlace(normal, 3)) return null;
  solveLower(normal, 3, right, right);
  solveLowerTransposed(normal, 3, right, right);
  const off = new Float64Array(columns);
  for (let i = 0; i < columns; i++) {
    off[i] = radius[i]! - right[0]! - right[1]! * sines[i]! - right[2]! * cosines[i]!;
  }
  return off;
}

/** Places that are not known count as lying on the circle. */
function strongest(off: Float64Array): number {
  let [lobes, size] = [0, 0];
  for (let n = 2; n <= MOST_LOBES; n++) {
    let [s, c] = [0, 0];
    off.forEach((mm, i) => {
      if (Number.isNaN(mm)) return;
      const turn = (2 * Math.PI * n * i) / off.length;
      s += mm * Math.sin(turn);
      c += mm * Math.cos(turn);
    });
    if (Math.hypot(s, c) > size) [lobes, size] = [n, Math.hypot(s, c)];
  }
  return lobes;
}
