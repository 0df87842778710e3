/** A bushing that sits tight half-way: everything cold, then the outside warmed briefly, so that the boss grows first. */
import { conduct, meanOver } from './conduction.ts';
import { strainAt } from './expansion.ts';
import { expands } from './family.ts';
import { type Meeting, ringsOf } from './transient.ts';

export interface Stuck extends Omit<Meeting, 'contact'> {
  /** Between the pressed surfaces, W/(m² K). */
  readonly contact: number;
  /** Into the outside of the boss, kW, and for how many seconds. */
  readonly flame: { readonly power: number; readonly seconds: number };
  /** mm of the boss that the flame plays on. */
  readonly length: number;
  /** °C that its skin must not pass: the flame goes away there. */
  readonly limit: number;
}

export interface Recovery {
  /** How much of the press fit is gone before any flame, across, mm; negative where the cold made it tighter. */
  readonly before: number;
  /** How much is gone at best, across, mm, and when, in seconds from the flame. */
  readonly most: number;
  readonly at: number;
  /** Between which seconds it is all gone; null where it never is. */
  readonly free: { readonly from: number; readonly to: number } | null;
  /** Skin of the boss at its warmest, °C, and when the flame went away, seconds. */
  readonly skin: number;
  readonly off: number;
  readonly curve: { readonly seconds: Float64Array; readonly gone: Float64Array };
}

/** The steps are even: the flame comes and goes at once. */
const STEP = 0.5;
const LONGEST = 600;
/** After the flame it is followed for this many times as long. */
const AFTER = 3;

export function recoveryOf(stuck: Stuck): Recovery {
  const { bore, outside, bushing, boss, flame, limit } = stuck;
  const [grows, shrinks] = [expands(boss.metal), expands(bushing.metal)];
  const skinArea = Math.PI * stuck.bossOutside * 1e-3 * stuck.length * 1e-3;
  const flux = (1000 * flame.power) / skinArea;
  let off = flame.seconds;
  const rings = ringsOf(stuck, (seconds) => (seconds < off ? flux : 0));
  // From the middle of the outermost cell to the skin.
  const half = (rings.layers[1]!.outer - rings.layers[1]!.inner) / rings.cells / 2000;
  const toSkin = (flux * half) / boss.metal.conductivity;
  const before =
    bore * strainAt(grows, boss.celsius) - outside * strainAt(shrinks, bushing.celsius);
  const [times, gone] = [[0], [before]];
  let skin = boss.celsius;
  const end = Math.min(LONGEST, flame.seconds * (1 + AFTER));
  const all = Array.from({ length: Math.ceil(end / STEP) }, (_, i) => (i + 1) * STEP);
  conduct(
    rings,
    all,
    () => stuck.contact,
    ({ seconds, celsius }) => {
      if (seconds <= off) {
        skin = Math.max(skin, celsius.at(-1)! + toSkin);
        if (skin >= limit) off = seconds;
      }
      const wide = meanOver(rings, 1, celsius, (one) => strainAt(grows, one));
      const narrow = meanOver(rings, 0, celsius, (one) => strainAt(shrinks, one));
      times.push(seconds);
      gone.push(bore * wide - outside * narrow);
      return seconds < off * (1 + AFTER);
    },
  );
  const best = gone.reduce((b, one, i) => (one > gone[b]! ? i : b), 0);
  return {
    before,
    most: gone[best]!,
    at: times[best]!,
    free: freeOf(times, gone, outside - bore),
    skin,
    off,
    curve: { seconds: Float64Array.from(times), gone: Float64Array.from(gone) },
  };
}

function freeOf(
  times: readonly number[],
  gone: readonly number[],
  press: number,
): Recovery['free'] {
  const first = gone.findIndex((one) => one >= press);
  if (first < 0) return null;
  const last = gone.findLastIndex((one) => one >= press);
  return { from: times[first]!, to: times[last]! };
}
