/**
 * The target cylinder: size from the bushing, centre by the repairer's rule.
 *
 * Keeping the old centre of a bore worn w on one side costs 2 w of diameter, letting it move costs w: the rule is
 * the repairer's to choose, so each rule is a function here.
 */
import { cholesky, solveLower, solveLowerTransposed } from '../num/cholesky.ts';
import { cosineColumn, TERMS } from './instruments.ts';
import { knownMean, meanCoefficients, type Posterior } from './posterior.ts';
import type { Axis, Field, Grid, WearSurface } from './types.ts';

export const NO_AXIS: Axis = { x: 0, y: 0, leanX: 0, leanY: 0 };

/** Distance of the wall from the target axis less the target radius, per side; exact, not to first order. */
export function deviationFrom(surface: WearSurface, radius: number, axis: Axis): Field {
  const { theta, z } = surface.grid;
  const out = new Float64Array(surface.mean.length);
  for (let iz = 0, k = 0; iz < z.length; iz++) {
    const x = axis.x + axis.leanX * z[iz]!;
    const y = axis.y + axis.leanY * z[iz]!;
    for (let it = 0; it < theta.length; it++, k++) {
      const r = surface.mean[k]!;
      out[k] = Math.hypot(r * Math.sin(theta[it]!) - x, r * Math.cos(theta[it]!) - y) - radius;
    }
  }
  return out;
}

/**
 * The old centre: where the surface's own centre lies at the unworn depths (the bottom, unless said), wear on a stated
 * side left out.
 */
export function keptAxis(p: Posterior, unworn: { from: number; to: number }): Axis {
  const depths = [0, 0.25, 0.5, 0.75, 1].map((f) => unworn.from + f * (unworn.to - unworn.from));
  const c = meanCoefficients(p, depths);
  const wear = knownMean(p, depths);
  const mean = (column: number) =>
    depths.reduce((sum, _, r) => sum + c[r * TERMS + column]! - wear[r * TERMS + column]!, 0) /
    depths.length;
  return { x: mean(cosineColumn(1) + 1), y: mean(cosineColumn(1)), leanX: 0, leanY: 0 };
}

/** Unknowns of the free axis: x and y at mid-depth, and the run-off of each from mid-depth to face. */
type Four = [number, number, number, number];

/** Least change of the axis that is still followed, mm. */
const STEP_ENDS = 1e-7;

/**
 * The axis with the least metal to take off.
 *
 * Metal off is the sum of max(0, -e), convex in the axis; it is approached by softened corners, the last of them
 * 0.1 micrometre wide, each solved by Newton's method. Where many axes cost the same (nothing to take off, or
 * everything), the one nearest the surface's least-squares axis is taken.
 */
export function freeAxis(surface: WearSurface, radius: number): Axis {
  return freeAxes(surface, [radius])[0]!;
}

/** Widths of the softened corners, mm, each solved from the one before. */
const CORNERS = [0.02, 0.005, 0.001, 0.0002, 0.0001] as const;
/** From the axis of a size nearly the same these are enough. */
const NEAR_CORNERS = CORNERS.slice(2);

/** The same for several sizes, one after the other; quick where each is near to the one before. */
export function freeAxes(surface: WearSurface, radii: readonly number[]): Axis[] {
  const { z } = surface.grid;
  const half = z[z.length - 1]! / 2;
  const wall = sampleWall(surface, half);
  let at: Four | null = null;
  return radii.map((radius) => {
    const nearest = leastSquares(wall, radius);
    const corners: readonly number[] = at === null ? CORNERS : NEAR_CORNERS;
    let found: Four = at ?? nearest;
    for (const soft of corners) found = newton(wall, radius, found, nearest, soft);
    at = found;
    return {
      x: found[0] - found[2],
      y: found[1] - found[3],
      leanX: found[2] / half,
      leanY: found[3] / half,
    };
  });
}

interface Wall {
  readonly count: number;
  readonly radius: Float64Array;
  /** count * 4: how e falls with each unknown. */
  readonly slope: Float64Array;
  /** Share of the area, end rows counted half. */
  readonly weight: Float64Array;
}

function sampleWall(surface: WearSurface, half: number): Wall {
  const { theta, z } = surface.grid;
  const everyZ = 2;
  const everyT = 2;
  const rows = Math.ceil(z.length / everyZ);
  const columns = Math.ceil(theta.length / everyT);
  const count = rows * columns;
  const wall = {
    count,
    radius: new Float64Array(count),
    slope: new Float64Array(count * 4),
    weight: new Float64Array(count),
  };
  for (let iz = 0, k = 0; iz < z.length; iz += everyZ) {
    const along = z[iz]! / half - 1;
    const end = iz === 0 || iz + everyZ >= z.length;
    for (let it = 0; it < theta.length; it += everyT, k++) {
      const s = Math.sin(theta[it]!);
      const c = Math.cos(theta[it]!);
      wall.radius[k] = surface.mean[iz * theta.length + it]!;
      wall.slope.set([s, c, s * along, c * along], k * 4);
      wall.weight[k] = (end ? 0.5 : 1) / ((rows - 1) * columns);
    }
  }
  return wall;
}

