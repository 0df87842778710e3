/**
 * A bushing in bores that are not round: what presses and what gapes, against its own conditions, against an independent
 * quadratic programme (highs), and where the answer is known by hand. All bores constructed.
 */
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { type PairMoves, pairMoves } from '../../src/assembly/pairMoves.ts';
import { press } from '../../src/assembly/pressing.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';

const highs = await loadHighs();
const SEED = Number(process.env.ROUNDHAND_SEED ?? 4736);
const steel = { modulus: 207000, poisson: 0.29 };

function movesFor(columns: number, inside = 50.8, far = 101.6): PairMoves {
  return pairMoves(
    { inside, outside: 63.5, ...steel },
    { inside: 63.5, outside: far, ...steel },
    columns,
  )!;
}

/** Entry i, j of the circulant, by its definition. */
function softness(byWaves: Float64Array, columns: number): number[][] {
  const entry = (d: number) =>
    byWaves.reduce(
      (sum, one, n) =>
        sum +
        (one * (n === 0 || 2 * n === columns ? 1 : 2) * Math.cos((2 * Math.PI * n * d) / columns)) /
          columns,
      0,
    );
  const first = Array.from({ length: columns }, (_, d) => entry(d));
  return first.map((_, i) => first.map((__, j) => first[(j - i + columns) % columns]!));
}

/** Crescent, oval, lobes, a dent, all leaning and drifting along the depth; some places without a wall. */
function anyBore(random: Random, rows: number, columns: number): Float64Array {
  const some = () => random.normal();
  const [press, worn, oval, three, drift] = [
    0.02 * some() + 0.02,
    0.03 * some(),
    0.01 * some(),
    0.008 * some(),
    0.02 * some(),
  ];
  const [a, b, c] = [6 * random.uniform(), 6 * random.uniform(), 6 * random.uniform()];
  const hole = Math.floor(random.uniform() * columns);
  return Float64Array.from({ length: rows * columns }, (_, k) => {
    const t = (2 * Math.PI * (k % columns)) / columns;
    const z = rows === 1 ? 0 : Math.floor(k / columns) / (rows - 1);
    if (z > 0.4 && z < 0.6 && k % columns === hole) return Number.NaN;
    return (
      press -
      Math.abs(worn) * (1 - z) * Math.max(0, Math.cos(t - a)) +
      oval * Math.cos(2 * (t - b)) +
      three * Math.cos(3 * (t - c) + 2 * z) +
      drift * z * Math.cos(t - c) +
      0.002 * some()
    );
  });
}

const depths = (rows: number) => Float64Array.from({ length: rows }, (_, i) => 4 + 2.5 * i);

/** Bushing's height over the wall where its axis came to rest. */
function restHeight(
  proud: Float64Array,
  z: Float64Array,
  columns: number,
  found: NonNullable<ReturnType<typeof press>>,
) {
  const { x, y, leanX, leanY } = found.settled;
  return proud.map((h, k) => {
    const t = (2 * Math.PI * (k % columns)) / columns;
    const depth = z[Math.floor(k / columns)]!;
    return h + (x + leanX * depth) * Math.sin(t) + (y + leanY * depth) * Math.cos(t);
  });
}

