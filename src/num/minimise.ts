/** What a search without derivatives found. */
export interface Minimum {
  /** best point met, length of x0 */
  x: number[];
  /** f at x; +Infinity when f was never finite */
  value: number;
  /** steps of the simplex taken */
  iterations: number;
}

/** When to stop. */
export interface NelderMeadLimits {
  /** most steps of the simplex; each calls f once or twice, or n + 2 times when it shrinks */
  maxIterations: number;
  /**
   * stops when, over the simplex, f differs by at most tolerance * (|f| + tolerance) and every
   * variable by at most tolerance * (its first step)
   */
  tolerance: number;
}

interface Vertex {
  x: number[];
  value: number;
}

/**
 * Smallest value of a function of a few variables by the downhill simplex of Nelder and Mead
 * (The Computer Journal 7, 1965, 308-313), with the usual factors 1, 2, 1/2, 1/2. It draws no
 * random numbers: the same input gives the same answer.
 *
 * @param f any function; NaN and infinities count as worse than every number
 * @param x0 where to start
 * @param step first size of the simplex along each variable, one for all or one each; not 0
 */
export function nelderMead(
  f: (x: number[]) => number,
  x0: readonly number[],
  step: number | readonly number[],
  { maxIterations, tolerance }: NelderMeadLimits,
): Minimum {
  const steps = x0.map((_, i) => Math.abs(typeof step === 'number' ? step : step[i]!));
  const evaluate = (x: number[]): Vertex => {
    const value = f(x);
    return { x, value: Number.isFinite(value) ? value : Number.POSITIVE_INFINITY };
  };
  const simplex = [evaluate([...x0])];
  for (let i = 0; i < x0.length; i++) {
    simplex.push(evaluate(x0.map((v, j) => (i === j ? v + steps[i]! : v))));
  }
  simplex.sort(byValue);
  let iterations = 0;
  while (x0.length > 0 && iterations < maxIterations && !settled(simplex, steps, tolerance)) {
    advance(simplex, evaluate);
    simplex.sort(byValue);
    iterations++;
  }
  return { x: simplex[0]!.x, value: simplex[0]!.value, iterations };
}

/** Infinity - Infinity is NaN, so equal values are told first. */
function byValue(a: Vertex, b: Vertex): number {
  return a.value === b.value ? 0 : a.value - b.value;
}

function settled(simplex: Vertex[], steps: number[], tolerance: number): boolean {
  const best = simplex[0]!;
  const worst = simplex[simplex.length - 1]!;
  if (!(worst.value - best.value <= tolerance * (Math.abs(best.value) + tolerance))) return false;
  return simplex.every((v) =>
    v.x.every((value, i) => Math.abs(value - best.x[i]!) <= tolerance * steps[i]!),
  );
}

/** Replaces the worst vertex, or shrinks all towards the best. `simplex` comes sorted. */
function advance(simplex: Vertex[], evaluate: (x: number[]) => Vertex): void {
  const n = simplex.length - 1;
  const best = simplex[0]!;
  const worst = simplex[n]!;
  const centre = best.x.map((_, i) => {
    let sum = 0;
    for (let k = 0; k < n; k++) sum += simplex[k]!.x[i]!;
    return sum / n;
  });
  const along = (t: number) => evaluate(centre.map((c, i) => c + t * (worst.x[i]! - c)));
  const reflected = along(-1);
  if (reflected.value < best.value) {
    const expanded = along(-2);
    simplex[n] = expanded.value < reflected.value ? expanded : reflected;
    return;
  }
  if (reflected.value < simplex[n - 1]!.value) {
    simplex[n] = reflected;
    return;
  }
  const outside = reflected.value < worst.value;
  const contracted = along(outside ? -0.5 : 0.5);
  if (contracted.value < (outside ? reflected.value : worst.value)) {
    simplex[n] = contracted;
    return;
  }
  for (let k = 1; k <= n; k++) {
    simplex[k] = evaluate(simplex[k]!.x.map((v, i) => (v + best.x[i]!) / 2));
  }
}
