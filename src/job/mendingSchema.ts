/** Figures of squeezing, shimming and welding in the saved job. */
import * as v from 'valibot';
import { Typed, text } from './typed.ts';

/** Parts of a steel that its carbon equivalent goes by. */
export const SteelPart = v.picklist(['C', 'Mn', 'Cr', 'Mo', 'V', 'Ni', 'Cu']);
export type SteelPart = v.InferOutput<typeof SteelPart>;

export const Squeeze = v.strictObject({
  heat: v.optional(v.strictObject({ text: text(20), unit: v.picklist(['C', 'F']) })),
  /** Yield strength at 20 degrees Celsius, MPa. */
  yield: v.optional(text(20)),
  /** What was done: how far the jaws moved in while it was hot, and what it then measured cold, all across. */
  moved: v.optional(Typed),
  /** Along the jaws, and straight across from them, where it was to close most. */
  along: v.optional(Typed),
  between: v.optional(Typed),
});

export const Shim = v.strictObject({
  /** Diameter to which the bore is, or is to be, ground round. */
  round: v.optional(Typed),
  /** Left between the butted ends of a strip. */
  gap: v.optional(Typed),
  /** How far the stack may miss what is wanted, per side. */
  miss: v.optional(Typed),
  /** Tabs at the mouth, bent out over the rim; 0: none. */
  tab: v.optional(Typed),
});

export const Weld = v.strictObject({
  over: v.optional(v.picklist(['seat', 'low'])),
  /** Core of the electrode, mm. */
  electrode: v.optional(v.picklist(['2.5', '3.2', '4.0'])),
  beadHeight: v.optional(Typed),
  beadWidth: v.optional(Typed),
  /** Share of a bead that lies on the one before it, percent. */
  overlap: v.optional(text(20)),
  /** What of the steel is known; left out: its carbon equivalent where one is stated, else nothing. */
  known: v.optional(v.picklist(['equivalent', 'parts', 'nothing'])),
  /** Carbon equivalent of the steel, percent. */
  carbon: v.optional(text(20)),
  /** Parts of the steel as its papers say, percent by weight. */
  steel: v.optional(v.partial(v.strictObject(v.entriesFromList(SteelPart.options, text(20))))),
});