function leastSquares(wall: Wall, radius: number): Four {
  const n = emptyNormal();
  for (let k = 0; k < wall.count; k++) {
    addTo(n, wall, k, wall.weight[k]!, -wall.weight[k]! * (wall.radius[k]! - radius));
  }
  return step(n, [0, 0, 0, 0]);
}

/** How hard the axis is held to the least-squares one: far below any metal, enough to break ties. */
const TIE = 1e-9;

function newton(wall: Wall, radius: number, start: Four, near: Four, soft: number): Four {
  let at = start;
  let cost = softMetal(wall, radius, at, near, soft);
  for (let round = 0; round < 40; round++) {
    const n = emptyNormal();
    for (let k = 0; k < wall.count; k++) {
      const over = overhang(wall, radius, at, k) / soft;
      const share = 1 / (1 + Math.exp(-over));
      // Metal falls as e rises, and e falls along the slope: d(metal)/d(unknown) = +slope * share.
      addTo(n, wall, k, (wall.weight[k]! * share * (1 - share)) / soft, wall.weight[k]! * share);
    }
    for (let i = 0; i < 4; i++) {
      n.a[i * 4 + i] = n.a[i * 4 + i]! + TIE;
      n.g[i] = n.g[i]! + TIE * (at[i]! - near[i]!);
    }
    const full = step(n, at);
    let t = 1;
    let next = full;
    let found = softMetal(wall, radius, next, near, soft);
    while (!(found <= cost) && t > 1e-4) {
      t /= 2;
      next = at.map((v, i) => v + t * (full[i]! - v)) as Four;
      found = softMetal(wall, radius, next, near, soft);
    }
    if (!(found <= cost)) return at;
    const moved = Math.max(...next.map((v, i) => Math.abs(v - at[i]!)));
    at = next;
    cost = found;
    if (moved < STEP_ENDS) return at;
  }
  return at;
}

/** How far metal stands inside the target at a place, -e, per side; negative where it is missing. */
function overhang(wall: Wall, radius: number, at: Four, k: number): number {
  const s = k * 4;
  return (
    radius -
    wall.radius[k]! +
    wall.slope[s]! * at[0] +
    wall.slope[s + 1]! * at[1] +
    wall.slope[s + 2]! * at[2] +
    wall.slope[s + 3]! * at[3]
  );
}

function softMetal(wall: Wall, radius: number, at: Four, near: Four, soft: number): number {
  let sum = 0;
  for (let k = 0; k < wall.count; k++) {
    const over = overhang(wall, radius, at, k) / soft;
    sum += wall.weight[k]! * soft * (over > 30 ? over : Math.log1p(Math.exp(over)));
  }
  for (let i = 0; i < 4; i++) sum += (TIE / 2) * (at[i]! - near[i]!) ** 2;
  return sum;
}

interface Normal {
  readonly a: Float64Array;
  readonly g: Float64Array;
}

function emptyNormal(): Normal {
  return { a: new Float64Array(16), g: new Float64Array(4) };
}

function addTo(n: Normal, wall: Wall, k: number, curve: number, pull: number): void {
  const s = k * 4;
  for (let i = 0; i < 4; i++) {
    const si = wall.slope[s + i]!;
    n.g[i] = n.g[i]! + pull * si;
    for (let j = 0; j < 4; j++) n.a[i * 4 + j] = n.a[i * 4 + j]! + curve * si * wall.slope[s + j]!;
  }
}

/** One Newton step from `at`: at - a^-1 g. `a` is positive definite: the wall goes all round and along. */
function step(n: Normal, at: Four): Four {
  const l = cholesky(n.a, 4);
  if (l === null) return at;
  const x = solveLowerTransposed(l, 4, solveLower(l, 4, n.g));
  return at.map((v, i) => v - x[i]!) as Four;
}

/** The depths taken as unworn where nothing is said: the last quarter, which the pin's edge seldom reaches. */
export function usualUnworn(grid: Grid): { from: number; to: number } {
  const length = grid.z[grid.z.length - 1]!;
  return { from: 0.75 * length, to: length };
}

/**
 * True where readings show which side is worn: radii or walls, or one set-up swept at several depths without setting
 * its stylus anew. A lone sweep has a centre of its own and shows none.
 */
function sideSeen({ design: { sightings, setups } }: Posterior): boolean {
  if (sightings.some((s) => s.instrument === 'radius' || s.instrument === 'wall')) return true;
  return setups.some((setup, k) => {
    const depths = new Set(sightings.filter((s) => s.setup === k).map((s) => s.z));
    return !setup.resetEachDepth && depths.size > 1;
  });
}

/** What the centre rests on, in words, where it is assumed; null where readings show it. */
export function assumption(p: Posterior): string | null {
  return sideSeen(p) ? null : 'both sides alike';
}
