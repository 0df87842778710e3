/**
 * The readings as a design: everything about them that does not depend on their values.
 *
 * Held apart so that a changed value costs two triangular solves and not a new factorisation.
 */
import { cosineColumn, gains, LOBES, seenLobes, TERMS } from './instruments.ts';
import { lobeVariance, localShare, oddFloor } from './prior.ts';
import type { SetupPrior, Sighting } from './types.ts';

export interface Design {
  readonly sightings: readonly Sighting[];
  readonly setups: readonly SetupPrior[];
  readonly length: number;
  readonly count: number;
  /** count * TERMS. */
  readonly gain: Float64Array;
  readonly seen: readonly number[];
  /** Depths without repeats, and each reading's place among them. */
  readonly depths: Float64Array;
  readonly depthOf: Int32Array;
  /** True where some radii are taken about an axis of the repairer's own. */
  readonly datum: boolean;
  /** Angular likeness of reading i and j, lower triangles of count * count. */
  readonly angular: {
    readonly size: Float64Array;
    readonly first: Float64Array;
    /** Lobes from 2, for an oval of standard deviation 1; and the part that does not follow the oval. */
    readonly others: Float64Array;
    readonly oddFloor: Float64Array;
    readonly local: Float64Array;
    /** What the readings of one set-up share. */
    readonly setup: Float64Array;
  };
}

export function design(
  sightings: readonly Sighting[],
  setups: readonly SetupPrior[],
  length: number,
): Design {
  const count = sightings.length;
  const gain = gains(sightings, setups);
  const depths = Float64Array.from(new Set(sightings.map((s) => s.z))).sort();
  const place = new Map(Array.from(depths, (z, k) => [z, k]));
  return {
    sightings,
    setups,
    length,
    count,
    gain,
    seen: seenLobes(gain),
    depths,
    depthOf: Int32Array.from(sightings, (s) => place.get(s.z)!),
    datum: sightings.some((s) => s.instrument === 'radius'),
    angular: angularTables(gain, count, sightings, setups, length),
  };
}

function angularTables(
  gain: Float64Array,
  count: number,
  sightings: readonly Sighting[],
  setups: readonly SetupPrior[],
  length: number,
): Design['angular'] {
  const table = () => new Float64Array(count * count);
  const t = {
    size: table(),
    first: table(),
    others: table(),
    oddFloor: table(),
    local: table(),
    setup: table(),
  };
  const ratio = Float64Array.from({ length: LOBES + 1 }, (_, n) =>
    n < 2 ? 0 : lobeVariance(n, 1) - oddFloor(n) ** 2,
  );
  const floor = Float64Array.from({ length: LOBES + 1 }, (_, n) => oddFloor(n) ** 2);
  const local = Float64Array.from({ length: LOBES + 1 }, (_, n) => localShare(n));
  for (let i = 0; i < count; i++) {
    const p = i * TERMS;
    for (let j = 0; j <= i; j++) {
      const q = j * TERMS;
      const k = i * count + j;
      const size = gain[p]! * gain[q]!;
      let others = 0;
      let odd = 0;
      let dents = local[0]! * size;
      for (let n = 1; n <= LOBES; n++) {
        const c = cosineColumn(n);
        const a = gain[p + c]! * gain[q + c]! + gain[p + c + 1]! * gain[q + c + 1]!;
        if (n === 1) t.first[k] = a;
        others += ratio[n]! * a;
        odd += floor[n]! * a;
        dents += local[n]! * a;
      }
      t.size[k] = size;
      t.others[k] = others;
      t.oddFloor[k] = odd;
      t.local[k] = dents;
      t.setup[k] = shared(sightings[i]!, sightings[j]!, setups, length);
    }
  }
  return t;
}

/** Covariance of two readings through the unknowns of the set-up that they share, mm2. */
function shared(a: Sighting, b: Sighting, setups: readonly SetupPrior[], length: number): number {
  if (a.setup < 0 || a.setup !== b.setup) return 0;
  const s = setups[a.setup]!;
  const centre = s.offset ** 2 + (s.lean ** 2 * a.z * b.z) / (length * length);
  const zero = s.resetEachDepth && a.z !== b.z ? 0 : s.zeroSd ** 2;
  return centre * Math.cos(a.theta - b.theta) + zero;
}
