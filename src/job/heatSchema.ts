/** Figures of heat, cold and the clock in the saved job: as typed, left out where the usual ones stand. */
import * as v from 'valibot';
import { MOST, Typed, text } from './typed.ts';

export const Warmth = v.strictObject({ text: text(20), unit: v.picklist(['C', 'F']) });
export type Warmth = v.InferOutput<typeof Warmth>;

/** Where the bushing lies before it goes in. */
export const Cold = v.picklist(['as-it-is', 'freezer', 'dry-ice', 'nitrogen', 'own']);
export type Cold = v.InferOutput<typeof Cold>;

/** How warm the boss is at one place, by clock as seen from face A. */
export const BossProbe = v.strictObject({ clock: text(MOST.clock), at: Warmth });
export type BossProbe = v.InferOutput<typeof BossProbe>;

export const HeatFigures = v.strictObject({
  cold: v.optional(Cold),
  /** Of the bushing when it is taken out of a cold of its own. */
  bushing: v.optional(Warmth),
  /** Air, and all that was neither heated nor chilled. */
  shop: v.optional(Warmth),
  /** Of the boss when the heat is taken away. */
  boss: v.optional(Warmth),
  probes: v.optional(v.pipe(v.array(BossProbe), v.maxLength(MOST.probes))),
  /** Most that the boss, and the bushing, may be heated to. */
  limit: v.optional(Warmth),
  bushingLimit: v.optional(Warmth),
  /** Room at entry, across. */
  room: v.optional(Typed),
  /** Seconds from taking out to touching, from touching to home, and to find the depth by eye. */
  carry: v.optional(text(20)),
  slide: v.optional(text(20)),
  find: v.optional(text(20)),
  stop: v.optional(v.picklist(['collar', 'eye'])),
  /** W/(m² K): to the air, and between the two. */
  film: v.optional(text(20)),
  contact: v.optional(text(20)),
  /** kW that go into the boss from the flame, and seconds, when a bushing is stuck. */
  flame: v.optional(text(20)),
  flameSeconds: v.optional(text(20)),
});
export type HeatFigures = v.InferOutput<typeof HeatFigures>;
