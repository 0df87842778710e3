/**
 * Two bodies round a circle that may press on each other and may part, but never pull: `p >= 0`, `g >= 0`, `p g = 0` and
 * `g = soft p - h`, with `soft` a positive definite circulant. Solved exactly by block principal pivoting (Judice and
 * Pires, Computers and Operations Research 21, 1994, 587-596): all places on the wrong side change it, one at a time
 * where that goes round in circles, so that it always ends.
 */
import { choleskyInPlace, solveLower, solveLowerTransposed } from './cholesky.ts';
import { type Circulant, circulant, turnBy } from './circulant.ts';

/** Rounds that may pass without fewer places being wrong. */
const PATIENCE = 8;
const MOST_ROUNDS = 4000;
/** Of the largest: less than this on the wrong side is rounding. */
const ROUNDING = 1e-13;

export class Complementary {
  readonly count: number;
  private readonly byWaves: Float64Array;
  private readonly soft: Circulant;
  private readonly stiff: Circulant;
  /** What h would make of p, did all touch. */
  private readonly pressed: Float64Array;
  private readonly few: Float64Array;
  private readonly factor: Float64Array;
  /** The places that touch (`side` 1) or that do not (0), whichever are fewer, in order; `factor` is theirs. */
  private readonly places: Int32Array;
  private side = 0;
  private size = 0;

  /**
   * @param byWaves of `soft`, n = 0 ... count / 2, each above 0
   * @param count even
   */
  constructor(byWaves: Float64Array, count: number) {
    this.count = count;
    this.byWaves = byWaves;
    this.soft = circulant(byWaves, count);
    this.stiff = circulant(
      byWaves.map((one) => 1 / one),
      count,
    );
    this.pressed = new Float64Array(count);
    this.few = new Float64Array(count);
    this.factor = new Float64Array(count * count);
    this.places = new Int32Array(count);
  }

  /**
   * @param h heights; what stands at a shut place does not matter, but is a number
   * @param shut 1 where nothing can press (a hole): p is 0 there, and g has any sign
   * @param touch 1 where p may be above 0: where to set out from, overwritten by where it ends
   * @param p overwritten
   * @param g overwritten
   * @returns false where it did not end: h is no number
   */
  solve(
    h: Float64Array,
    shut: Uint8Array,
    touch: Uint8Array,
    p: Float64Array,
    g: Float64Array,
  ): boolean {
    for (let i = 0; i < this.count; i++) if (shut[i]) touch[i] = 0;
    turnBy(this.stiff, h, this.pressed);
    let fewest = this.count + 1;
    let patience = PATIENCE;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      if (!this.hold(touch)) return false;
      this.give(h, this.pressed, p, g);
      const wrong = wrongPlaces({ h, shut, touch, p, g });
      if (wrong.length === 0) return Number.isFinite(p[0]! + g[0]!);
      patience = wrong.length < fewest ? PATIENCE : patience - 1;
      fewest = Math.min(fewest, wrong.length);
      for (const i of patience < 0 ? wrong.slice(-1) : wrong) touch[i] = touch[i] ? 0 : 1;
    }
    return false;
  }

  /**
   * p and g for one wave h while what touches stays as `solve` left it, whatever their signs.
   *
   * @param h a cosine or sine of n waves
   */
  wave(h: Float64Array, n: number, p: Float64Array, g: Float64Array): void {
    for (let i = 0; i < this.count; i++) this.pressed[i] = h[i]! / this.byWaves[n]!;
    this.give(h, this.pressed, p, g);
  }

  private hold(touch: Uint8Array): boolean {
    const { count, places, factor } = this;
    let touching = 0;
    for (let i = 0; i < count; i++) touching += touch[i]!;
    this.side = 2 * touching < count ? 1 : 0;
    this.size = this.side === 1 ? touching : count - touching;
    const { side, size } = this;
    for (let i = 0, k = 0; i < count; i++) if (touch[i] === side) places[k++] = i;
    const { twice } = side === 1 ? this.soft : this.stiff;
    for (let a = 0; a < size; a++) {
      const from = count - places[a]!;
      for (let b = 0; b <= a; b++) factor[a * size + b] = twice[from + places[b]!]!;
    }
    return choleskyInPlace(factor, size);
  }

  private give(h: Float64Array, pressed: Float64Array, p: Float64Array, g: Float64Array): void {
    const { count, places, few, factor, side, size } = this;
    // Forces where it touches; or gaps where it does not.
    for (let k = 0; k < size; k++) few[k] = side === 1 ? h[places[k]!]! : -pressed[places[k]!]!;
    solveLower(factor, size, few, few);
    solveLowerTransposed(factor, size, few, few);
    const [own, other] = side === 1 ? [p, g] : [g, p];
    const { twice } = side === 1 ? this.soft : this.stiff;
    for (let i = 0; i < count; i++) other[i] = side === 1 ? -h[i]! : pressed[i]!;
    for (let k = 0; k < size; k++) {
      const from = count - places[k]!;
      const by = few[k]!;
      for (let i = 0; i < count; i++) other[i] = other[i]! + twice[from + i]! * by;
    }
    own.fill(0);
    for (let k = 0; k < size; k++) {
      own[places[k]!] = few[k]!;
      other[places[k]!] = 0;
    }
  }
}

interface State {
  readonly h: Float64Array;
  readonly shut: Uint8Array;
  readonly touch: Uint8Array;
  readonly p: Float64Array;
  readonly g: Float64Array;
}

/** Places that pull, or that lie in one another; what is only rounding becomes 0. */
function wrongPlaces({ h, shut, touch, p, g }: State): number[] {
  const leastP = -ROUNDING * largest(p);
  const leastG = -ROUNDING * Math.max(largest(g), largest(h));
  const wrong: number[] = [];
  for (let i = 0; i < p.length; i++) {
    if (touch[i]) {
      if (p[i]! < leastP) wrong.push(i);
      else p[i] = Math.max(0, p[i]!);
    } else if (!shut[i]) {
      if (g[i]! < leastG) wrong.push(i);
      else g[i] = Math.max(0, g[i]!);
    }
  }
  return wrong;
}

function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) most = Math.max(most, Math.abs(values[i]!));
  return most;
}
