/** The smallest size at which a bore that is ground or bored out leaves no old wall where a bushing sits. */
import { minimaxStep } from '../num/minimaxStep.ts';
import type { FreeRule } from './centre.ts';
import { SEATED } from './removal.ts';
import { deviationFrom, NO_AXIS } from './target.ts';
import type { Axis, Field, WearSurface } from './types.ts';

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
 * About the axis of a rule: `free`, the one about which the size is smallest, so that least metal comes off; `least-cut`,
 * the one about which the deepest cut is as shallow as can be, the wall between two cylinders as near to each other as can be.
 *
 * @param places as `wallPlaces` gives them: only the seated ones count
 * @param about a rule, or the axis to stay about
 * @returns null where nothing of the wall is a seat
 */
export function cleanUp(
  surface: WearSurface,
  places: Uint8Array,
  about: FreeRule | Axis,
): CleanUp | null {
  const seated = [...places.keys()].filter((k) => places[k] === SEATED && surface.mean[k]! > 0);
  if (seated.length === 0) return null;
  if (typeof about === 'object') return standing(surface, seated, about).clean;
  let found = standing(surface, seated, NO_AXIS);
  let held: readonly number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const move = moved(surface, seated, found, about, held);
    if (move === null) break;
    const next = standing(surface, seated, move.axis);
    const cost = about === 'free' ? 'largest' : 'spread';
    const gain = 2 * (found[cost] - next[cost]);
    if (!(gain > 0)) break;
    found = next;
    if (gain < NO_GAIN) break;
    held = move.held;
  }
  return found.clean;
}

/** The wall about an axis. */
interface Standing {
  readonly clean: CleanUp;
  /** mm; of every place, seated or not. */
  readonly radius: Field;
  readonly largest: number;
  /** Largest less least. */
  readonly spread: number;
}

function standing(surface: WearSurface, seated: readonly number[], axis: Axis): Standing {
  const { theta, z } = surface.grid;
  const radius = deviationFrom(surface, 0, axis);
  let [most, least] = [seated[0]!, seated[0]!];
  for (const k of seated) {
    if (radius[k]! > radius[most]!) most = k;
    if (radius[k]! < radius[least]!) least = k;
  }
  const clean = {
    diameter: 2 * radius[most]!,
    axis,
    theta: theta[most % theta.length]!,
    z: z[Math.floor(most / theta.length)]!,
  };
  return { clean, radius, largest: radius[most]!, spread: radius[most]! - radius[least]! };
}

/**
 * The axis of the least cost, as the distances fall to first order from where it stands: the linear minimax of the distances,
 * and for the least cut of their distances from one between them, either way.
 *
 * @param start rows of the minimax thought to hold it; only a hint
 */
function moved(
  surface: WearSurface,
  seated: readonly number[],
  { clean: { axis: at }, radius, spread: unit }: Standing,
  rule: FreeRule,
  start: readonly number[],
): { readonly axis: Axis; readonly held: readonly number[] } | null {
  // Heights of about 1; a wall that is perfectly round needs no move.
  if (!(unit > 0)) return null;
  const { z } = surface.grid;
  const half = z[z.length - 1]! / 2;
  const rows = fallsOf(surface, seated, { at, radius, half }, rule === 'least-cut');
  const { unknowns } = rows;
  for (let row = 0; row < rows.count; row++) rows.b[row] = rows.b[row]! / unit;
  const h = Float64Array.from({ length: unknowns ** 2 }, (_, i) =>
    i % (unknowns + 1) === 0 ? HELD : 0,
  );
  const step = minimaxStep(rows, h, start);
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

/**
 * How far each place stands from the axis, mm, and how that falls with the axis's shift and lean; both ways, less a distance
 * of its own that is one more unknown.
 */
function fallsOf(
  surface: WearSurface,
  seated: readonly number[],
  { at, radius, half }: { readonly at: Axis; readonly radius: Field; readonly half: number },
  both: boolean,
) {
  const { theta, z } = surface.grid;
  const columns = theta.length;
  const unknowns = both ? 5 : 4;
  const count = both ? 2 * seated.length : seated.length;
  const a = new Float64Array(count * unknowns);
  const b = new Float64Array(count);
  const middle = radius[seated[0]!]!;
  const [sines, cosines] = [theta.map(Math.sin), theta.map(Math.cos)];
  let row = 0;
  for (const k of seated) {
    const depth = z[Math.floor(k / columns)]!;
    const it = k % columns;
    const r = surface.mean[k]!;
    // Away from the axis at this place: the wall as it lies about the axis, not about the middle of the grid.
    const x = (r * sines[it]! - at.x - at.leanX * depth) / radius[k]!;
    const y = (r * cosines[it]! - at.y - at.leanY * depth) / radius[k]!;
    const along = depth / half - 1;
    for (let side = 1; side >= (both ? -1 : 1); side -= 2, row++) {
      const from = row * unknowns;
      a[from] = -side * x;
      a[from + 1] = -side * y;
      a[from + 2] = -side * x * along;
      a[from + 3] = -side * y * along;
      if (both) a[from + 4] = -side;
      b[row] = side * (radius[k]! - middle);
    }
  }
  return { a, b, count, unknowns };
}
