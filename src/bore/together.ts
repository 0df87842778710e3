/**
 * Which few of many candidates do most for the map together: each next one is the best once those before it are taken.
 *
 * Chosen by a coarse map, conditioned on one candidate after the other (as in oneMore.ts; what candidates share with
 * each other is taken along). What each is worth is for the whole map to tell.
 */
import type { MapAsked } from './nextTypes.ts';
import { harmonic, mapSpread } from './oneMore.ts';
import type { Posterior } from './posterior.ts';
import type { Sighting } from './types.ts';

/** Every fourth angle and depth: twelve degrees and a sixteenth of the length. */
const COARSE = 4;

/** Some places of the map and all candidates, given what was taken so far; mm2. */
interface Coarse {
  /** Of each place. */
  readonly variance: Float64Array;
  /** Candidates * places. */
  readonly shared: readonly Float64Array[];
  /** Candidates * candidates; the noise of a reading on the diagonal. */
  readonly between: readonly Float64Array[];
}

/** @returns places in `candidates`, the best first; at most `most` */
export function bestTogether(
  p: Posterior,
  asked: MapAsked,
  candidates: readonly Sighting[],
  most: number,
): number[] {
  const map = coarseMap(p, asked, candidates);
  const chosen: number[] = [];
  while (chosen.length < Math.min(most, candidates.length)) {
    const best = bestOf(map);
    if (best < 0) break;
    chosen.push(best);
    take(map, best);
  }
  return chosen;
}

function coarseMap(p: Posterior, asked: MapAsked, candidates: readonly Sighting[]): Coarse {
  const { theta, z } = asked.grid;
  const pick = (values: Float64Array) => values.filter((_, i) => i % COARSE === 0);
  const grid = { theta: pick(theta), z: pick(z) };
  const map = mapSpread(p, { ...asked, grid }, candidates);
  const step = (z.length - 1) / (map.before.length - 1);
  const places = map.before.flatMap((row, r) =>
    Array.from(row, (variance, i) => ({ r, i, variance })).filter(
      ({ i }) => asked.counts[r * step * theta.length + i * COARSE] === 1,
    ),
  );
  return {
    variance: Float64Array.from(places, ({ variance }) => variance),
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

/** The candidate that leaves the least mean standard deviation; -1 where there is no place to judge by. */
function bestOf({ variance, shared, between }: Coarse): number {
  let at = -1;
  let least = Number.POSITIVE_INFINITY;
  shared.forEach((c, j) => {
    const left = between[j]![j]!;
    let sum = 0;
    for (let x = 0; x < variance.length; x++) {
      sum += Math.sqrt(Math.max(0, variance[x]! - (c[x]! * c[x]!) / left));
    }
    if (!(sum < least)) return;
    least = sum;
    at = j;
  });
  return at;
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
