/**
 * The readings as a design: everything about them that does not depend on their values.
 *
 * Held apart so that a changed value costs two triangular solves and not a new factorisation.
 */
import { crescentShapes, type KnownShape } from './crescent.ts';
import { gains, LOBES, seenLobes, TERMS } from './instruments.ts';
import { type Pressed, press } from './pressed.ts';
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
  /** Side that is stated to be worn, radians; NaN: none is. Its shapes, and what each pressed row answers them. */
  readonly wornSide: number;
  readonly known: readonly KnownShape[];
  /** pressed.count * known.length. */
  readonly knownGain: Float64Array;
  /** The readings drawn together without loss: what the posterior is worked out from. */
  readonly pressed: Pressed;
  /** Angular likeness of pressed rows i and j, lower triangles of their count squared. */
  readonly angular: {
    readonly size: Float64Array;
    readonly first: Float64Array;
    /** Lobes from 2, for an oval of standard deviation 1; and the part that does not follow the oval. */
    readonly others: Float64Array;
    readonly oddFloor: Float64Array;
    readonly local: Float64Array;
    /** Known shapes, for wear of standard deviation 1. */
    readonly known: Float64Array;
    /** What the readings of one set-up share. */
    readonly setup: Float64Array;
  };
}

/** @param wornSide clock position stated to be worn, radians; NaN: none */
export function design(
  sightings: readonly Sighting[],
  setups: readonly SetupPrior[],
  length: number,
  wornSide = Number.NaN,
): Design {
  const count = sightings.length;
  const gain = gains(sightings, setups);
  const depths = Float64Array.from(new Set(sightings.map((s) => s.z))).sort();
  const place = new Map(Array.from(depths, (z, k) => [z, k]));
  const depthOf = Int32Array.from(sightings, (s) => place.get(s.z)!);
  const pressed = press(sightings, gain, depthOf, setups.length);
  const known = crescentShapes(wornSide);
  const knownGain = answersTo(known, pressed);
  return {
    sightings,
    setups,
    length,
    count,
    gain,
    seen: seenLobes(gain),
    depths,
    depthOf,
    datum: sightings.some((s) => s.instrument === 'radius'),
    wornSide,
    known,
    knownGain,
    pressed,
    angular: {
      ...angularTables(pressed),
      known: knownTable(known, knownGain, pressed.count),
      setup: setupTable(pressed, depths, setups, length),
    },
  };
}

/** rows * shapes: what each pressed row answers 1 mm of each known shape. */
export function answersTo(known: readonly KnownShape[], { gain, count }: Pressed): Float64Array {
  const out = new Float64Array(count * known.length);
  known.forEach(({ profile }, t) => {
    for (let i = 0; i < count; i++) {
      let sum = 0;
      profile.forEach((a, c) => {
        sum += a * gain[i * profile.length + c]!;
      });
      out[i * known.length + t] = sum;
    }
  });
  return out;
}

function knownTable(known: readonly KnownShape[], answers: Float64Array, count: number) {
  const out = new Float64Array(known.length > 0 ? count * count : 0);
  const m = known.length;
  for (let i = 0, at = 0; at < out.length; i++, at = i * count) {
    for (let j = 0; j <= i; j++) {
      known.forEach(({ share }, t) => {
        out[at + j] = out[at + j]! + share * share * answers[i * m + t]! * answers[j * m + t]!;
      });
    }
  }
  return out;
}

function angularTables({ gain, count }: Pressed): Omit<Design['angular'], 'known' | 'setup'> {
  const table = () => new Float64Array(count * count);
  const t = {
    size: table(),
    first: table(),
    others: table(),
    oddFloor: table(),
    local: table(),
  };
  const columns = TERMS;
  const lobes = LOBES;
  const ratio = Float64Array.from({ length: LOBES + 1 }, (_, n) =>
    n < 2 ? 0 : lobeVariance(n, 1) - oddFloor(n) ** 2,
  );
  const floor = Float64Array.from({ length: LOBES + 1 }, (_, n) => oddFloor(n) ** 2);
  const local = Float64Array.from({ length: LOBES + 1 }, (_, n) => localShare(n));
  for (let i = 0; i < count; i++) {
    const p = i * columns;
    for (let j = 0; j <= i; j++) {
      const q = j * columns;
      const k = i * count + j;
      const size = gain[p]! * gain[q]!;
      let others = 0;
      let odd = 0;
      let dents = local[0]! * size;
      for (let n = 1, c = 1; n <= lobes; n++, c += 2) {
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
    }
  }
  return t;
}

/** Covariance of rows through the unknowns of their set-ups, mm2. */
function setupTable(
  { setupGain, count, depthOf }: Pressed,
  depths: Float64Array,
  setups: readonly SetupPrior[],
  length: number,
): Float64Array {
  const out = new Float64Array(count * count);
  const deep = (i: number) => depths[depthOf[i]!]! / length;
  setups.forEach((setup, s) => {
    addShared(out, setup, { answers: setupGain, width: 3 * setups.length, at: 3 * s }, deep);
  });
  return out;
}

/** Where the answers of one set-up lie: row by row `width` numbers, its sine, cosine and zero from `at` on. */
interface SetupColumns {
  readonly answers: Float64Array;
  readonly width: number;
  readonly at: number;
}

/** Adds the covariance of rows through the unknowns of one set-up, mm2. `deep`: share of the length. */
function addShared(
  table: Float64Array,
  s: SetupPrior,
  { answers, width, at }: SetupColumns,
  deep: (row: number) => number,
): void {
  const count = answers.length / width;
  const answering = Array.from({ length: count }, (_, i) => i).filter((i) =>
    [0, 1, 2].some((c) => answers[i * width + at + c] !== 0),
  );
  answering.forEach((i, nth) => {
    const p = i * width + at;
    for (let m = 0; m <= nth; m++) {
      const j = answering[m]!;
      const q = j * width + at;
      const centre = s.offset ** 2 + s.lean ** 2 * deep(i) * deep(j);
      const zero = s.resetEachDepth && deep(i) !== deep(j) ? 0 : s.zeroSd ** 2;
      const k = i * count + j;
      table[k] =
        table[k]! +
        centre * (answers[p]! * answers[q]! + answers[p + 1]! * answers[q + 1]!) +
        zero * answers[p + 2]! * answers[q + 2]!;
    }
  });
}
