/** What the saved job says of the room beside a boss between two ears. */
import * as v from 'valibot';
import { Face, MOST, Name, Typed } from './typed.ts';

/** A loose part beside the boss: a flange, a thrust washer, a face shim. */
export const SidePart = v.strictObject({
  name: Name,
  thickness: Typed,
  /** The face of the boss that it lies beside. */
  face: Face,
  /** Whether it is there now, after the work, or both. */
  when: v.picklist(['now', 'after', 'both']),
});
export type SidePart = v.InferOutput<typeof SidePart>;

export const SideGap = v.strictObject({
  /** Between the faces of the ears, at up to nine places. */
  between: v.optional(v.pipe(v.array(Typed), v.maxLength(MOST.pinPlaces))),
  /** Over both faces of the boss as it is now, at up to nine places. */
  width: v.optional(v.pipe(v.array(Typed), v.maxLength(MOST.pinPlaces))),
  parts: v.optional(v.pipe(v.array(SidePart), v.maxLength(MOST.sideParts))),
  /** Worn faces get their washers as they are (left out), or once dressed square. */
  faces: v.optional(v.picklist(['as-it-is', 'dressed'])),
  /** Of the whole gap, both sides together. */
  least: v.optional(Typed),
  most: v.optional(Typed),
});
export type SideGap = v.InferOutput<typeof SideGap>;
