/**
 * Which few of many candidates do most for the map together. The best by itself comes first and stays; the others are
 * chosen one after the other, then each is changed for a better one beside the rest until none is (exchange, as in
 * Fedorov, Theory of Optimal Experiments, 1972).
 *
 * Chosen by a coarse map, conditioned on one candidate after the other (as in oneMore.ts; what candidates share with
 * each other is taken along). What each is worth is for the whole map to tell.
 */
import type { MapAsked } from './nextTypes.ts';
import { harmonic, mapSpread } from './oneMore.ts';
import type { Posterior } from './posterior.ts';
import type { Sighting } from './types.ts';

/** Every fourth angle, twelve degrees; of the depths every second, of which spreads are worked out at every other. */
const COARSE = 4;
const COARSE_DEPTH = 2;

/** Some places of the map and all candidates, given what was taken so far; mm2. */
interface Coarse {
  /** Of each place. */
  readonly variance: Float64Array;
  /** How much of the whole map each place stands for; those at the faces for half as much. */
  readonly weight: Float64Array;
  /** Candidates * places. */
  readonly shared: readonly Float64Array[];
  /** Candidates * candidates; the noise of a reading on the diagonal. */
  readonly between: readonly Float64Array[];
}

/** Rounds of exchange; the second seldom changes anything. */
const ROUNDS = 2;
/** A change is worth it by so large a share. */
const WORTH = 1e-6;

/** @returns places in `candidates`, the best first, each next one the best of the chosen beside those before it */
export function bestTogether(
  p: Posterior,
  asked: MapAsked,
  candidates: readonly Sighting[],
  most: number,
): number[] {
  const map = coarseMap(p, asked, candidates);
  const chosen = chosenInTurn(map, most);
  for (let round = 0; round < ROUNDS; round++) if (!exchanged(map, chosen)) break;
  return inOrder(map, chosen);
}

function chosenInTurn(map: Coarse, most: number): number[] {
  const now = copyOf(map);
  const chosen: number[] = [];
  while (chosen.length < Math.min(most, map.shared.length)) {
    const { at } = bestOf(now);
    if (at < 0) break;
    chosen.push(at);
    take(now, at);
  }
  return chosen;
}

/** Each but the first changed for the best beside the rest. @returns false where none was */
function exchanged(map: Coarse, chosen: number[]): boolean {
  let changed = false;
  for (let k = 1; k < chosen.length; k++) {
    const rest = copyOf(map);
    for (const j of chosen) if (j !== chosen[k]) take(rest, j);
    const best = bestOf(rest);
    if (!(best.sum < (1 - WORTH) * leftBy(rest, chosen[k]!))) continue;
    chosen[k] = best.at;
    changed = true;
  }
  return changed;
}

function inOrder(map: Coarse, chosen: readonly number[]): number[] {
  const now = copyOf(map);
  const left = [...chosen];
  const ordered: number[] = [];
  while (left.length > 0) {
    const at = ordered.length === 0 ? left[0]! : bestOf(now, left).at;
    if (at < 0) break;
    ordered.push(at);
    left.splice(left.indexOf(at), 1);
    take(now, at);
  }
  return ordered;
}

function copyOf({ variance, weight, shared, between }: Coarse): Coarse {
  return {
    variance: variance.slice(),
    weight,
    shared: shared.map((row) => row.slice()),
    between: between.map((row) => row.slice()),
  };
}

function coarseMap(p: Posterior, asked: MapAsked, candidates: readonly Sighting[]): Coarse {
  const { theta, z } = asked.grid;
  const every = (step: number, values: Float64Array) => values.filter((_, i) => i % step === 0);
  const grid = { theta: every(COARSE, theta), z: every(COARSE_DEPTH, z) };
  const map = mapSpread(p, { ...asked, grid }, candidates);
  const step = (z.length - 1) / (map.before.length - 1);
  const places = map.before.flatMap((row, r) =>
    Array.from(row, (variance, i) => ({ r, i, variance })).filter(
      ({ i }) => asked.counts[r * step * theta.length + i * COARSE] === 1,
    ),
  );
  return {
    variance: Float64Array.from(places, ({ variance }) => variance),
    weight: Float64Array.from(places, ({ r }) =>
      r === 0 || r === map.before.length - 1 ? 0.5 : 1,
    ),
    shared: candidates.map((_, j) => {
      const rows = map.before.map((_row, r) => map.shared(j, r).c);
      return Float64Array.from(places, ({ r, i }) => harmonic(rows[r]!, map.basis, i));
    }),
    between: candidates.map((_, j) =>
      Float64Array.from(candidates, (_one, i) =>
        i === j ? map.shared(j, 0).variance : map.between(j, i),
      ),
    ),
  };
}

/** Of some candidates the one that leaves the least sum of standard deviations; -1 where there is no place to judge by. */
function bestOf(map: Coarse, some: readonly number[] = [...map.shared.keys()]) {
  let at = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const j of some) {
    const sum = leftBy(map, j);
    if (!(sum < least)) continue;
    least = sum;
    at = j;
  }
  return { at, sum: least };
}

/** Sum of the standard deviations once candidate j is read; NaN where it is read already. */
function leftBy({ variance, weight, shared, between }: Coarse, j: number): number {
  const c = shared[j]!;
  const left = between[j]![j]!;
  let sum = 0;
  for (let x = 0; x < variance.length; x++) {
    sum += weight[x]! * Math.sqrt(Math.max(0, variance[x]! - (c[x]! * c[x]!) / left));
  }
  return sum;
}

/** As if candidate j were read. Nothing is left of it then, so that it is not chosen again. */
function take({ variance, shared, between }: Coarse, j: number): void {
  const left = between[j]![j]!;
  const c = shared[j]!.slice();
  const own = between[j]!.slice();
  variance.forEach((v, x) => {
    variance[x] = v - (c[x]! * c[x]!) / left;
  });
  shared.forEach((row, i) => {
    for (let x = 0; x < row.length; x++) row[x] = row[x]! - (own[i]! * c[x]!) / left;
    const others = between[i]!;
    for (let k = 0; k < others.length; k++) others[k] = others[k]! - (own[i]! * own[k]!) / left;
  });
}
