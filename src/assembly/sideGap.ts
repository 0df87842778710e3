/** The room along a pin beside a boss between two ears: what stands in it summed, and face shims that fill the rest. mm. */
import { type Stack, stackOf } from './shims.ts';

export interface Range {
  readonly least: number;
  readonly greatest: number;
}

export interface StackUp {
  /** Between the faces of the ears, as measured at several places. */
  readonly between: readonly number[];
  /** Over both faces of the boss. */
  readonly width: readonly number[];
  /** Thickness of everything else along the pin; a negative one makes room, as a face that is dressed. */
  readonly parts: readonly number[];
}

/**
 * What is left of the room, both sides together: least where the ears are nearest and the boss widest, greatest the other
 * way about. Below 0 it does not go in. NaN where something is not known.
 */
export function sideGap({ between, width, parts }: StackUp): Range {
  const taken = parts.reduce((sum, one) => sum + one, 0);
  if (between.length === 0 || width.length === 0)
    return { least: Number.NaN, greatest: Number.NaN };
  return {
    least: Math.min(...between) - Math.max(...width) - taken,
    greatest: Math.max(...between) - Math.min(...width) - taken,
  };
}

export interface FaceShims {
  readonly stack: Stack;
  /** Layers beside each face: thickest first, and each to the side that has less. */
  readonly A: readonly number[];
  readonly B: readonly number[];
  /** What is left of the gap with them in. */
  readonly left: Range;
}

/**
 * Shims from the stock that bring a gap under `most` and leave `least` of it where it is tightest; the fewest, and of as
 * many the fullest.
 *
 * @returns null where it is not over `most`, or no stack of the stock goes in
 */
export function faceShims(
  gap: Range,
  { least, most }: { readonly least: number; readonly most: number },
  stock: readonly number[],
): FaceShims | null {
  if (!(gap.greatest > most)) return null;
  const thickness = gap.least - least;
  const under = Math.max(0, thickness - (gap.greatest - most));
  const stack = stackOf({ thickness, under, over: 0, must: 'within' }, stock);
  if (stack === null) return null;
  const sides: { A: number[]; B: number[] } = { A: [], B: [] };
  const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
  for (const layer of stack.layers) {
    (sum(sides.B) < sum(sides.A) ? sides.B : sides.A).push(layer);
  }
  return {
    stack,
    ...sides,
    left: { least: gap.least - stack.thickness, greatest: gap.greatest - stack.thickness },
  };
}