describe('what presses and what gapes', () => {
  it('meets its conditions to 1e-9 on any bore', () => {
    const random = seededRandom(SEED);
    const columns = 120;
    const moves = movesFor(columns);
    const soft = softness(moves.soft, columns);
    let gaping = 0;
    for (let trial = 0; trial < 6; trial++) {
      const rows = trial === 0 ? 1 : 9;
      const z = depths(rows);
      const proud = anyBore(random, rows, columns);
      const found = press({ proud, z, columns }, moves)!;
      const height = restHeight(proud, z, columns, found);
      const size = Math.max(...found.pressure.filter(Number.isFinite));
      const high = Math.max(...height.filter(Number.isFinite).map(Math.abs));
      if (!(size > 0)) continue;
      let [sum, fx, fy] = [0, 0, 0];
      for (let row = 0; row < rows; row++) {
        const from = row * columns;
        for (let i = 0; i < columns; i++) {
          const k = from + i;
          const p = found.pressure[k]!;
          if (Number.isNaN(proud[k]!)) {
            expect([p, found.gap[k]]).toEqual([Number.NaN, Number.NaN]);
            continue;
          }
          let give = 0;
          for (let j = 0; j < columns; j++) give += soft[i]![j]! * (found.pressure[from + j]! || 0);
          const gap = give - height[k]!;
          expect(p).toBeGreaterThanOrEqual(0);
          expect(found.gap[k]!).toBeGreaterThanOrEqual(0);
          expect(Math.abs(gap - found.gap[k]!)).toBeLessThan(1e-9 * high);
          expect(p * found.gap[k]!).toBeLessThanOrEqual(1e-9 * size * high);
          if (found.gap[k]! > 0) gaping += 1;
          const share = (rows === 1 ? 1 : row === 0 || row === rows - 1 ? 0.5 : 1) * p;
          const t = (2 * Math.PI * i) / columns;
          sum += share;
          fx += share * Math.sin(t);
          fy += share * Math.cos(t);
        }
      }
      expect(Math.hypot(fx, fy) / sum).toBeLessThan(1e-9);
    }
    expect(gaping).toBeGreaterThan(500);
  });

  it('is what an independent quadratic programme finds', () => {
    const random = seededRandom(SEED + 1);
    const columns = 24;
    const moves = movesFor(columns, 57, 80);
    let parted = 0;
    for (let trial = 0; trial < 12; trial++) {
      const rows = 3;
      const z = depths(rows);
      const proud = anyBore(random, rows, columns);
      const found = press({ proud, z, columns }, moves)!;
      const told = leastEnergy(proud, z, columns, moves);
      const size = Math.max(1, ...told);
      told.forEach((p, k) => {
        // Its conditions hold to 1e-10 of 0.01 mm; the stiffest wave makes 4e4 MPa of a millimetre: 4e-8 MPa, and rounding.
        expect(Math.abs(p - (found.pressure[k]! || 0))).toBeLessThan(1e-7 * size);
        if (p === 0) parted += 1;
      });
    }
    expect(parted).toBeGreaterThan(100);
  });

  it('is the linear answer where it touches everywhere', () => {
    // By hand: every wave by itself; an oval and three lobes on an even press fit, and an axis that was told askew.
    const columns = 120;
    const moves = movesFor(columns);
    const z = depths(5);
    const proud = Float64Array.from({ length: 5 * columns }, (_, k) => {
      const t = (2 * Math.PI * (k % columns)) / columns;
      const depth = z[Math.floor(k / columns)]!;
      return (
        0.03 +
        0.005 * Math.cos(2 * t) +
        0.002 * Math.cos(3 * t - 1) -
        (0.004 + 0.001 * depth) * Math.sin(t)
      );
    });
    const { pressure, gap, closed, settled } = press({ proud, z, columns }, moves)!;
    expect(settled.x).toBeCloseTo(0.004, 12);
    expect(settled.leanX).toBeCloseTo(0.001, 12);
    expect(Math.max(...gap)).toBe(0);
    for (let k = 0; k < pressure.length; k++) {
      const t = (2 * Math.PI * (k % columns)) / columns;
      const shares = [0.03, 0, 0.005 * Math.cos(2 * t), 0.002 * Math.cos(3 * t - 1)];
      const p = shares.reduce((sum, h, n) => sum + h / moves.soft[n]!, 0);
      const c = shares.reduce((sum, h, n) => sum + (h * moves.inside[n]!) / moves.soft[n]!, 0);
      expect(Math.abs(pressure[k]! - p)).toBeLessThan(1e-9 * 40);
      expect(Math.abs(closed[k]! - c)).toBeLessThan(1e-12);
    }
  });

  it('turns with the clock', () => {
    const random = seededRandom(SEED + 2);
    const columns = 120;
    const moves = movesFor(columns);
    const z = depths(4);
    const proud = anyBore(random, 4, columns);
    const turned = proud.map(
      (_, k) => proud[k - (k % columns) + (((k % columns) + 30) % columns)]!,
    );
    const here = press({ proud, z, columns }, moves)!;
    const there = press({ proud: turned, z, columns }, moves)!;
    there.pressure.forEach((p, k) => {
      const same = here.pressure[k - (k % columns) + (((k % columns) + 30) % columns)]!;
      if (!Number.isNaN(same)) expect(Math.abs(p - same)).toBeLessThan(1e-7);
    });
  });

  it('presses nowhere in a bore that is larger all round, and says how wide the gap is', () => {
    const proud = new Float64Array(3 * 120).fill(-0.02);
    const { pressure, gap, closed, settled } = press(
      { proud, z: depths(3), columns: 120 },
      movesFor(120),
    )!;
    expect(Math.max(...pressure)).toBe(0);
    expect(Math.max(...closed)).toBe(0);
    expect(Math.min(...gap)).toBeCloseTo(0.02, 12);
    expect(settled.unbalanced).toBe(0);
  });

  it('is none without rows, and none where heights are no numbers', () => {
    expect(press({ proud: new Float64Array(0), z: [], columns: 120 }, movesFor(120))).toBeNull();
    const proud = new Float64Array(120).fill(Number.POSITIVE_INFINITY);
    expect(press({ proud, z: [0], columns: 120 }, movesFor(120))).toBeNull();
  });
});

