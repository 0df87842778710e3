/**
 * All depths of a bushing in a bore as its straight axis moves: what presses where, and how stiffly it is held.
 *
 * What touched is where the next place of the axis sets out from. While the same places touch, pressures and gaps follow
 * the axis in proportion, so that most depths are followed and few are solved anew.
 */
import type { Complementary } from '../num/complementary.ts';

export interface Seat {
  /** Bushing's outside radius less the wall's, about one straight axis, mm; rows * columns, NaN where there is no wall. */
  readonly proud: Float64Array;
  /** Depths of the rows, rising, mm. */
  readonly z: ArrayLike<number>;
  /** Places round the clock, evenly from 12 o'clock; even. */
  readonly columns: number;
}

/** The four moves of an axis: to 3 and to 12 o'clock in the middle of the seat, and the same from there to its ends, mm. */
export type AxisMoves = Float64Array;

export interface Held {
  /** Mean of half of pressure times height, MPa mm. Its slope by the moves is `push`. */
  readonly energy: number;
  readonly push: AxisMoves;
  /** Greatest of `push` beside all that presses; 0 where nothing does. */
  readonly unbalanced: number;
}

export class Slices {
  readonly pressure: Float64Array;
  readonly gap: Float64Array;
  readonly middle: number;
  /** From the middle to the ends; 1 for one row. */
  readonly reach: number;
  private readonly seat: Seat;
  private readonly pair: Complementary;
  private readonly shares: Float64Array;
  private readonly shut: Uint8Array;
  private readonly touch: Uint8Array;
  /** Sine and cosine of the clock position. */
  private readonly waves: readonly [Float64Array, Float64Array];
  /** What 1 mm to 3 and to 12 o'clock makes of pressure and gap, while the same places touch. */
  private readonly presses: readonly [Float64Array, Float64Array];
  private readonly parts: readonly [Float64Array, Float64Array];
  /** Where the axis stood at each row when it was last worked out; NaN: never. */
  private readonly stood: readonly [Float64Array, Float64Array];

  constructor(seat: Seat, pair: Complementary) {
    const { proud, z, columns } = seat;
    const rows = z.length;
    this.seat = seat;
    this.pair = pair;
    this.middle = (z[0]! + z[rows - 1]!) / 2;
    this.reach = (z[rows - 1]! - z[0]!) / 2 || 1;
    this.shares = rowShares(z);
    this.shut = Uint8Array.from(proud, (h) => (Number.isNaN(h) ? 1 : 0));
    this.touch = this.shut.map((one) => 1 - one);
    const turns = Float64Array.from({ length: columns }, (_, i) => (2 * Math.PI * i) / columns);
    this.waves = [turns.map(Math.sin), turns.map(Math.cos)];
    this.pressure = new Float64Array(proud.length);
    this.gap = new Float64Array(proud.length);
    this.presses = [new Float64Array(proud.length), new Float64Array(proud.length)];
    this.parts = [new Float64Array(proud.length), new Float64Array(proud.length)];
    this.stood = [new Float64Array(rows).fill(Number.NaN), new Float64Array(rows)];
  }

  /** The axis that balances the seat did it touch everywhere and could it pull. */
  evenly(): AxisMoves {
    const sums = new Float64Array(6);
    const { proud, columns } = this.seat;
    for (let row = 0; row < this.shares.length; row++) {
      const arm = this.arm(row);
      const share = this.shares[row]!;
      for (const a of [0, 1] as const) {
        let sum = 0;
        for (let i = 0; i < columns; i++) {
          const h = proud[row * columns + i]!;
          sum += Number.isNaN(h) ? 0 : h * this.waves[a][i]!;
        }
        sums[a] = sums[a]! - (share * 2 * sum) / columns;
        sums[a + 2] = sums[a + 2]! - (share * arm * 2 * sum) / columns;
      }
      sums[4] = sums[4]! + share * arm;
      sums[5] = sums[5]! + share * arm * arm;
    }
    const [m, s] = [sums[4]!, sums[5]!];
    const spread = s - m * m;
    if (!(spread > 0)) return Float64Array.of(sums[0]!, sums[1]!, 0, 0);
    const leans = [0, 1].map((a) => (sums[a + 2]! - m * sums[a]!) / spread);
    return Float64Array.of(
      sums[0]! - m * leans[0]!,
      sums[1]! - m * leans[1]!,
      leans[0]!,
      leans[1]!,
    );
  }

