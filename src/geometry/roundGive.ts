/** How well the out-of-round of a depth is known. */

/** What is told of one depth: its lobes with one standard deviation each, and the give-or-take of its mean diameter. */
interface Round {
  readonly lobes: readonly { readonly n: number; readonly sd: number }[];
  readonly give: number;
}

/**
 * Two standard deviations of out-of-round, across, mm. The greatest and the least diameter stand about a quarter turn
 * apart: there 2 and 6 lobes of amplitude a change a radius by 2 a, so a diameter by 4 a, and 4 lobes by nothing.
 * That of the mean diameter where no such lobe is told.
 */
export function roundGive({ lobes, give }: Round): number {
  const told = lobes.filter(({ n, sd }) => n % 4 === 2 && Number.isFinite(sd));
  return told.length === 0 ? give : 8 * Math.hypot(...told.map(({ sd }) => sd));
}
