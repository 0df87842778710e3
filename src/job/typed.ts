/** What every part of a saved document is made of: a text of a bounded length, and a length as it was typed. */
import * as v from 'valibot';

/** The most that a job holds: letters in a text, entries in a list. Edits keep within it. */
export const MOST = {
  typed: 40,
  clock: 20,
  name: 200,
  note: 4000,
  clocks: 720,
  depths: 500,
  readings: 20000,
  outside: 3,
  bushings: 2,
  pinPlaces: 9,
  rim: 48,
  probes: 4,
  bar: 48,
  sideParts: 12,
  steps: 60,
  lands: 9,
  features: 40,
  materials: 40,
} as const;

export const text = (most: number) => v.pipe(v.string(), v.maxLength(most));

/** `thou` counts 0.001 in over (+) or under (-) the nominal diameter when it stands on a reading. */
export const Unit = v.picklist(['in', 'thou', 'mm']);
export type Unit = v.InferOutput<typeof Unit>;

/** A length as it was typed: `{ text: '2 1/2', unit: 'in' }`. An empty text is "not given". */
export const Typed = v.strictObject({ text: text(MOST.typed), unit: Unit });
export type Typed = v.InferOutput<typeof Typed>;

export const Id = v.pipe(v.string(), v.minLength(1), v.maxLength(80));
export const Name = text(MOST.name);
export const Face = v.picklist(['A', 'B']);
export type Face = v.InferOutput<typeof Face>;
