/** How far a bushing and its boss give way to what presses between them, by the number of waves round the clock. */
import { lobeMoves } from './ring.ts';

/** Across both ways: diameters, mm; Young's modulus in MPa. */
export interface ElasticRing {
  readonly inside: number;
  readonly outside: number;
  readonly modulus: number;
  readonly poisson: number;
}

/** All in mm, per side, for 1 MPa at the crest; index n: waves round the clock. */
export interface PairMoves {
  /** Wall of the boss outwards and outside of the bushing inwards, together. */
  readonly soft: Float64Array;
  /** Bore of the bushing, inwards. */
  readonly inside: Float64Array;
  /** Outside of the boss, outwards. */
  readonly growth: Float64Array;
}

/**
 * @param boss its `inside` is the seat: the bushing's outside to first order
 * @param count places round the clock; waves 0 ... count / 2
 * @returns null where a ring has no wall, or a modulus or Poisson's ratio is no metal's
 */
export function pairMoves(
  bushing: ElasticRing,
  boss: ElasticRing,
  count: number,
): PairMoves | null {
  const waves = Math.floor(count / 2) + 1;
  const soft = new Float64Array(waves);
  const inside = new Float64Array(waves);
  const growth = new Float64Array(waves);
  for (let n = 0; n < waves; n++) {
    const sleeve = lobeMoves(radii(bushing), n, 'outside');
    const hole = lobeMoves(radii(boss), n, 'bore');
    // `lobeMoves` counts by the bore's radius.
    const ofSleeve = bushing.inside / 2 / bushing.modulus;
    const ofHole = boss.inside / 2 / boss.modulus;
    soft[n] = hole.bore * ofHole - sleeve.outside * ofSleeve;
    inside[n] = -sleeve.bore * ofSleeve;
    growth[n] = hole.outside * ofHole;
    if (!(soft[n]! > 0 && soft[n]! < Number.POSITIVE_INFINITY)) return null;
  }
  return { soft, inside, growth };
}

function radii({ inside, outside, poisson }: ElasticRing) {
  return { bore: inside / 2, outside: outside / 2, poisson };
}
