/** What the saved job says of the fit: which wall is judged, and the figures that are not the usual ones. */
import * as v from 'valibot';

export const FitFigures = v.strictObject({
  /** The wall as the chosen way is to leave it (left out), or as it was measured. */
  wall: v.optional(v.picklist(['planned', 'measured'])),
});
