/** How smooth the bore is taken to be: as the repairer states it, else learned from the readings. */
import type { Design } from '../bore/design.ts';
import { learnSmoothness, stating } from '../bore/smoothness.ts';
import type { GivenSmoothness, Smoothness } from '../bore/types.ts';
import type { Decisions } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';

/** @returns mm; only what is typed, understood and above zero */
function givenSmoothness({ between }: Decisions): GivenSmoothness {
  const length = lengthMm(between?.smooth);
  const local = lengthMm(between?.dents);
  return { ...(length > 0 && { length }), ...(local > 0 && { local }) };
}

/** @param before what a quick answer keeps instead of learning anew */
export function chooseSmoothness(
  readings: Design,
  nominalRadius: number,
  decisions: Decisions,
  before: Smoothness | undefined,
): Smoothness {
  const given = givenSmoothness(decisions);
  if (!before) return learnSmoothness(readings, nominalRadius, given);
  const stated = stating(before, given);
  // The very same where nothing changed: what was worked out for it is kept.
  return JSON.stringify(stated) === JSON.stringify(before) ? before : stated;
}
