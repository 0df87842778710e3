/** How well the out-of-round of a depth is known. */
import type { Section } from '../bore/types.ts';

/**
 * Two standard deviations of out-of-round, across, mm. The greatest and the least diameter stand about a quarter turn
 * apart: there 2 and 6 lobes of amplitude a change a radius by 2 a, so a diameter by 4 a, and 4 lobes by nothing.
 * That of the mean diameter where no such lobe is told.
 */
export function roundGive({ lobes, give }: Section): number {
  const told = lobes.filter(({ n, sd }) => n % 4 === 2 && Number.isFinite(sd));
  return told.length === 0 ? give : 8 * Math.hypot(...told.map(({ sd }) => sd));
}
