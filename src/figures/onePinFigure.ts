/** Bores on one pin as plain data: the largest pin drawn straight, each bore's walls beside it, exaggerated; seen two ways. */
import type { OnePin } from '../evaluate/onePin.ts';

export const ONE_PIN = { width: 340, height: 132, from: 12, to: 328, middle: 70, pin: 16 };

/** A bore in one view: left and right end, and how far its walls stand from the pin's, upper and lower, at both ends. */
export interface BoreSeen {
  readonly name: string;
  readonly left: number;
  readonly right: number;
  /** In drawing units outside the pin, at the left and the right end: below 0 it would bite. */
  readonly upper: readonly [number, number];
  readonly lower: readonly [number, number];
}

export interface OnePinView {
  /** Clock positions at the top and the foot of the view. */
  readonly top: '12' | '3';
  readonly foot: '6' | '9';
  readonly bores: readonly BoreSeen[];
}

/** How far walls are drawn from the pin where they are farthest, in drawing units. */
const FAR = 26;

/** @returns null where no pin goes through, so that there is nothing to draw */
export function onePinViews({ holes, largest }: OnePin): readonly OnePinView[] | null {
  if (!(largest > 0)) return null;
  const air = holes.flatMap(({ alone, beside }) =>
    [beside.A, beside.B].flatMap(({ x, y }) => [
      (alone - largest) / 2 + Math.abs(x),
      (alone - largest) / 2 + Math.abs(y),
    ]),
  );
  const scale = FAR / Math.max(...air, 1e-6);
  const ends = holes.flatMap(({ placed }) => [placed.station, placed.station + placed.length]);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const along = (z: number) =>
    ONE_PIN.from + ((ONE_PIN.to - ONE_PIN.from) * (z - low)) / (high - low);
  const seen = (of: 'x' | 'y') =>
    holes.map(({ name, alone, beside, placed }): BoreSeen => {
      const room = (alone - largest) / 2;
      return {
        name,
        left: along(placed.station),
        right: along(placed.station + placed.length),
        upper: [scale * (room + beside.A[of]), scale * (room + beside.B[of])],
        lower: [scale * (room - beside.A[of]), scale * (room - beside.B[of])],
      };
    });
  return [
    { top: '12', foot: '6', bores: seen('y') },
    { top: '3', foot: '9', bores: seen('x') },
  ];
}
