/** Random numbers that a seed repeats exactly. */
export interface Random {
  /** whole number, 0 <= value < 2^32 */
  bits(): number;
  /** 0 <= value < 1, all 53 bits of the fraction drawn */
  uniform(): number;
  /** mean 0, standard deviation 1 */
  normal(): number;
}

/**
 * Generator xoshiro128** of Blackman and Vigna (ACM Transactions on Mathematical Software 47(4),
 * 2021), its four words of state filled from the seed by splitmix64 (Steele, Lea and Flood,
 * OOPSLA 2014). Normal numbers by the polar method of Marsaglia and Bray (SIAM Review 6, 1964).
 *
 * @param seed any finite number; its whole part counts, modulo 2^64
 * @throws RangeError when the seed is not finite
 */
export function seededRandom(seed: number): Random {
  return randomFromState(stateFromSeed(BigInt(Math.trunc(seed))));
}

/**
 * The same generator from its four words of state.
 *
 * @param state four whole numbers below 2^32, not all 0
 */
export function randomFromState(state: readonly [number, number, number, number]): Random {
  const bits = xoshiro(state);
  const uniform = () => ((bits() >>> 5) * 2 ** 26 + (bits() >>> 6)) / 2 ** 53;
  let spare = Number.NaN;
  const normal = () => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) {
        const stretch = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * stretch;
        return u * stretch;
      }
    }
  };
  return { bits, uniform, normal };
}

function xoshiro([a, b, c, d]: readonly [number, number, number, number]): () => number {
  let s0 = a | 0;
  let s1 = b | 0;
  let s2 = c | 0;
  let s3 = d | 0;
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(s1, 5), 7), 9) >>> 0;
    const shifted = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= shifted;
    s3 = rotateLeft(s3, 11);
    return result;
  };
}

function rotateLeft(x: number, k: number): number {
  return (x << k) | (x >>> (32 - k));
}

function stateFromSeed(seed: bigint): [number, number, number, number] {
  let counter = BigInt.asUintN(64, seed);
  const next = () => {
    counter = BigInt.asUintN(64, counter + 0x9e3779b97f4a7c15n);
    let z = counter;
    z = BigInt.asUintN(64, (z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n);
    z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn);
    return z ^ (z >> 31n);
  };
  const first = next();
  const second = next();
  const low = (word: bigint) => Number(BigInt.asUintN(32, word));
  return [low(first), low(first >> 32n), low(second), low(second >> 32n)];
}
