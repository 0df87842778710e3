/** Where the eye has to be so that everything is in the frame. Plain geometry, no camera. */

export type Vector = readonly [x: number, y: number, z: number];

/** Looking direction: radians to the right of the +z axis, and above it. */
export interface Turn {
  readonly azimuth: number;
  readonly elevation: number;
}

export interface Axes {
  readonly right: Vector;
  readonly up: Vector;
  /** From what is looked at to the eye. */
  readonly toward: Vector;
}

export function axesOf({ azimuth, elevation }: Turn): Axes {
  const [sa, ca] = [Math.sin(azimuth), Math.cos(azimuth)];
  const [se, ce] = [Math.sin(elevation), Math.cos(elevation)];
  return { right: [ca, 0, -sa], up: [-sa * se, ce, -ca * se], toward: [sa * ce, se, ca * ce] };
}

export interface Eye {
  readonly at: Vector;
  /** Distances along the line of sight to the nearest and farthest point. */
  readonly nearest: number;
  readonly farthest: number;
}

/**
 * The nearest place of the eye from which all points lie in the frame, which they then touch on both sides one
 * way, and lie in the middle of the other way.
 *
 * @param points x, y, z one after another; at least one point
 * @param tanX, tanY half width and half height of the usable frame at distance 1
 */
export function eyeFor(points: ArrayLike<number>, axes: Axes, tanX: number, tanY: number): Eye {
  const most = [-Infinity, -Infinity, -Infinity, -Infinity] as [number, number, number, number];
  let front = Number.NEGATIVE_INFINITY;
  let back = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 2 < points.length; i += 3) {
    const p: Vector = [points[i]!, points[i + 1]!, points[i + 2]!];
    const x = dot(p, axes.right);
    const y = dot(p, axes.up);
    const w = dot(p, axes.toward);
    most[0] = Math.max(most[0], x + tanX * w);
    most[1] = Math.max(most[1], -x + tanX * w);
    most[2] = Math.max(most[2], y + tanY * w);
    most[3] = Math.max(most[3], -y + tanY * w);
    front = Math.max(front, w);
    back = Math.min(back, w);
  }
  const depth = Math.max((most[0] + most[1]) / (2 * tanX), (most[2] + most[3]) / (2 * tanY));
  const x = (most[0] - most[1]) / 2;
  const y = (most[2] - most[3]) / 2;
  const at = [0, 1, 2].map(
    (k) => x * axes.right[k]! + y * axes.up[k]! + depth * axes.toward[k]!,
  ) as [number, number, number];
  return { at, nearest: depth - front, farthest: depth - back };
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/**
 * In at the rim a little from the left and above, from near by: the wall is then seen all round, as in a pipe, most of
 * it at the right and below, where loads usually wear it.
 */
const RIM: Turn = { azimuth: -0.48, elevation: 0.4 };
const HALF: Turn = { azimuth: 0.8, elevation: 0.26 };
/**
 * Half the angle of view, as a tangent: wide and near at the hole, so that its far end is small and the wall between
 * is large; far off at the map, which has no depth.
 */
const NEAR_LENS = 0.5;
const HALF_LENS = 0.3;
const FAR_LENS = 0.008;

/** The direction that a view is looked at from, if nobody turned it; `roll` 1 looks straight at the map. */
export function homeTurn(half: boolean, away: number, roll: number): Turn {
  if (half)
    return { azimuth: HALF.azimuth * Math.sign(Math.sin(away) || 1), elevation: HALF.elevation };
  const left = 1 - eased(roll);
  return { azimuth: left * RIM.azimuth, elevation: left * RIM.elevation };
}

/** Tangent of half the angle of view along the shorter side of the frame; cut in half there is no hole to look down. */
export function lensAt(roll: number, half = false): number {
  return half ? HALF_LENS : NEAR_LENS * (FAR_LENS / NEAR_LENS) ** eased(roll);
}

function eased(t: number): number {
  return t * t * (3 - 2 * t);
}

/** What a picture shows: from where, which way, and how wide. */
export interface Framed extends Eye {
  readonly axes: Axes;
  /** Half width and half height of the whole frame at distance 1. */
  readonly tanX: number;
  readonly tanY: number;
}

/**
 * The picture in which all points lie, with room at its edges.
 *
 * @param points x, y, z one after another; at least one point
 * @param lens as `lensAt` says
 * @param frame CSS pixels
 * @param edge kept free all round, CSS pixels
 */
export function framedBy(
  points: ArrayLike<number>,
  turn: Turn,
  lens: number,
  frame: { readonly width: number; readonly height: number },
  edge: number,
): Framed {
  const { width, height } = frame;
  const shorter = Math.min(width, height);
  const [tanX, tanY] = [(lens * width) / shorter, (lens * height) / shorter];
  const usable = (size: number) => Math.max(0.3, 1 - (2 * edge) / size);
  const axes = axesOf(turn);
  const eye = eyeFor(points, axes, tanX * usable(width), tanY * usable(height));
  return { ...eye, axes, tanX, tanY };
}
