/** Give-or-take (two standard deviations) of what is told of one depth, across, mm. */
import type { Section } from '../bore/types.ts';

/** Of the difference of greatest and least diameter: four times the oval's amplitude per side. */
export function outOfRoundGive({ lobes }: Section): number {
  const oval = lobes.find(({ n }) => n === 2);
  return oval === undefined ? Number.NaN : 8 * oval.sd;
}
