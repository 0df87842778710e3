/**
 * A boss that is not equally warm all round: what that does to the bore. °C, radians, millimetres across.
 *
 * A temperature that rises evenly from one side to the other bends nothing: the bore stays round, has the size of the
 * mean temperature, and only moves. Two opposite sides warmer than the two between make it oval, tight across the
 * warmer sides: by a third of what those degrees would open a free piece of metal where the heat came in from outside
 * (a plane harmonic temperature strains without stress; the bore loses nothing to the air; a thin ring gives the same
 * third), by all of it where it came in through the bore. The truth lies between.
 */
import { solveInPlace } from '../num/linearSystem.ts';
import { type Expands, strainAt } from './expansion.ts';

export interface Probe {
  readonly theta: number;
  readonly celsius: number;
}

export interface Uneven {
  /** °C, round the clock. */
  readonly mean: number;
  /** Warmest side against the mean, °C, and where. */
  readonly side: { readonly celsius: number; readonly theta: number };
  /** Two warmer sides against the mean, °C, and where the warmer pair lies (0 to π). */
  readonly pair: { readonly celsius: number; readonly theta: number };
}

/** How far sides and pairs differ before anything was measured: only their ratio counts. Judgement. */
const SIDE = 1;
const PAIR = 0.5;
/** The mean is known by the readings alone. */
const MEAN = 1e6;

/**
 * The simplest temperature round the clock that goes through one to four probes: a mean, one side, one pair of sides.
 *
 * @returns null where there is no probe, or two stand at one place
 */
export function unevenOf(probes: readonly Probe[]): Uneven | null {
  const n = probes.length;
  if (n === 0 || probes.some(({ theta, celsius }) => !Number.isFinite(theta + celsius)))
    return null;
  const shared = (turn: number) => MEAN + SIDE * Math.cos(turn) + PAIR * Math.cos(2 * turn);
  const matrix = Float64Array.from({ length: n * n }, (_, k) =>
    shared(probes[Math.floor(k / n)]!.theta - probes[k % n]!.theta),
  );
  // Counted from the first, so that the large share of the mean costs no digits.
  const from = probes[0]!.celsius;
  const weights = Float64Array.from(probes, ({ celsius }) => celsius - from);
  if (!solveInPlace(matrix, weights, n)) return null;
  const lobe = (times: number, prior: number) => {
    let [c, s] = [0, 0];
    for (const [i, { theta }] of probes.entries()) {
      c += prior * weights[i]! * Math.cos(times * theta);
      s += prior * weights[i]! * Math.sin(times * theta);
    }
    const turn = Math.atan2(s, c) / times;
    const round = (2 * Math.PI) / times;
    return { celsius: Math.hypot(c, s), theta: ((turn % round) + round) % round };
  };
  const [side, pair] = [lobe(1, SIDE), lobe(2, PAIR)];
  const first = probes[0]!.theta;
  const lobes = (theta: number) =>
    side.celsius * Math.cos(theta - side.theta) + pair.celsius * Math.cos(2 * (theta - pair.theta));
  return { mean: from - lobes(first), side, pair };
}

/** °C at a place round the clock. */
export function celsiusRound({ mean, side, pair }: Uneven, theta: number): number {
  return (
    mean +
    side.celsius * Math.cos(theta - side.theta) +
    pair.celsius * Math.cos(2 * (theta - pair.theta))
  );
}

/**
 * How much the bore closes across the warmer pair and opens across the cooler one, across, mm: least to most.
 */
export function ovalOf(
  { mean, pair }: Uneven,
  metal: Expands,
  diameter: number,
): { readonly least: number; readonly most: number } {
  // Of the degrees about the mean: a coefficient there, by a difference as wide as they are.
  const wide = Math.max(pair.celsius, 1);
  const perDegree = (strainAt(metal, mean + wide / 2) - strainAt(metal, mean - wide / 2)) / wide;
  const most = diameter * perDegree * pair.celsius;
  return { least: most / 3, most };
}
