/**
 * Where a bushing presses, rolled out as all flat maps are: the wall seen from inside looking outward, the rim on top, the
 * clock rising to the right from 6 through 12 to 6. In five steps of darkness, and hatched where it does not touch.
 */
import type { RoundFit } from '../evaluate/fit/round.ts';
import type { Seated } from '../evaluate/fit/seated.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { pressureBare } from './loads.ts';

/** Shares of the whole width and height, 0 to 1. */
export interface Patch {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** 0: does not touch; 1 to `PRESSURE_STEPS` by pressure. */
  readonly step: number;
}

export interface PressureMap {
  readonly patches: readonly Patch[];
  /** Upper end of each step, without the unit, from the first. */
  readonly steps: readonly string[];
  readonly depths: readonly { readonly y: number; readonly text: string }[];
  readonly hours: readonly { readonly x: number; readonly text: string }[];
  /** Where it presses hardest. */
  readonly hardest: { readonly x: number; readonly y: number };
  /** Null: it touches everywhere. */
  readonly widest: { readonly x: number; readonly y: number } | null;
}

export const PRESSURE_STEPS = 4;

export function pressureMap(
  { grid }: Seated['wall'],
  { rows: [first, last], pressure, greatest, widest }: RoundFit,
  units: Units,
): PressureMap {
  const { theta, z } = grid;
  const columns = theta.length;
  const [top, bottom] = [z[first]!, z[last]!];
  const deep = bottom - top || 1;
  const most = greatest.value > 0 ? greatest.value : 1;
  const stepOf = (p: number) => (p > 0 ? Math.max(1, Math.ceil((PRESSURE_STEPS * p) / most)) : 0);
  const patches: Patch[] = [];
  for (let row = first; row <= last; row++) {
    const y = row === first ? 0 : ((z[row - 1]! + z[row]!) / 2 - top) / deep;
    const end = row === last ? 1 : ((z[row]! + z[row + 1]!) / 2 - top) / deep;
    let run: { x: number; step: number } | null = null;
    for (let i = 0; i <= columns; i++) {
      const p =
        i === columns ? Number.NaN : pressure[row * columns + ((i + columns / 2) % columns)]!;
      const step = Number.isNaN(p) ? -1 : stepOf(p);
      if (run !== null && run.step !== step) {
        patches.push({ x: run.x, y, width: i / columns - run.x, height: end - y, step: run.step });
        run = null;
      }
      if (run === null && step >= 0) run = { x: i / columns, step };
    }
  }
  const place = (at: { readonly theta: number; readonly z: number }) => ({
    x: (at.theta / (2 * Math.PI) + 0.5) % 1,
    y: (at.z - top) / deep,
  });
  return {
    patches,
    steps: Array.from({ length: PRESSURE_STEPS }, (_, i) =>
      pressureBare((most * (i + 1)) / PRESSURE_STEPS, units),
    ),
    depths: [top, bottom].map((at, y) => ({ y, text: formatDepth(at, units) })),
    hours: [6, 9, 12, 3, 6].map((hour, i) => ({ x: i / 4, text: String(hour) })),
    hardest: place(greatest),
    widest: widest.value > 0 ? place(widest) : null,
  };
}