  /** Moves the axis. @returns null where heights are no numbers */
  at(moves: AxisMoves): Held | null {
    const { columns } = this.seat;
    const push = new Float64Array(4);
    let [energy, all] = [0, 0];
    for (let row = 0; row < this.shares.length; row++) {
      const arm = this.arm(row);
      const x = moves[0]! + arm * moves[2]!;
      const y = moves[1]! + arm * moves[3]!;
      if (!this.follow(row, x, y) && !this.anew(row, x, y)) return null;
      const share = this.shares[row]! / columns;
      const [sines, cosines] = this.waves;
      let [sum, px, py, stored] = [0, 0, 0, 0];
      for (let i = 0, k = row * columns; i < columns; i++, k++) {
        const p = this.pressure[k]!;
        if (p === 0) continue;
        sum += p;
        px += p * sines[i]!;
        py += p * cosines[i]!;
        stored += p * (this.seat.proud[k]! + x * sines[i]! + y * cosines[i]!);
      }
      energy += (share * stored) / 2;
      all += share * sum;
      for (const [a, of] of [px, py].entries()) {
        push[a] = push[a]! + share * of;
        push[a + 2] = push[a + 2]! + share * of * arm;
      }
    }
    const unbalanced = all > 0 ? Math.max(...push.map(Math.abs)) / all : 0;
    return { energy, push, unbalanced };
  }

  /** Change of `push` with the moves, 4 * 4 row-major, where the axis stands. */
  stiffness(): Float64Array {
    const { columns } = this.seat;
    const stiff = new Float64Array(16);
    for (let row = 0; row < this.shares.length; row++) {
      const arm = this.arm(row);
      const share = this.shares[row]! / columns;
      for (let ab = 0; ab < 4; ab++) {
        const [a, b] = [ab >> 1, ab & 1];
        let sum = 0;
        const presses = this.presses[a]!;
        const wave = this.waves[b]!;
        for (let i = 0, k = row * columns; i < columns; i++, k++) sum += presses[k]! * wave[i]!;
        sum *= share;
        stiff[a * 4 + b] = stiff[a * 4 + b]! + sum;
        stiff[a * 4 + b + 2] = stiff[a * 4 + b + 2]! + sum * arm;
        stiff[(a + 2) * 4 + b] = stiff[(a + 2) * 4 + b]! + sum * arm;
        stiff[(a + 2) * 4 + b + 2] = stiff[(a + 2) * 4 + b + 2]! + sum * arm * arm;
      }
    }
    return stiff;
  }

  private arm(row: number): number {
    return (this.seat.z[row]! - this.middle) / this.reach;
  }

  /** @returns false where other places would touch, or nothing is known yet; then nothing has changed */
  private follow(row: number, x: number, y: number): boolean {
    const { columns } = this.seat;
    const dx = x - this.stood[0][row]!;
    const dy = y - this.stood[1][row]!;
    if (!Number.isFinite(dx)) return false;
    if (dx === 0 && dy === 0) return true;
    const from = row * columns;
    const [px, py] = this.presses;
    const [gx, gy] = this.parts;
    for (let k = from; k < from + columns; k++) {
      if (this.touch[k]) {
        if (!(this.pressure[k]! + dx * px[k]! + dy * py[k]! >= 0)) return false;
      } else if (!this.shut[k]) {
        if (!(this.gap[k]! + dx * gx[k]! + dy * gy[k]! >= 0)) return false;
      }
    }
    for (let k = from; k < from + columns; k++) {
      this.pressure[k] = this.pressure[k]! + dx * px[k]! + dy * py[k]!;
      this.gap[k] = this.gap[k]! + dx * gx[k]! + dy * gy[k]!;
    }
    this.stood[0][row] = x;
    this.stood[1][row] = y;
    return true;
  }

  private anew(row: number, x: number, y: number): boolean {
    const { columns, proud } = this.seat;
    const [from, to] = [row * columns, (row + 1) * columns];
    const [sines, cosines] = this.waves;
    const height = new Float64Array(columns);
    for (let i = 0; i < columns; i++) {
      const h = proud[from + i]!;
      height[i] = Number.isNaN(h) ? 0 : h + x * sines[i]! + y * cosines[i]!;
    }
    const touch = this.touch.subarray(from, to);
    // The first time, what touches at the depth before is the likeliest.
    if (row > 0 && Number.isNaN(this.stood[0][row]!)) {
      touch.set(this.touch.subarray(from - columns, from));
      for (let i = 0; i < columns; i++) if (Number.isNaN(proud[from - columns + i]!)) touch[i] = 1;
    }
    const part = (all: Float64Array) => all.subarray(from, to);
    const shut = this.shut.subarray(from, to);
    if (!this.pair.solve(height, shut, touch, part(this.pressure), part(this.gap))) return false;
    for (const a of [0, 1] as const) {
      this.pair.wave(this.waves[a], 1, part(this.presses[a]), part(this.parts[a]));
    }
    this.stood[0][row] = x;
    this.stood[1][row] = y;
    return true;
  }
}

/** What of the length each row stands for; one row for all of it. */
function rowShares(z: ArrayLike<number>): Float64Array {
  const rows = z.length;
  if (rows === 1) return Float64Array.of(1);
  const shares = new Float64Array(rows);
  for (let row = 0; row + 1 < rows; row++) {
    const half = (z[row + 1]! - z[row]!) / 2 / (z[rows - 1]! - z[0]!);
    shares[row] = shares[row]! + half;
    shares[row + 1] = shares[row + 1]! + half;
  }
  return shares;
}
