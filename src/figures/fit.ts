/** The bushing and the pin as they are drawn in the bore: true sizes, wear left out. */
import type { BoreEvaluation, Evaluation } from '../evaluate.ts';

export interface DrawnBushing {
  /** Depths between which it sits, mm. */
  readonly from: number;
  readonly to: number;
  /** Radii, mm. */
  readonly outside: number;
  readonly inside: number;
}

export interface Fit {
  readonly bushings: readonly DrawnBushing[];
  /** Radius of the pin, mm; null where none is known. */
  readonly pin: number | null;
  /** False where the bushing's inside was not given, and is drawn as is usual. */
  readonly insideKnown: boolean;
}

/** Wall of a bushing of which only the outside is known, as a share of its outside diameter. */
const USUAL_WALL = 0.1;

/** @returns null where no bushing is known */
export function fitOf(
  { id, name, facts }: Pick<BoreEvaluation, 'id' | 'name' | 'facts'>,
  { fresh, parts }: Evaluation['joint'],
): Fit | null {
  const bought = fresh.filter(({ bore }) => bore === name);
  const pins = parts.filter(({ kind }) => kind === 'pin');
  const own = pins.find((pin) => pin.id === `${id} pin`) ?? (pins.length === 1 ? pins[0] : null);
  const across = own?.size.mean.mm ?? Number.NaN;
  const pin = across > 0 ? across / 2 : null;
  let insideKnown = true;
  const bushings = facts.seats.flatMap(({ from, to }, i): DrawnBushing[] => {
    const one = bought[i] ?? bought[0];
    const across = Number.isFinite(one?.outside) ? one!.outside : facts.bushingOutside.mm;
    if (!(across > 0) || !(to > from)) return [];
    const outside = across / 2;
    const given = (one?.inside ?? Number.NaN) / 2;
    // Without its own inside, what the pin runs in is at least as large as the pin.
    const known = given > 0 && given < outside;
    if (!known) insideKnown = false;
    const around = pin !== null && pin < outside ? pin : (1 - 2 * USUAL_WALL) * outside;
    return [{ from, to, outside, inside: known ? given : around }];
  });
  if (bushings.length === 0) return null;
  const least = Math.min(...bushings.map(({ inside }) => inside));
  return { bushings, pin: pin !== null && pin <= least ? pin : null, insideKnown };
}
