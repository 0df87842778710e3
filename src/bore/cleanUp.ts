/** The smallest size at which a bore that is ground or bored out leaves no old wall where a bushing sits. */
import { minimaxStep } from '../num/minimaxStep.ts';
import { SEATED } from './removal.ts';
import { deviationFrom, NO_AXIS } from './target.ts';
import type { Axis, WearSurface } from './types.ts';

export interface CleanUp {
  /** Across, mm. */
  readonly diameter: number;
  readonly axis: Axis;
  /** The place that sets the size, or one of them. */
  readonly theta: number;
  readonly z: number;
}

/** The axis is found from straight lines; so many rounds, each from where the last one ended, make it exact. */
const ROUNDS = 3;
/** Across, mm: what the next round would bring is far below this one's. */
const NO_GAIN = 1e-7;
/** Holds the axis where the wall leaves it open; far below any height, which are about 1. */
const HELD = 1e-9;

/**
 * @param places as `wallPlaces` gives them: only the seated ones count
 * @param kept the axis to stay about; null: the one about which the size is smallest
 * @returns null where nothing of the wall is a seat
 */
export function cleanUp(
  surface: WearSurface,
  places: Uint8Array,
  kept: Axis | null,
): CleanUp | null {
  const seated = [...places.keys()].filter((k) => places[k] === SEATED && surface.mean[k]! > 0);
  if (seated.length === 0) return null;
  let found = farthest(surface, seated, kept ?? NO_AXIS);
  if (kept !== null) return found;
  let held: readonly number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const move = moved(surface, seated, found.axis, held);
    if (move === null) return found;
    const next = farthest(surface, seated, move.axis);
    const gain = found.diameter - next.diameter;
    if (!(gain > 0)) return found;
    found = next;
    if (gain < NO_GAIN) return found;
    held = move.held;
  }
  return found;
}

function farthest(surface: WearSurface, seated: readonly number[], axis: Axis): CleanUp {
  const { theta, z } = surface.grid;
  const radius = deviationFrom(surface, 0, axis);
  let most = seated[0]!;
  for (const k of seated) if (radius[k]! > radius[most]!) most = k;
  return {
    diameter: 2 * radius[most]!,
    axis,
    theta: theta[most % theta.length]!,
    z: z[Math.floor(most / theta.length)]!,
  };
}

/**
 * The axis of the least greatest distance, as the distances fall to first order from where it stands.
 *
 * @param start rows of `seated` thought to hold it; only a hint
 */
function moved(
  surface: WearSurface,
  seated: readonly number[],
  at: Axis,
  start: readonly number[],
): { readonly axis: Axis; readonly held: readonly number[] } | null {
  const { theta, z } = surface.grid;
  const columns = theta.length;
  const half = z[z.length - 1]! / 2;
  const radius = deviationFrom(surface, 0, at);
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (const k of seated) {
    least = Math.min(least, radius[k]!);
    most = Math.max(most, radius[k]!);
  }
  // Heights of about 1; a wall that is perfectly round needs no move.
  const unit = most - least;
  if (!(unit > 0)) return null;
  const a = new Float64Array(seated.length * 4);
  const b = new Float64Array(seated.length);
  seated.forEach((k, row) => {
    const depth = z[Math.floor(k / columns)]!;
    const angle = theta[k % columns]!;
    const r = surface.mean[k]!;
    // Away from the axis at this place: the wall as it lies about the axis, not about the middle of the grid.
    const x = (r * Math.sin(angle) - at.x - at.leanX * depth) / radius[k]!;
    const y = (r * Math.cos(angle) - at.y - at.leanY * depth) / radius[k]!;
    const along = depth / half - 1;
    a.set([-x, -y, -x * along, -y * along], row * 4);
    b[row] = (radius[k]! - least) / unit;
  });
  const h = Float64Array.from({ length: 16 }, (_, i) => (i % 5 === 0 ? HELD : 0));
  const step = minimaxStep({ a, b, count: seated.length, unknowns: 4 }, h, start);
  if (step === null) return null;
  const [x, y, alongX, alongY] = Array.from(step.x, (value) => value * unit) as [
    number,
    number,
    number,
    number,
  ];
  const axis = {
    x: at.x + x - alongX,
    y: at.y + y - alongY,
    leanX: at.leanX + alongX / half,
    leanY: at.leanY + alongY / half,
  };
  return { axis, held: step.held };
}
