/** Walls that the readings leave possible: drawn from the exact posterior of the lobes' coefficients at some depths. */
import { choleskyInPlace } from '../num/cholesky.ts';
import type { Random } from '../num/random.ts';
import { type DepthTables, depthTables, mixed } from './depth.ts';
import { LOBES, TERMS } from './instruments.ts';
import { atDepth, type Posterior, spreadOf } from './posterior.ts';

/** Added to every variance, mm2, far below what any reading tells: keeps rounding from making one negative. */
const ROUNDING = 1e-10;

const ALL_LOBES = Array.from({ length: LOBES + 1 }, (_, n) => n);

/**
 * Walls less the mean one: depths * TERMS each, mm. They depend on places and smoothness alone, not on values.
 *
 * @returns null where rounding leaves the covariance no factor
 */
export function wallDraws(
  p: Posterior,
  depths: Float64Array,
  count: number,
  random: Random,
): Float64Array[] | null {
  const n = depths.length * TERMS;
  const factor = covarianceAt(p, depths);
  if (!choleskyInPlace(factor, n)) return null;
  return Array.from({ length: count }, () => {
    const noise = Float64Array.from({ length: n }, () => random.normal());
    return noise.map((_, i) => {
      let sum = 0;
      for (let j = 0; j <= i; j++) sum += factor[i * n + j]! * noise[j]!;
      return sum;
    });
  });
}

/** Posterior covariance of the coefficients at all the depths together, mm2: lower triangle of (depths * TERMS) squared. */
function covarianceAt(p: Posterior, depths: Float64Array): Float64Array {
  const { design: d, smoothness } = p;
  const toReadings = depthTables(depths, d.depths, d.length, smoothness);
  const own = depthTables(depths, depths, d.length, smoothness);
  const whitened = Array.from(
    depths,
    (_, r) => spreadOf(p, atDepth(p, toReadings, own, r), ALL_LOBES).whitened,
  );
  const { count } = d.pressed;
  const idle = Array.from({ length: TERMS }, (_, c) =>
    whitened.every((one) => one.subarray(c * count, (c + 1) * count).every((v) => v === 0)),
  );
  const n = depths.length * TERMS;
  const out = new Float64Array(n * n);
  for (let r = 0; r < depths.length; r++) {
    for (let s = 0; s <= r; s++) {
      const prior = priorBetween(p, own, r * own.columns + s);
      for (let a = 0; a < TERMS; a++) {
        const row = (r * TERMS + a) * n + s * TERMS;
        for (let b = 0; b < TERMS; b++) {
          let taken = 0;
          // Columns to which nothing responds took nothing away.
          const most = idle[a] || idle[b] ? 0 : count;
          for (let i = 0; i < most; i++) {
            taken += whitened[r]![a * count + i]! * whitened[s]![b * count + i]!;
          }
          out[row + b] = prior[a * TERMS + b]! - taken;
        }
      }
    }
  }
  for (let i = 0; i < n; i++) out[i * n + i] = out[i * n + i]! + ROUNDING;
  return out;
}

/** Prior covariance of the coefficients at one depth with those at another, TERMS squared, mm2; k: their place in the tables. */
function priorBetween({ shapes, known }: Posterior, own: DepthTables, k: number): Float64Array {
  const out = new Float64Array(TERMS * TERMS);
  // Cosine and sine of lobe n stand at 2 n - 1 and 2 n.
  for (let c = 0; c < TERMS; c++) out[c * TERMS + c] = mixed(shapes[(c + 1) >> 1]!, own, k);
  known.forEach(({ profile }, nth) => {
    const like = mixed(shapes[LOBES + 1 + nth]!, own, k);
    for (let a = 0; a < TERMS; a++) {
      if (profile[a] === 0) continue;
      for (let b = 0; b < TERMS; b++) {
        out[a * TERMS + b] = out[a * TERMS + b]! + like * profile[a]! * profile[b]!;
      }
    }
  });
  return out;
}
