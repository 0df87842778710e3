import { type Arc, arcDistances, arcProblem, arcThrough, kasaCircle } from './arc.ts';
import { centerAndRadius, fitCircle } from './circle.ts';
import {
  type Cloud,
  liesOnLine,
  meanOf,
  readCloud,
  sampleCloud,
  scaledColumns,
  scatterOf,
} from './cloud.ts';
import type { FitFailure } from './ending.ts';
import type { Minimax, RoundPlace } from './fitted.ts';
import { gainOf, signedMultipliers } from './holding.ts';
import { inscribedCircles, MANY, widestOpening } from './inscribedCircles.ts';
import { isLeastRing, ringStarts, straightStrip } from './rings.ts';
import { ROUNDING } from './tighten.ts';
import { type Held, tightenAll } from './tightenAll.ts';
import type { Sides } from './tightRows.ts';

export type MinimaxCircle =
  | (Minimax &
      RoundPlace & {
        /** inscribed only: a larger circle elsewhere among the points, null when there is none */
        larger?: { center: [number, number]; diameter: number } | null;
      })
  | FitFailure;

/** Circles smaller than this share of how far the points spread lie between neighbors. */
const BETWEEN = 0.01;
/** Points enough to set out from. */
const FEW = 64;

/**
 * Circle whose concentric zone that holds all points is narrowest (ISO 1101 roundness zone; ISO
 * 12181-1 minimum zone reference circles): of all such circles, not of those near a start.
 *
 * A zone is least where two outer contacts and two inner ones lie in turn. The one found from the
 * algebraic circle is the least of all when a bound on every other center says so (rings.ts);
 * otherwise all crossings of the nearest-point and farthest-point Voronoi diagrams are asked, where
 * every such place lies (H. Ebara et al., Roundness algorithms using the Voronoi diagrams, First
 * Canadian Conference on Computational Geometry, 1989).
 *
 * @param x any length unit; the answer is in the same one
 * @param y as many as x
 * @throws RangeError when x and y differ in length
 */
export function minimumZoneCircle(x: ArrayLike<number>, y: ArrayLike<number>): MinimaxCircle {
  const ring = readRing(x, y);
  if ('status' in ring) return ring;
  const { cloud } = ring;
  const near = tightFrom(ring, algebraicCircle(ring), 'both');
  let best = near;
  if (near.ending !== 'converged' || !isLeastRing(cloud, near)) {
    for (const start of ringStarts(cloud)) {
      const other = tightFrom(ring, start, 'both', true);
      if (other.ending !== 'converged') continue;
      if (best.ending !== 'converged' || other.tight.level < best.tight.level - ROUNDING) {
        best = other;
      }
    }
    const strip = straightStrip(cloud);
    if (!(best.high - best.low < strip * (1 - Number.EPSILON) - ROUNDING)) {
      return { status: 'arc-too-short' };
    }
  }
  return described(cloud, best, 'both');
}

/**
 * Smallest circle that holds all points (ISO 12181-1 minimum circumscribed reference circle). There
 * is only one.
 *
 * @param x any length unit; the answer is in the same one
 * @param y as many as x
 * @throws RangeError when x and y differ in length
 */
export function minimumCircumscribedCircle(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
): MinimaxCircle {
  const ring = readRing(x, y);
  if ('status' in ring) return ring;
  const [cx, cy] = ring.mean as [number, number];
  const start = arcThrough([0, 0], { cx, cy, r: 1 });
  return described(ring.cloud, tightFrom(ring, start, 'outer'), 'outer');
}

/**
 * Largest circle with no point inside that cannot slip out between the points (ISO 12181-1 maximum
 * inscribed reference circle). Where there are several, each the largest in its neighborhood, it is
 * the one whose center lies nearest that of the least-squares circle; a larger one is named beside.
 *
 * All of them are circles through the corners of a triangle of the Delaunay triangulation that
 * holds their center. Of more than 20 000 points, those that no circle about the least-squares
 * center can touch are left out first; where over 100 000 remain (a circle without form error), the
 * one that the least-squares circle shrinks to is told, and no other is looked for. Where the
 * points leave half a turn open, seen from that center, a circle beside it that is far smaller than
 * the points spread is none.
 *
 * @param x any length unit; the answer is in the same one
 * @param y as many as x
 * @throws RangeError when x and y differ in length
 */
