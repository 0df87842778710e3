/** What the saved job says of the fit: which wall is judged, and the figures that are not the usual ones. */
import * as v from 'valibot';
import { HeatFigures } from './heatSchema.ts';
import { MOST, Typed, text } from './typed.ts';

export const FitFigures = v.strictObject({
  /** The wall as the chosen way is to leave it (left out), or as it was measured. */
  wall: v.optional(v.picklist(['planned', 'measured'])),
  /** Friction in the seat: holding goes by the low one, the press by the high one. */
  frictionLow: v.optional(text(20)),
  frictionHigh: v.optional(text(20)),
  /** What pressing flattens of the two rough walls, across. */
  roughnessLoss: v.optional(Typed),
  heat: v.optional(HeatFigures),
  /** Steps of the order of work that are ticked off, by their names. */
  done: v.optional(v.pipe(v.array(text(MOST.clock)), v.maxLength(MOST.steps))),
  /** Running clearance across: the most when new, and from which on it is worn out. */
  clearanceMost: v.optional(Typed),
  clearanceWorn: v.optional(Typed),
});
