/**
 * How the long way of an oval goes along the depth: the same all the way, turning steadily, or all at once.
 *
 * An oval's cosine and sine (a, b) point along twice the angle of its long way, since half a turn
 * brings it back onto itself; everything here is done on that doubled angle. The amplitude at each
 * depth is free, so that wear may fade, but never negative: an oval the other way about is an oval
 * turned by a quarter.
 */

/** Second lobe at one depth, a cos 2 theta + b sin 2 theta, and what is not known of it. */
export interface OvalAt {
  readonly z: number;
  readonly a: number;
  readonly b: number;
  readonly aa: number;
  readonly ab: number;
  readonly bb: number;
}

/** One way to explain the directions. Angles are those of the long way in radians, 0 to pi. */
export interface TurnModel {
  kind: 'same' | 'steady' | 'at-once';
  /** chi-square and unknowns * ln(depths): Schwarz's criterion, less what all models share */
  criterion: number;
  chiSquare: number;
  /** at the first and the last depth */
  first: number;
  last: number;
  /** from first to last, -pi/2 to pi/2 (a steady turn may be larger), positive with theta */
  turn: number;
  /** one standard deviation of `first`, `last` and `turn`, from how chi-square rises; large where ovals are small */
  firstSd: number;
  lastSd: number;
  turnSd: number;
  /** between the depths with these places in the list the turn lies: at - 1 and at; NaN for the others */
  at: number;
}

const FULL = 2 * Math.PI;
/** Steps of the search over a doubled angle; a golden search goes on from the best. */
const STEPS = 36;
/** A steady turn is looked for up to this much from first to last depth, real angle: four hours. */
const MOST_TURN = (2 * Math.PI) / 3;
const TURN_STEPS = 12;

/**
 * All three models, the best first.
 *
 * @param ovals by rising depth, at least three, covariances positive definite
 * @returns empty for fewer than three depths
 */
export function turnModels(ovals: readonly OvalAt[]): TurnModel[] {
  const count = ovals.length;
  if (count < 3) return [];
  const quads = ovals.map(quadratic);
  const cost = Math.log(count);
  const same = directionOf(quads);
  const models: TurnModel[] = [
    model('same', cost, same.value, same, same, 0),
    steady(ovals, quads, cost),
    atOnce(quads, cost),
  ];
  return models.sort((p, q) => p.criterion - q.criterion);
}

function model(
  kind: TurnModel['kind'],
  cost: number,
  chiSquare: number,
  first: Found,
  last: Found,
  turnSd: number,
  at = Number.NaN,
): TurnModel {
  const unknowns = { same: 1, steady: 2, 'at-once': 3 }[kind];
  const real = (doubled: number) => wrapped(doubled) / 2;
  const apart = last.at - first.at;
  return {
    kind,
    criterion: chiSquare + unknowns * cost,
    chiSquare,
    first: real(first.at),
    last: real(last.at),
    turn: (kind === 'at-once' ? wrapped(apart + Math.PI) - Math.PI : apart) / 2,
    firstSd: first.sd / 2,
    lastSd: last.sd / 2,
    turnSd: turnSd / 2,
    at,
  };
}

function wrapped(angle: number): number {
  return angle - FULL * Math.floor(angle / FULL);
}

/** Chi-square of one depth for a doubled direction, the amplitude being the best one that is not negative. */
type Quad = (doubled: number) => number;

function quadratic({ a, b, aa, ab, bb }: OvalAt): Quad {
  const det = aa * bb - ab * ab;
  const [p, q, r] = [bb / det, -ab / det, aa / det];
  const whole = p * a * a + 2 * q * a * b + r * b * b;
  return (doubled) => {
    const [c, s] = [Math.cos(doubled), Math.sin(doubled)];
    const along = c * (p * a + q * b) + s * (q * a + r * b);
    if (!(along > 0)) return whole;
    return Math.max(0, whole - along ** 2 / (p * c * c + 2 * q * c * s + r * s * s));
  };
}