export function maximumInscribedCircle(x: ArrayLike<number>, y: ArrayLike<number>): MinimaxCircle {
  const least = fitCircle(x, y);
  if (least.status !== 'ok') return least;
  const ring = readRing(x, y);
  if ('status' in ring) return ring;
  const { cloud } = ring;
  const { middle, scale } = cloud;
  const [cx, cy] = least.center.map((v, d) => (v - middle[d]!) / scale) as [number, number];
  const open = widestOpening(cloud, cx, cy) >= Math.PI;
  const circles = open && cloud.count > MANY ? [] : inscribedCircles(cloud, cx, cy);
  // Of too many points to list all circles, the one that the least-squares circle shrinks to.
  if (circles === null) {
    const near = arcThrough(ring.mean, { cx, cy, r: least.diameter / 2 / scale });
    const shrunk = described(cloud, tightFrom(ring, near, 'inner'), 'inner');
    return shrunk.status === 'ok' ? { ...shrunk, larger: null } : shrunk;
  }
  const nearest = circles[0];
  if (nearest === undefined) return { status: 'not-all-round' };
  // On an arc, what fits between neighboring points of the wall is no bore.
  const beside = !(Math.hypot(nearest.cx - cx, nearest.cy - cy) < nearest.r);
  if (open && beside && nearest.r < BETWEEN * spreadOf(cloud)) {
    return { status: 'not-all-round' };
  }
  const held = tightFrom(ring, arcThrough([0, 0], nearest), 'inner', true);
  const found = described(cloud, held, 'inner');
  if (found.status !== 'ok') return found;
  const largest = circles.reduce((a, b) => (b.r > a.r ? b : a));
  const larger =
    largest.r * scale > (found.diameter / 2) * (1 + 1e-12) && largest !== nearest
      ? {
          center: [middle[0]! + scale * largest.cx, middle[1]! + scale * largest.cy] as [
            number,
            number,
          ],
          diameter: 2 * scale * largest.r,
        }
      : null;
  return { ...found, larger };
}

/** Root mean square distance of the points from their mean, in scaled units. */
function spreadOf(cloud: Cloud): number {
  const scatter = scatterOf(cloud, meanOf(cloud));
  return Math.sqrt(scatter[0]! + scatter[3]!);
}

/** The points, and a few of them to set out from. */
interface Ring {
  cloud: Cloud;
  sample: Cloud;
  /** mean of the few, in scaled units */
  mean: number[];
}

function readRing(x: ArrayLike<number>, y: ArrayLike<number>): Ring | FitFailure {
  const cloud = readCloud([x, y], 3);
  if ('status' in cloud) return cloud;
  const sample = sampleCloud(cloud, FEW);
  if (liesOnLine(sample) && liesOnLine(cloud)) return { status: 'on-a-line' };
  return { cloud, sample, mean: meanOf(sample) };
}

function algebraicCircle({ sample, mean }: Ring): Arc {
  const [u, v] = scaledColumns(sample) as [Float64Array, Float64Array];
  return arcThrough(mean, kasaCircle(u, v) ?? { cx: mean[0]!, cy: mean[1]!, r: 1 });
}

/** With both sides the radius may move, else only the center. */
function tightFrom({ cloud, mean }: Ring, start: Arc, sides: Sides, startHolds = false): Held<Arc> {
  const feature = { problemOn: (of: Cloud) => arcProblem(of, mean), distances: arcDistances };
  return tightenAll(cloud, feature, start, sides, sides === 'both' ? 3 : 2, startHolds);
}

function described(cloud: Cloud, held: Held<Arc>, sides: Sides): MinimaxCircle {
  const { state, low, high, iterations } = held;
  if (held.ending !== 'converged') return { status: 'did-not-converge', iterations };
  const { px, py, mx, my, k } = state;
  if (!(k > 0)) return { status: 'arc-too-short' };
  const { middle, scale } = cloud;
  const shift = sides === 'outer' ? high : sides === 'inner' ? low : (low + high) / 2;
  return {
    status: 'ok',
    center: [middle[0]! + scale * (px - mx / k), middle[1]! + scale * (py - my / k)],
    diameter: 2 * scale * (1 / k + shift),
    iterations,
    conditioning: gainOf(held, centerAndRadius(k, held.task.moves)),
    deviation: {
      min: scale * (low - shift),
      max: scale * (high - shift),
      range: scale * (high - low),
    },
    ...signedMultipliers(held),
  };
}
