/** Best circles by asking every choice of contacts: slow, for a few dozen points at most. */

interface Round {
  center: [number, number];
  radius: number;
}

function rangeAbout(x: ArrayLike<number>, y: ArrayLike<number>, a: number, b: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  for (let i = 0; i < x.length; i++) {
    const far = Math.sqrt((x[i]! - a) ** 2 + (y[i]! - b) ** 2);
    if (far < low) low = far;
    if (far > high) high = far;
  }
  return high - low;
}

/**
 * Least range about any center that is as far from one pair of points as from another pair each:
 * where the bisector of an outer pair crosses that of an inner one, so that the narrowest ring is
 * among them. Infinite when no two bisectors cross.
 */
export function bestOfAllRings(x: ArrayLike<number>, y: ArrayLike<number>): number {
  const bisectors: [number, number, number][] = [];
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) {
      const [dx, dy] = [x[i]! - x[k]!, y[i]! - y[k]!];
      bisectors.push([dx, dy, (dx * (x[i]! + x[k]!) + dy * (y[i]! + y[k]!)) / 2]);
    }
  }
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < bisectors.length; i++) {
    const [a, b, c] = bisectors[i]!;
    for (let k = 0; k < i; k++) {
      const [d, e, f] = bisectors[k]!;
      const cross = a * e - b * d;
      if (cross === 0) continue;
      const range = rangeAbout(x, y, (c * e - f * b) / cross, (a * f - d * c) / cross);
      if (range < least) least = range;
    }
  }
  return least;
}

/** Least width of a straight strip that holds all points: one side of it lies on two of them. */
export function narrowestStrip(x: ArrayLike<number>, y: ArrayLike<number>): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) {
      const [dx, dy] = [x[i]! - x[k]!, y[i]! - y[k]!];
      const length = Math.hypot(dx, dy);
      if (length === 0) continue;
      const off = Array.from(x, (v, j) => (dx * (y[j]! - y[i]!) - dy * (v - x[i]!)) / length);
      least = Math.min(least, Math.max(...off) - Math.min(...off));
    }
  }
  return least;
}

/** Smallest circle about all points: of all on two or three of them, the smallest that holds all. */
export function smallestAround(x: ArrayLike<number>, y: ArrayLike<number>): Round {
  const rounds = [...acrossPairs(x, y), ...throughTriples(x, y)];
  const holding = rounds.filter(
    ({ center: [a, b], radius }) =>
      farthest(x, y, a, b) <= radius + 1e-12 * (radius + Math.abs(a) + Math.abs(b)),
  );
  return holding.reduce((p, q) => (q.radius < p.radius ? q : p));
}

/**
 * Circles with no point inside that cannot slip, the largest in their neighborhood each: the points
 * on them leave no gap of half a turn. `sure` ones stay so when every point moves by 1e-12 of the
 * radius or a gap by 1e-9 rad; doubtful ones are counted among all.
 */
export function inscribedOnes(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
): (Round & { sure: boolean })[] {
  return throughTriples(x, y).flatMap((round) => {
    const { center, radius } = round;
    let nearest = Number.POSITIVE_INFINITY;
    const turns: number[] = [];
    for (let i = 0; i < x.length; i++) {
      const [dx, dy] = [x[i]! - center[0], y[i]! - center[1]];
      const far = Math.hypot(dx, dy);
      if (far < nearest) nearest = far;
      if (Math.abs(far - radius) < 1e-9 * radius) turns.push(Math.atan2(dy, dx));
    }
    turns.sort((a, b) => a - b);
    const gaps = turns.map((t, i) => (i > 0 ? t - turns[i - 1]! : t + 2 * Math.PI - turns.at(-1)!));
    const gap = Math.max(...gaps) - Math.PI;
    if (gap > 1e-9 || nearest < radius * (1 - 1e-9)) return [];
    return [{ ...round, sure: gap < -1e-9 && nearest > radius * (1 - 1e-12) }];
  });
}

function farthest(x: ArrayLike<number>, y: ArrayLike<number>, a: number, b: number): number {
  let far = 0;
  for (let i = 0; i < x.length; i++) far = Math.max(far, Math.hypot(x[i]! - a, y[i]! - b));
  return far;
}

function acrossPairs(x: ArrayLike<number>, y: ArrayLike<number>): Round[] {
  const found: Round[] = [];
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) {
      const center: [number, number] = [(x[i]! + x[k]!) / 2, (y[i]! + y[k]!) / 2];
      found.push({ center, radius: Math.hypot(x[i]! - x[k]!, y[i]! - y[k]!) / 2 });
    }
  }
  return found;
}

function throughTriples(x: ArrayLike<number>, y: ArrayLike<number>): Round[] {
  const found: Round[] = [];
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) {
      for (let l = 0; l < k; l++) {
        const [bx, by] = [x[k]! - x[i]!, y[k]! - y[i]!];
        const [cx, cy] = [x[l]! - x[i]!, y[l]! - y[i]!];
        const d = 2 * (bx * cy - by * cx);
        if (d === 0) continue;
        const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
        const [u, v] = [(cy * b2 - by * c2) / d, (bx * c2 - cx * b2) / d];
        found.push({ center: [x[i]! + u, y[i]! + v], radius: Math.hypot(u, v) });
      }
    }
  }
  return found;
}
