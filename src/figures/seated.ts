/**
 * Where a bushing of known size would touch once everything that stands inside the target is ground down to it: places
 * whose wall is no farther out than the bushing is. Keep-offs and wall beyond the seats are left out of the reckoning.
 */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';

export interface Seated {
  /** Share of the seat's area, 0 to 1: at the mean, and if the wall is a give-or-take farther out or in all over. */
  readonly share: number;
  readonly least: number;
  readonly most: number;
  /** The widest gap left between bushing and wall, per side, mm, with its give-or-take; null: none at the mean. */
  readonly gap: {
    readonly mm: number;
    readonly give: number;
    readonly theta: number;
    readonly z: number;
  } | null;
}

/** @returns null where no target or no bushing is known, or nothing of the seat is left to reckon with */
export function seatedOn(
  { surface, target, removal }: SurveyEvaluation,
  { bushingOutside, seats }: BoreFacts,
): Seated | null {
  if (surface === null || target === null || removal === null) return null;
  // Half of the press fit, per side: below zero the bushing is loose all over.
  const room = (bushingOutside.mm - target.diameter) / 2;
  if (!Number.isFinite(room)) return null;
  const { theta, z } = surface.grid;
  const found = { all: 0, share: 0, least: 0, most: 0 };
  let widest = -1;
  for (let k = 0; k < removal.deviation.length; k++) {
    const row = Math.floor(k / theta.length);
    const deep = z[row]!;
    const seated = seats.some(({ from, to }) => deep >= from - 1e-9 && deep <= to + 1e-9);
    // A keep-off has no metal to take off, not even none.
    if (!seated || Number.isNaN(removal.likely[k]!)) continue;
    const area = (z[Math.min(row + 1, z.length - 1)]! - z[Math.max(row - 1, 0)]!) / 2;
    const e = Math.max(0, removal.deviation[k]!);
    const give = 2 * removal.sd[k]!;
    found.all += area;
    if (e < room) found.share += area;
    if (e + give < room) found.least += area;
    if (e - give < room && room > 0) found.most += area;
    if (e > room && (widest < 0 || e > removal.deviation[widest]!)) widest = k;
  }
  if (!(found.all > 0)) return null;
  return {
    share: found.share / found.all,
    least: found.least / found.all,
    most: found.most / found.all,
    gap:
      widest < 0
        ? null
        : {
            mm: Math.max(0, removal.deviation[widest]!) - room,
            give: 2 * removal.sd[widest]!,
            theta: theta[widest % theta.length]!,
            z: z[Math.floor(widest / theta.length)]!,
          },
  };
}