/**
 * The same as a quadratic programme: the least of 1/2 p' soft p - p' h over p >= 0 that push nowhere, by the share of
 * the length that each row stands for. Rows by the trapezoid; heights in 0.01 mm.
 */
function leastEnergy(
  proud: Float64Array,
  z: Float64Array,
  columns: number,
  moves: PairMoves,
): Float64Array {
  const UNIT = 0.01;
  const soft = softness(moves.soft, columns);
  const rows = z.length;
  const shareOf = (k: number) => {
    const row = Math.floor(k / columns);
    return row === 0 || row === rows - 1 ? 0.5 : 1;
  };
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (let k = 0; k < proud.length; k++) {
    const from = k - (k % columns);
    for (let j = k % columns; j < columns; j++) {
      indices.push(from + j);
      values.push((shareOf(k) * soft[k % columns]![j]!) / UNIT);
    }
    starts.push(values.length);
  }
  const rowStarts = [0];
  const rowIndices: number[] = [];
  const rowValues: number[] = [];
  for (let m = 0; m < 4; m++) {
    for (let k = 0; k < proud.length; k++) {
      const t = (2 * Math.PI * (k % columns)) / columns;
      const arm = m < 2 ? 1 : z[Math.floor(k / columns)]! / z[rows - 1]!;
      rowIndices.push(k);
      rowValues.push(shareOf(k) * arm * (m % 2 === 0 ? Math.sin(t) : Math.cos(t)));
    }
    rowStarts.push(rowValues.length);
  }
  const model = highs.createModel({
    numCols: proud.length,
    numRows: 4,
    colCost: Array.from(proud, (h, k) => (Number.isNaN(h) ? 0 : (-shareOf(k) * h) / UNIT)),
    colLower: Array.from(proud, () => 0),
    colUpper: Array.from(proud, (h) => (Number.isNaN(h) ? 0 : highs.infinity)),
    rowLower: [0, 0, 0, 0],
    rowUpper: [0, 0, 0, 0],
    matrix: {
      format: 'csr',
      numRows: 4,
      numCols: proud.length,
      starts: rowStarts,
      indices: rowIndices,
      values: rowValues,
    },
    hessian: { format: 'triangular', dimension: proud.length, starts, indices, values },
  });
  try {
    model.options.set({
      output_flag: false,
      primal_feasibility_tolerance: 1e-10,
      dual_feasibility_tolerance: 1e-10,
      qp_regularization_value: 0,
    });
    model.run();
    return Float64Array.from(model.getSolution().colValue);
  } finally {
    model.dispose();
  }
}
