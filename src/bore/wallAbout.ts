/** The wall of a seat about an axis, to first order in how the axis shifts and leans. */
import { cholesky, solveLower, solveLowerTransposed } from '../num/cholesky.ts';
import { cellShares, SEATED } from './removal.ts';
import type { Axis, WearSurface } from './types.ts';

/** A move of an axis, mm: of x and y at mid-depth, and of the run-off of each from mid-depth to the bottom. */
export type Four = [number, number, number, number];

export interface Wall {
  readonly about: Axis;
  readonly count: number;
  /** Half the depth of the bore, mm. */
  readonly half: number;
  /** From the axis, mm. */
  readonly distance: Float64Array;
  /** count * 4: how it falls with each part of a move. */
  readonly slope: Float64Array;
  /** Share of the seat's area, sum 1. */
  readonly weight: Float64Array;
}

/** Wall places that are equal to the last digit are told apart by this, mm: without it ties go on for ever. */
const APART = 1e-11;

/** @param seated as `wallPlaces` gives them; some of them are seats */
export function wallAbout(surface: WearSurface, seated: Uint8Array, about: Axis): Wall {
  const { theta, z } = surface.grid;
  const count = seated.reduce((sum, place) => sum + (place === SEATED ? 1 : 0), 0);
  const half = z[z.length - 1]! / 2;
  const shares = cellShares(surface.grid);
  const [sine, cosine] = [theta.map(Math.sin), theta.map(Math.cos)];
  const [distance, weight] = [new Float64Array(count), new Float64Array(count)];
  const slope = new Float64Array(4 * count);
  let [at, all] = [0, 0];
  for (let k = 0; k < seated.length; k++) {
    if (seated[k] !== SEATED) continue;
    const iz = Math.floor(k / theta.length);
    const it = k % theta.length;
    const along = z[iz]! / half - 1;
    const r = surface.mean[k]!;
    const x = r * sine[it]! - about.x - about.leanX * z[iz]!;
    const y = r * cosine[it]! - about.y - about.leanY * z[iz]!;
    const far = Math.sqrt(x * x + y * y);
    distance[at] = far + APART * scattered(k);
    // As from the reference axis: these balance round the clock, as the volume of an even cut does wherever it stands.
    slope[4 * at] = sine[it]!;
    slope[4 * at + 1] = cosine[it]!;
    slope[4 * at + 2] = sine[it]! * along;
    slope[4 * at + 3] = cosine[it]! * along;
    weight[at] = shares[iz]!;
    all += shares[iz]!;
    at++;
  }
  return { about, count, half, distance, slope, weight: weight.map((w) => w / all) };
}

/** Between -1/2 and 1/2, another one for each number. */
function scattered(k: number): number {
  return ((k * 2654435761) % 4294967296) / 4294967296 - 0.5;
}

/** The axis moved. */
export function axisAt(about: Axis, [x, y, runX, runY]: Four, half: number): Axis {
  return {
    x: about.x + x - runX,
    y: about.y + y - runY,
    leanX: about.leanX + runX / half,
    leanY: about.leanY + runY / half,
  };
}

/** The move from one axis to another. */
export function fourOf(to: Axis, from: Axis, half: number): Four {
  const [runX, runY] = [(to.leanX - from.leanX) * half, (to.leanY - from.leanY) * half];
  return [to.x - from.x + runX, to.y - from.y + runY, runX, runY];
}

/** Kept on the diagonal, so that a seat of one depth, or of one side, still has a middle: its lean is none. */
const RIDGE = 1e-12;

/** The middle of the seat by least squares, its size being free. */
export function leastSquares(surface: WearSurface, seated: Uint8Array): Axis {
  let about: Axis = { x: 0, y: 0, leanX: 0, leanY: 0 };
  for (let round = 0; round < 2; round++) {
    const wall = wallAbout(surface, seated, about);
    about = axisAt(about, leastSquaresMove(wall), wall.half);
  }
  return about;
}

function leastSquaresMove({ count, distance, slope, weight }: Wall): Four {
  const [a, g] = [new Float64Array(25), new Float64Array(5)];
  const mean = distance.reduce((sum, d, k) => sum + weight[k]! * d, 0);
  const row = new Float64Array(5).fill(1);
  for (let k = 0; k < count; k++) {
    for (let j = 0; j < 4; j++) row[j] = slope[4 * k + j]!;
    for (let i = 0; i < 5; i++) {
      g[i] = g[i]! + weight[k]! * row[i]! * (distance[k]! - mean);
      for (let j = 0; j < 5; j++) a[5 * i + j] = a[5 * i + j]! + weight[k]! * row[i]! * row[j]!;
    }
  }
  for (let i = 0; i < 5; i++) a[6 * i] = a[6 * i]! + RIDGE;
  const l = cholesky(a, 5);
  if (l === null) return [0, 0, 0, 0];
  const x = solveLowerTransposed(l, 5, solveLower(l, 5, g));
  return [x[0]!, x[1]!, x[2]!, x[3]!];
}