interface Least {
  readonly at: number;
  readonly value: number;
}

/** A doubled angle and one standard deviation of it. */
interface Found {
  readonly at: number;
  readonly sd: number;
}

/** The doubled direction that explains some depths best. */
function directionOf(quads: readonly Quad[]): Least & Found {
  const total = (doubled: number) => quads.reduce((sum, quad) => sum + quad(doubled), 0);
  let best: Least = { at: 0, value: Number.POSITIVE_INFINITY };
  for (let k = 0; k < STEPS; k++) {
    const at = (FULL * k) / STEPS;
    const value = total(at);
    if (value < best.value) best = { at, value };
  }
  const found = golden(total, best.at, FULL / STEPS);
  return { ...found, sd: spreadAt(total, found) };
}

/** From the curvature of chi-square over 0.04 rad, at most what an unknown direction has (pi / sqrt 3). */
function spreadAt(chiSquare: (x: number) => number, { at, value }: Least): number {
  const by = 0.02;
  const curvature = (chiSquare(at + by) - 2 * value + chiSquare(at - by)) / (by * by);
  const most = Math.PI / Math.sqrt(3);
  return curvature > 0 ? Math.min(most, Math.sqrt(2 / curvature)) : most;
}

/** Least value within one step either way. */
function golden(f: (x: number) => number, middle: number, reach: number): Least {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [middle - reach, middle + reach];
  let [a, b] = [high - ratio * (high - low), low + ratio * (high - low)];
  let [fa, fb] = [f(a), f(b)];
  // 25 cuts by 0.618 leave 6e-6 of the reach; near a least value that is 4e-11 of how far it falls.
  for (let k = 0; k < 25; k++) {
    if (fa <= fb) {
      [high, b, fb] = [b, a, fa];
      a = high - ratio * (high - low);
      fa = f(a);
    } else {
      [low, a, fa] = [a, b, fb];
      b = low + ratio * (high - low);
      fb = f(b);
    }
  }
  return fa <= fb ? { at: a, value: fa } : { at: b, value: fb };
}

function steady(ovals: readonly OvalAt[], quads: readonly Quad[], cost: number): TurnModel {
  const [from, to] = [ovals[0]!.z, ovals[ovals.length - 1]!.z];
  const shares = ovals.map(({ z }) => (z - from) / (to - from) - 0.5);
  /** Best middle direction for a doubled turn over the whole depth. */
  const forTurn = (turn: number) =>
    directionOf(quads.map((quad, i) => (d: number) => quad(d + turn * shares[i]!)));
  let best = { turn: 0, value: forTurn(0).value };
  const step = (2 * MOST_TURN) / TURN_STEPS;
  for (let k = -TURN_STEPS; k <= TURN_STEPS; k++) {
    const { value } = forTurn(k * step);
    if (value < best.value) best = { turn: k * step, value };
  }
  const found = golden((turn) => forTurn(turn).value, best.turn, step);
  const turnSd = spreadAt((turn) => forTurn(turn).value, found);
  const middle = forTurn(found.at);
  // Of the middle direction and the turn, nearly independent of each other there.
  const sd = Math.hypot(middle.sd, turnSd / 2);
  const end = (share: number): Found => ({ at: middle.at + share * found.at, sd });
  return model('steady', cost, found.value, end(-0.5), end(0.5), turnSd);
}

function atOnce(quads: readonly Quad[], cost: number): TurnModel {
  let best: TurnModel | null = null;
  for (let at = 1; at < quads.length; at++) {
    const above = directionOf(quads.slice(0, at));
    const below = directionOf(quads.slice(at));
    const value = above.value + below.value;
    if (best !== null && !(value < best.chiSquare)) continue;
    best = model('at-once', cost, value, above, below, Math.hypot(above.sd, below.sd), at);
  }
  return best!;
}
