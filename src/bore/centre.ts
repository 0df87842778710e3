/**
 * Where the target may stand when its centre is free: with the least metal to take off, or with the least greatest cut.
 *
 * Both are convex in shift and lean once the deviation is told to first order about an axis nearby, and both are solved
 * exactly; the axis found is then the one to go on from until it moves no more, so that first order is enough. Only
 * places where a bushing sits and metal may be taken off count.
 */
import { leastHinges } from '../num/leastHinges.ts';
import { minimaxStep } from '../num/minimaxStep.ts';
import { SEATED } from './removal.ts';
import type { Axis, CentreRule, WearSurface } from './types.ts';
import { axisAt, type Four, fourOf, leastSquares, type Wall, wallAbout } from './wallAbout.ts';

/** `free`: least metal off; `least-cut`: the deepest cut as shallow as can be, and among those the least metal. */
export type FreeRule = 'free' | 'least-cut';

/** True where the target follows the bore, so that not knowing where the bore stands costs nothing. */
export function followsBore(rule: CentreRule): rule is FreeRule {
  return rule === 'free' || rule === 'least-cut';
}

/** How hard a centre is held to the least-squares one: far below any metal, enough to break ties. */
const TIE = 1e-8;
/** Of a move so short, mm, what first order leaves out (its own share of the offset over the radius) is nothing. */
const SETTLED = 3e-5;
const MOST_ROUNDS = 8;
/** Room that least metal is given over the least greatest cut, mm. */
const CUT_ROOM = 1e-7;
/** What metal over that room weighs, against a wall of weight 1. */
const LIMIT = 1e6;

/**
 * @param radius of the target, mm
 * @param places as `wallPlaces` gives them; left out, or none seated: the whole wall is a seat
 */
export function freeAxis(
  surface: WearSurface,
  radius: number,
  places?: Uint8Array,
  rule: FreeRule = 'free',
): Axis {
  return freeAxes(surface, [radius], places, rule)[0]!;
}

/** The same for several sizes, one after the other; quick where each is near to the one before. */
export function freeAxes(
  surface: WearSurface,
  radii: readonly number[],
  places?: Uint8Array,
  rule: FreeRule = 'free',
): Axis[] {
  const seated = seatedOnly(surface, places);
  const { nearest, about } = middleOf(surface, seated);
  let wall = about;
  let from: Four | undefined;
  return radii.map((radius) => {
    for (let round = 0; ; round++) {
      from = solve(wall, radius, rule, fourOf(nearest, wall.about, wall.half), from);
      const far = Math.max(...from.map(Math.abs));
      if (!(far > SETTLED) || round === MOST_ROUNDS) return axisAt(wall.about, from, wall.half);
      wall = wallAbout(surface, seated, axisAt(wall.about, from, wall.half));
      from = [0, 0, 0, 0];
    }
  });
}

/** The middle of a seat, whatever the size of the target, and the wall about it. */
interface Middle {
  readonly seated: Uint8Array;
  readonly nearest: Axis;
  readonly about: Wall;
}

/** The last one asked of a surface: while a target is dragged it is the same at every step. */
const middles = new WeakMap<WearSurface, Middle>();

function middleOf(surface: WearSurface, seated: Uint8Array): Middle {
  const kept = middles.get(surface);
  if (kept !== undefined && isSame(kept.seated, seated)) return kept;
  const nearest = leastSquares(surface, seated);
  const middle = { seated: seated.slice(), nearest, about: wallAbout(surface, seated, nearest) };
  middles.set(surface, middle);
  return middle;
}

/** Of as many places. */
function isSame(a: Uint8Array, b: Uint8Array): boolean {
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return false;
  return true;
}

function seatedOnly({ mean }: WearSurface, places?: Uint8Array): Uint8Array {
  const some = places?.some((place) => place === SEATED);
  return some ? places! : new Uint8Array(mean.length).fill(SEATED);
}

function solve(
  wall: Wall,
  radius: number,
  rule: FreeRule,
  near: Four,
  from: Four | undefined,
): Four {
  const height = wall.distance.map((d) => radius - d);
  const metal = { ...wall, height, unknowns: 4 };
  const cut = rule === 'least-cut' ? leastCut(wall, height, near) : null;
  // Where nothing need be cut, every such axis is a least cut: the one with no metal nearest to the middle is taken.
  if (cut === null || !(cut.level > 0)) return four(leastHinges(metal, near, TIE, from).x);
  const limited = {
    slope: joined(wall.slope, wall.slope),
    height: joined(
      height,
      height.map((h) => h - cut.level - CUT_ROOM),
    ),
    weight: joined(wall.weight, new Float64Array(wall.count).fill(LIMIT)),
    count: 2 * wall.count,
    unknowns: 4,
  };
  return four(leastHinges(limited, near, TIE, cut.x).x);
}

/** The least of the greatest height: a linear minimax. Null where rounding goes round in circles. */
function leastCut(wall: Wall, height: Float64Array, near: Four): { x: Four; level: number } | null {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const heights = height.map((h, k) => {
    let sum = h;
    for (let j = 0; j < 4; j++) sum += wall.slope[4 * k + j]! * near[j]!;
    low = Math.min(low, sum);
    high = Math.max(high, sum);
    return sum;
  });
  const scale = high - low > 0 ? high - low : 1;
  const rows = {
    a: wall.slope,
    b: heights.map((h) => (h - high) / scale),
    count: wall.count,
    unknowns: 4,
  };
  const held = Float64Array.from({ length: 16 }, (_, i) => (i % 5 === 0 ? TIE : 0));
  const found = minimaxStep(rows, held, []);
  if (found === null) return null;
  return {
    x: four(found.x.map((v, j) => near[j]! + scale * v)),
    level: high + scale * found.level,
  };
}

function four(x: Float64Array): Four {
  return [x[0]!, x[1]!, x[2]!, x[3]!];
}

function joined(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length + b.length);
  out.set(a);
  out.set(b, a.length);
  return out;
}
