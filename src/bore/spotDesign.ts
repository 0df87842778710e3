/** What the readings answer a spot: worked out once for their places, since learning asks for it many times. */
import type { KnownShape } from './crescent.ts';
import { answersTo, type Design } from './design.ts';
import type { Pressed } from './pressed.ts';
import { spotShapes } from './spotShapes.ts';
import type { Spot } from './types.ts';

interface SpotAnswers {
  readonly shapes: readonly KnownShape[];
  /** pressed.count * shapes.length. */
  readonly answers: Float64Array;
  /** Angular likeness of pressed rows i and j through it, lower triangle of their count squared. */
  readonly alike: Float64Array;
}

const before = new WeakMap<Pressed, WeakMap<Spot, SpotAnswers>>();

export function spotAnswers({ pressed }: Design, spot: Spot): SpotAnswers {
  const ofPlaces = before.get(pressed) ?? new WeakMap<Spot, SpotAnswers>();
  before.set(pressed, ofPlaces);
  const known = ofPlaces.get(spot);
  if (known !== undefined) return known;
  const shapes = spotShapes(spot);
  const answers = answersTo(shapes, pressed);
  const found = { shapes, answers, alike: alikeThrough(answers, pressed.count) };
  ofPlaces.set(spot, found);
  return found;
}

function alikeThrough(answers: Float64Array, count: number): Float64Array {
  const out = new Float64Array(count * count);
  const m = answers.length / count;
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let t = 0; t < m; t++) sum += answers[i * m + t]! * answers[j * m + t]!;
      out[i * count + j] = sum;
    }
  }
  return out;
}

/** All known shapes of a posterior, those of the stated side first, and what each pressed row answers them. */
export function allKnown(d: Design, spots: readonly Spot[]) {
  if (spots.length === 0) return { known: d.known, knownGain: d.knownGain };
  const { count } = d.pressed;
  const parts = [
    { shapes: d.known, answers: d.knownGain },
    ...spots.map((spot) => spotAnswers(d, spot)),
  ];
  const known = parts.flatMap(({ shapes }) => shapes);
  const knownGain = new Float64Array(count * known.length);
  for (let i = 0, at = 0; i < count; i++) {
    for (const { shapes, answers } of parts) {
      const m = shapes.length;
      knownGain.set(answers.subarray(i * m, (i + 1) * m), at);
      at += m;
    }
  }
  return { known, knownGain };
}
