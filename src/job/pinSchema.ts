/** What the saved job says of a pin or shaft alone. */
import * as v from 'valibot';
import { Face, Id, Name, Typed } from './typed.ts';

/** A stretch of a pin that runs in a bore: depths from a face. */
export const Land = v.strictObject({
  id: Id,
  name: Name,
  face: Face,
  from: Typed,
  to: Typed,
  /** The bore or the old bushing that it runs in; left out: not said. */
  runsIn: v.optional(Id),
});
export type Land = v.InferOutput<typeof Land>;

export const OfPin = v.strictObject({
  way: v.optional(v.picklist(['leave', 'turn-round', 'turn-down', 'weld', 'replace'])),
  /** What its running surface is; left out: nobody has said. */
  skin: v.optional(v.picklist(['plain', 'hardened', 'plated'])),
  /** Turned on the centres that it has, or shifted to where it cleans up best. */
  centres: v.optional(v.picklist(['kept', 'shifted'])),
  /** Size to which it is turned down where that is the way. */
  smaller: v.optional(Typed),
});
