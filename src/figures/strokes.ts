/**
 * Lines laid over the bore in three dimensions, as places on the strip that rolls out: the scene bends them with it.
 */
import { fromMiddle } from './bend.ts';
import { type Axis, aboutAxis } from './ghost.ts';
import { type WallShape, wearAt } from './mesh.ts';

/** A point of a line. */
export interface Knot {
  /** Radians from the middle of the map; may go a little beyond its ends. */
  readonly phi: number;
  /** mm from the rim, inward. */
  readonly z: number;
  /** Per side, mm from the round that deviations are counted from: drawn larger by the stated factor. */
  readonly wear: number;
  /** Farther out by so much, mm, true size; negative towards the axis. */
  readonly out: number;
  /** The same, but only while the piece is a hole: it shrinks as the hole opens. */
  readonly reach: number;
}

export type StrokeKind =
  | 'target'
  | 'target-side'
  | 'ghost'
  | 'plug'
  | 'average'
  | 'around'
  | 'reading'
  | 'doubt'
  | 'path'
  | 'scale'
  | 'cut'
  | PressKind;

/** Lines of contact pressure from the lightest to the heaviest, the edge of what touches, and gaps ruled along the depth. */
export type PressKind =
  | 'pressed-1'
  | 'pressed-2'
  | 'pressed-3'
  | 'pressed-4'
  | 'pressed-5'
  | 'touch-edge'
  | 'gap';

export interface Stroke {
  readonly kind: StrokeKind;
  readonly knots: readonly Knot[];
}

const NEAR = { wear: 0, out: 0, reach: 0 };
const TURN = 2 * Math.PI;
/** Steps of a line all round: a chord of so many lies 0.0003 of the radius off its arc. */
const ROUND = 128;
const ALONG = 32;

const steps = (n: number) => Array.from({ length: n + 1 }, (_, i) => i / n);

/** All round at one depth. @param wear at each angle from the middle of the map */
function ring(kind: StrokeKind, z: number, wear: (phi: number) => number): Stroke {
  const knots = steps(ROUND).map((share) => {
    const phi = share * TURN - Math.PI;
    return { ...NEAR, phi, z, wear: wear(phi) };
  });
  return { kind, knots };
}

/** The target's edges: at rim and bottom all round, and along the depth every three hours. */
export function targetStrokes({ length, cut }: WallShape): Stroke[] {
  const along = quarters(cut).map(
    (phi): Stroke => ({
      kind: 'target-side',
      knots: steps(ALONG).map((share) => ({ ...NEAR, phi, z: share * length })),
    }),
  );
  return [ring('target', 0, () => 0), ring('target', length, () => 0), ...along];
}

/** 12, 3, 6 and 9 o'clock as angles from the middle of the map. */
function quarters(cut: number): number[] {
  return [0, 1, 2, 3].map((k) => fromMiddle((k * TURN) / 4, cut));
}

/** A line across or to where a gauge touched: from the wall to the middle of the hole, for each touch. */
export function spokes(
  kind: 'reading' | 'doubt',
  shape: WallShape,
  touches: readonly { readonly theta: number; readonly z: number }[],
): Stroke[] {
  return touches.map(({ theta, z }) => {
    const phi = fromMiddle(theta, shape.cut);
    const wear = wearAt(shape, phi, z);
    const wall = { ...NEAR, phi, z, wear };
    return { kind, knots: [wall, { ...wall, wear: 0, reach: -shape.radius }] };
  });
}

/** The way of a stylus that was swept round at a depth: just off the wall. */
export function sweptPath(shape: WallShape, z: number): Stroke {
  const path = ring('path', z, (phi) => wearAt(shape, phi, z));
  const out = -0.01 * shape.radius;
  return { ...path, knots: path.knots.map((knot) => ({ ...knot, out })) };
}

/** From a gauge outside the boss through the metal to the wall. */
export function wallStroke(shape: WallShape, metal: number, theta: number, z: number): Stroke {
  const phi = fromMiddle(theta, shape.cut);
  const wear = wearAt(shape, phi, z);
  const at = { ...NEAR, phi, z };
  return {
    kind: 'reading',
    knots: [
      { ...at, wear },
      { ...at, out: 1.08 * metal },
    ],
  };
}

/**
 * Ticks of a depth scale.
 * @param phi where it runs, radians from the middle of the map
 * @param into how far they go into the metal of a cut face, mm; null: they lie across `phi` on the wall
 */
export function scaleStrokes(
  shape: WallShape,
  depths: readonly number[],
  phi: number,
  into: number | null,
): Stroke[] {
  const half = 0.045;
  const tick = (z: number, at: number, out: number): Knot => ({
    ...NEAR,
    phi: at,
    z,
    wear: wearAt(shape, at, z),
    out,
  });
  return depths.map((z) => ({
    kind: 'scale',
    knots:
      into === null
        ? [phi - half, phi, phi + half].map((at) => tick(z, at, 0))
        : [tick(z, phi, 0), tick(z, phi, into)],
  }));
}

/** The cut: across the rim's metal at both ends of the map. */
export function cutStrokes(shape: WallShape, metal: number): Stroke[] {
  return [-Math.PI, Math.PI].map((phi) => {
    const at = { ...NEAR, phi, z: 0 };
    return {
      kind: 'cut',
      knots: [
        { ...at, wear: wearAt(shape, phi, 0) },
        { ...at, out: metal },
      ],
    };
  });
}

/** A circle about an axis, as it stands against the round that deviations are counted from, at the rim. */
export function circleStroke(
  kind: 'plug' | 'average' | 'around',
  { radius, cut }: WallShape,
  circle: { readonly x: number; readonly y: number; readonly radius: number },
): Stroke {
  const wear = (phi: number) => {
    const theta = phi + cut + Math.PI;
    // Where a ray from the target's axis meets the circle.
    const along = circle.x * Math.sin(theta) + circle.y * Math.cos(theta);
    const aside = circle.x * Math.cos(theta) - circle.y * Math.sin(theta);
    return along + Math.sqrt(Math.max(0, circle.radius ** 2 - aside ** 2)) - radius;
  };
  return ring(kind, 0, wear);
}

/** Another stage's wall in this one's frame: at its rim and bottom, and along the depth every three hours. */
export function ghostStrokes(
  shape: WallShape,
  ghost: { readonly length: number; radiusAt(theta: number, z: number): number },
  axis: Axis,
): Stroke[] {
  const knot = (theta: number, z: number, middle: number): Knot => {
    const seen = aboutAxis(ghost.radiusAt(theta, z), theta, z, axis);
    // The whole line stays on one side of the cut, however the axis shifts its points.
    const phi = middle + fromMiddle(seen.theta - middle, shape.cut);
    return { ...NEAR, phi, z, wear: seen.radius - shape.radius };
  };
  const round = (z: number): Stroke => ({
    kind: 'ghost',
    knots: steps(ROUND).map((share) => {
      const phi = share * TURN - Math.PI;
      return knot(phi + shape.cut + Math.PI, z, phi);
    }),
  });
  const along = quarters(shape.cut).map(
    (phi): Stroke => ({
      kind: 'ghost',
      knots: steps(ALONG).map((share) =>
        knot(phi + shape.cut + Math.PI, share * ghost.length, phi),
      ),
    }),
  );
  return [round(0), round(ghost.length), ...along].map((stroke) => ({
    ...stroke,
    knots: stroke.knots.filter(({ wear }) => Number.isFinite(wear)),
  }));
}
