/**
 * The target cylinder: size from the bushing, centre by the repairer's rule.
 *
 * Keeping the old centre of a bore worn w on one side costs 2 w of diameter, letting it move costs w: the rule is
 * the repairer's to choose, so each rule is a function here.
 */
import { cosineColumn, TERMS } from './instruments.ts';
import { knownMean, meanCoefficients, type Posterior } from './posterior.ts';
import type { Axis, Field, Grid, WearSurface } from './types.ts';

export const NO_AXIS: Axis = { x: 0, y: 0, leanX: 0, leanY: 0 };

/** Distance of the wall from the target axis less the target radius, per side; exact, not to first order. */
export function deviationFrom(surface: WearSurface, radius: number, axis: Axis): Field {
  const { theta, z } = surface.grid;
  const [sines, cosines] = [theta.map(Math.sin), theta.map(Math.cos)];
  const out = new Float64Array(surface.mean.length);
  for (let iz = 0, k = 0; iz < z.length; iz++) {
    const x = axis.x + axis.leanX * z[iz]!;
    const y = axis.y + axis.leanY * z[iz]!;
    for (let it = 0; it < theta.length; it++, k++) {
      const r = surface.mean[k]!;
      const [across, up] = [r * sines[it]! - x, r * cosines[it]! - y];
      // Not hypot, which takes three times as long to guard against sizes that no bore has.
      out[k] = Math.sqrt(across * across + up * up) - radius;
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
