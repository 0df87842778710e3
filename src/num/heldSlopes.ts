/** A few slopes held at once: what of a pull goes across them all, and by which forces they carry the rest. */
export class Held {
  readonly rows: number[] = [];
  private readonly slopes: Float64Array[] = [];
  /** Unit vectors square to each other that span the slopes; slope k is `sum_i r[k][i] units[i]` for i up to k. */
  private units: Float64Array[] = [];
  private r: number[][] = [];

  private readonly unknowns: number;

  constructor(unknowns: number) {
    this.unknowns = unknowns;
  }

  add(row: number, slope: Float64Array): void {
    this.rows.push(row);
    this.slopes.push(slope);
    this.frame(this.slopes.length - 1);
  }

  remove(at: number): void {
    this.rows.splice(at, 1);
    this.slopes.splice(at, 1);
    this.units = this.units.slice(0, at);
    this.r = this.r.slice(0, at);
    for (let k = at; k < this.slopes.length; k++) this.frame(k);
  }

  /** What of a pull is left square to all held slopes; none where as many as unknowns are held. */
  across(pull: Float64Array): Float64Array {
    if (this.rows.length >= this.unknowns) return new Float64Array(this.unknowns);
    return split(this.units, pull).rest;
  }

  /** Forces f with `sum f slope = -pull`, as far as the slopes span it. */
  forces(pull: Float64Array): number[] {
    const { parts } = split(this.units, pull);
    const out = parts.map((part) => -part);
    for (let k = out.length - 1; k >= 0; k--) {
      for (let i = k + 1; i < out.length; i++) out[k] = out[k]! - this.r[i]![k]! * out[i]!;
      out[k] = out[k]! / this.r[k]![k]!;
    }
    return out;
  }

  private frame(k: number): void {
    const { parts, rest } = split(this.units.slice(0, k), this.slopes[k]!);
    const length = Math.hypot(...rest);
    this.units[k] = rest.map((v) => v / length);
    this.r[k] = [...parts, length];
  }
}

/** Parts of v along unit vectors and what is left; twice, since the first time rounds. */
function split(units: readonly Float64Array[], v: Float64Array) {
  const parts = new Array<number>(units.length).fill(0);
  const rest = v.slice();
  for (let twice = 0; twice < 2; twice++) {
    for (let k = 0; k < units.length; k++) {
      const unit = units[k]!;
      let part = 0;
      for (let j = 0; j < rest.length; j++) part += unit[j]! * rest[j]!;
      parts[k] = parts[k]! + part;
      for (let j = 0; j < rest.length; j++) rest[j] = rest[j]! - part * unit[j]!;
    }
  }
  return { parts, rest };
}
