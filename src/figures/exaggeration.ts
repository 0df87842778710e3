/** By how much wear is drawn larger than it is: round factors, chosen to read well and never to mislead. */

/** 1 is true size. */
const FACTORS = [
  1, 2, 5, 10, 15, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 500, 800, 1000, 1500, 2000,
] as const;

/** The deepest wear is drawn no deeper than this share of the bore's radius, by choice and at most. */
const READS_WELL = 0.34;
const AT_MOST = 0.45;
/** Share of the metal around the bore that drawn wear may eat into at most. */
const OF_METAL = 0.85;

export interface Exaggeration {
  /** Factors that can be drawn without the wall crossing itself or the boss, ascending; 1 is always there. */
  readonly factors: readonly number[];
  /** The one that reads well. */
  readonly chosen: number;
}

/**
 * @param least, greatest range of the deviation, mm
 * @param radius of the bore, mm
 * @param metal thickness of the boss, mm
 */
export function exaggerations(
  least: number,
  greatest: number,
  radius: number,
  metal: number,
): Exaggeration {
  const fits = (factor: number, share: number) => {
    const deepest = factor * Math.max(-least, greatest);
    return deepest <= share * radius && factor * greatest <= (share / AT_MOST) * OF_METAL * metal;
  };
  if (!(Math.max(-least, greatest) > 0)) return { factors: [1], chosen: 1 };
  const factors = FACTORS.filter((factor) => factor === 1 || fits(factor, AT_MOST));
  const well = factors.filter((factor) => fits(factor, READS_WELL));
  return { factors, chosen: well[well.length - 1] ?? 1 };
}

/** The factor to draw with: the wanted one where it can be drawn, else the nearest that can. */
export function factorFor(wanted: number | null, { factors, chosen }: Exaggeration): number {
  if (wanted === null) return chosen;
  const below = factors.filter((factor) => factor <= wanted);
  return below[below.length - 1] ?? 1;
}
