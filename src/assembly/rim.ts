/** A worn rim face: how far below flush, how it leans, and the washers that bring it back. mm. */
import { solveInPlace } from '../num/linearSystem.ts';
import { type Stack, stackOf } from './shims.ts';

export interface FaceReading {
  readonly theta: number;
  /** How far the face lies below flush there: positive is worn. */
  readonly below: number;
}

export interface Rim {
  readonly least: { readonly below: number; readonly theta: number };
  readonly greatest: { readonly below: number; readonly theta: number };
  /** How much farther below flush the plane of the face lies at `theta` than straight across; null under three places. */
  readonly lean: { readonly across: number; readonly theta: number } | null;
  /** On the face as it is: they rest where it is worn least, and leave the gap under them where it is worn most. */
  readonly asItIs: Washers;
  /** On the face dressed square down to where it is worn most. */
  readonly dressed: Washers;
}

export interface Washers {
  /** Null where the stock has none so thin. */
  readonly stack: Stack | null;
  /** How far the bushing then stands out of the washers, or of the face where there are none; negative is below. */
  readonly standsOut: number;
  /** Greatest gap under them. */
  readonly gap: number;
}

/** A thinner washer than could be had by so much is as good where it saves a layer. */
const CLOSE = 0.05;

/**
 * @param stock washers at hand
 * @param standOut how far the bushing stands out of the face as it was new: positive; negative is below
 * @returns null without a reading
 */
export function rimOf(
  readings: readonly FaceReading[],
  stock: readonly number[],
  standOut: number,
): Rim | null {
  const known = readings.filter(({ theta, below }) => Number.isFinite(theta + below));
  if (known.length === 0) return null;
  const least = known.reduce((a, b) => (b.below < a.below ? b : a));
  const greatest = known.reduce((a, b) => (b.below > a.below ? b : a));
  const filled = (below: number, gap: number): Washers => {
    const stack = stackOf({ thickness: below, under: CLOSE, over: 0, must: 'within' }, stock);
    return { stack, standsOut: standOut + below - (stack?.thickness ?? 0), gap };
  };
  return {
    least,
    greatest,
    lean: leanOf(known),
    asItIs: filled(least.below, greatest.below - least.below),
    dressed: filled(greatest.below, 0),
  };
}

/** Least-squares plane through the readings: c + x sin theta + y cos theta. */
function leanOf(readings: readonly FaceReading[]): Rim['lean'] {
  const terms = ({ theta }: FaceReading) => [1, Math.sin(theta), Math.cos(theta)];
  const a = new Float64Array(9);
  const b = new Float64Array(3);
  for (const one of readings) {
    const t = terms(one);
    for (let i = 0; i < 3; i++) {
      b[i]! += t[i]! * one.below;
      for (let j = 0; j < 3; j++) a[i * 3 + j]! += t[i]! * t[j]!;
    }
  }
  if (readings.length < 3 || !solveInPlace(a, b, 3)) return null;
  const theta = Math.atan2(b[1]!, b[2]!);
  return { across: 2 * Math.hypot(b[1]!, b[2]!), theta: theta < 0 ? theta + 2 * Math.PI : theta };
}
