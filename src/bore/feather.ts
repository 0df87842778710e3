/** Blending a ground place out to nothing: the largest removal whose slope is bounded. */
import { SEATED } from './removal.ts';
import { roomOf } from './room.ts';
import type { Field, Grid } from './types.ts';

/**
 * The largest field g <= limit with |g(p) - g(q)| <= slope * distance(p, q) for every two places: the least over all
 * q of limit(q) + slope * distance(p, q), a cone on each place. Distance is the straight line on the wall rolled flat at
 * `radius`, the shorter way round. Exact.
 *
 * @param limit mm, >= 0; Infinity where nothing bounds it
 * @param slope mm of depth a mm along the wall; not above 0: nothing may be taken beside what may not
 * @param out as long as limit; written and returned
 * @returns Infinity only where every limit is
 */
export function feather(
  limit: Field,
  { theta, z }: Grid,
  radius: number,
  slope: number,
  out: Field = new Float64Array(limit.length),
): Field {
  const arc = (2 * Math.PI * radius) / theta.length;
  const steep = slope > 0 ? slope : 0;
  const off = z.reduce((most, at, iz) => (iz > 0 ? Math.max(most, at - z[iz - 1]!) : 0), 0);
  const slack = steep * Math.max(arc, off);
  const wall: Wall = { z, columns: theta.length, arc, steep, slack };
  out.set(limit);
  alongEdges(out, wall);
  // Without a slope all ends at the least, which edges lead to as well as straight lines.
  if (steep > 0) spreadAll(limit, out, wall);
  return out;
}

interface Wall {
  readonly z: Float64Array;
  readonly columns: number;
  /** mm from column to column. */
  readonly arc: number;
  readonly steep: number;
  /** What a cone rises over the longest edge of a cell. */
  readonly slack: number;
}

/**
 * Cones as they rise along the edges of the grid, which are no shorter than straight lines: what is left is nowhere below the
 * least of all cones, and seldom much above it. A place that comes to lie below its own limit holds nothing down that
 * another place does not hold down as well (the triangle of the three).
 */
function alongEdges(out: Field, { z, columns, arc, steep }: Wall): void {
  const rise = steep * arc;
  const rows = z.length;
  for (let iz = 0; iz < rows; iz++) {
    const row = iz * columns;
    if (iz > 0) overRow(out, row, row - columns, columns, steep * (z[iz]! - z[iz - 1]!), rise);
    roundRow(out, row, columns, rise);
  }
  for (let iz = rows - 2; iz >= 0; iz--) {
    const row = iz * columns;
    const up = steep * (z[iz + 1]! - z[iz]!);
    // A row that nothing comes into is as it was left.
    if (overRow(out, row, row + columns, columns, up, rise)) roundRow(out, row, columns, rise);
  }
}

/** From the row beside, straight and over the corners; whether anything came down by it. */
function overRow(
  out: Field,
  row: number,
  from: number,
  columns: number,
  up: number,
  rise: number,
): boolean {
  const across = Math.hypot(up, rise);
  let changed = false;
  let back = out[from + columns - 1]!;
  let here = out[from]!;
  for (let it = 0; it < columns; it++) {
    const ahead = out[it + 1 < columns ? from + it + 1 : from]!;
    const straight = here + up;
    const corner = (back < ahead ? back : ahead) + across;
    const least = straight < corner ? straight : corner;
    if (least < out[row + it]!) {
      out[row + it] = least;
      changed = true;
    }
    back = here;
    here = ahead;
  }
  return changed;
}

/** Once round each way, from the least of the row: nothing that starts elsewhere is felt beyond it. */
function roundRow(out: Field, row: number, columns: number, rise: number): void {
  const end = row + columns;
  let least = row;
  for (let k = row + 1; k < end; k++) if (out[k]! < out[least]!) least = k;
  let height = out[least]!;
  for (let n = 1, k = least; n < columns; n++) {
    k = k + 1 < end ? k + 1 : row;
    height += rise;
    if (height < out[k]!) out[k] = height;
    else height = out[k]!;
  }
  height = out[least]!;
  for (let n = 1, k = least; n < columns; n++) {
    k = k > row ? k - 1 : end - 1;
    height += rise;
    if (height < out[k]!) out[k] = height;
    else height = out[k]!;
  }
}

/**
 * Takes every place down to the least of all cones.
 *
 * Where the cone of q is the least at p, it is so at every point of the straight line from q to p (the triangle again).
 * Along that line, row by row where it runs less than a column to the row and column by column else, the places nearest
 * to it are a chain of neighbours that never turns back, and none is farther off the line than half an edge of a cell: at
 * each the cone of q is above the least by at most what it rises over an edge. So each cone is followed, quarter by quarter,
 * outwards from its place for as long as it is no higher than that.
 */
function spreadAll(limit: Field, out: Field, wall: Wall): void {
  for (let iz = 0; iz < wall.z.length; iz++) {
    const less = edgesOf(wall, iz, iz - 1);
    const more = edgesOf(wall, iz, iz + 1);
    spreadRow(limit, out, iz, less, more, wall);
  }
}

/** Rounding of sums, as a share of them. */
const ROUNDING = 1e-12;

/** Of the cells between a row and one next to it, all times the slope. */
interface Edges {
  /** Index of the row's first place. */
  readonly from: number;
  /** From row to row. */
  readonly up: number;
  /** From column to column. */
  readonly rise: number;
  /** What the diagonal is longer than either: over a place straight beside q that is no higher a cone of q leads nowhere. */
  readonly leastUp: number;
  readonly leastRise: number;
}

/** Where there is no such row nothing leads there. */
function edgesOf({ z, columns, arc, steep }: Wall, iz: number, near: number): Edges {
  const rise = steep * arc;
  const isRow = near >= 0 && near < z.length;
  if (!isRow) {
    return { from: iz * columns, up: 0, rise, leastUp: Infinity, leastRise: Infinity };
  }
  const up = steep * Math.abs(z[near]! - z[iz]!);
  const across = Math.hypot(up, rise) * (1 + ROUNDING);
  return {
    from: near * columns,
    up,
    rise,
    leastUp: (up * up) / (across + rise),
    leastRise: (rise * rise) / (across + up),
  };
}

/** The cones of a row, towards lesser and towards greater depths. */
function spreadRow(
  limit: Field,
  out: Field,
  iz: number,
  less: Edges,
  more: Edges,
  wall: Wall,
): void {
  const { columns } = wall;
  const row = iz * columns;
  const rise = Math.min(less.leastRise, more.leastRise);
  for (let it = 0; it < columns; it++) {
    const height = limit[row + it]!;
    if (!(height < Number.POSITIVE_INFINITY) || out[row + it]! < height) continue;
    const base = height * (1 - ROUNDING);
    const back = row + (it > 0 ? it - 1 : columns - 1);
    const ahead = row + (it + 1 < columns ? it + 1 : 0);
    const beside = Math.max(out[back]!, out[ahead]!) - base >= rise;
    if (beside || out[less.from + it]! - base >= less.leastUp) {
      spreadQuarters(height, out, iz, it, -1, less, wall);
    }
    if (beside || out[more.from + it]! - base >= more.leastUp) {
      spreadQuarters(height, out, iz, it, 1, more, wall);
    }
  }
}

/**
 * The two quarters of a cone towards greater depths (`down` 1) or lesser (-1), where it may be the least at some place that the
 * edges do not lead to. Then it is so all along the straight line there, and where that line first crosses an edge of the
 * grid between two places next to q, at a point x, the cones of both are no lower: limit(q) + slope |qx| <= out(n) +
 * slope |nx| for either. One bounds x from below, the other from above.
 */
function spreadQuarters(
  height: number,
  out: Field,
  iz: number,
  it: number,
  down: number,
  { from, up, rise, leastUp, leastRise }: Edges,
  wall: Wall,
): void {
  const { columns } = wall;
  const base = height * (1 - ROUNDING);
  const straight = out[from + it]! - base;
  for (let turn = -1; turn <= 1; turn += 2) {
    const at = it + turn;
    const near = at < 0 ? columns - 1 : at < columns ? at : 0;
    const corner = out[from + near]! - base;
    const beside = out[iz * columns + near]! - base;
    if (
      (straight >= leastUp && straight * (corner + rise) >= up * up * (1 - ROUNDING)) ||
      (beside >= leastRise && beside * (corner + up) >= rise * rise * (1 - ROUNDING))
    ) {
      spread(height, iz, it, down, turn, out, wall);
    }
  }
}

/** One quarter of a cone: of each row those columns between the first and the last that it is followed to, and one beyond. */
function spread(
  height: number,
  row: number,
  column: number,
  down: number,
  turn: number,
  out: Field,
  { z, columns, arc, steep, slack }: Wall,
): void {
  const half = columns >> 1;
  const over = slack + ROUNDING * height;
  // Columns off q's own, of the row before.
  let first = 0;
  let last = 0;
  for (let iz = row; iz >= 0 && iz < z.length; iz += down) {
    const away = z[iz]! - z[row]!;
    const start = iz * columns;
    const reached = last + (iz === row ? 0 : 1);
    let [from, to] = [-1, -1];
    for (let off = first; off <= half && (off <= reached || to === off - 1); off++) {
      const at = column + turn * off;
      const k = start + (at < 0 ? at + columns : at < columns ? at : at - columns);
      const round = arc * off;
      const cone = height + steep * Math.sqrt(away * away + round * round);
      const least = out[k]!;
      if (!(cone <= least + over)) continue;
      if (cone < least) out[k] = cone;
      if (from < 0) from = off;
      to = off;
    }
    if (from < 0) return;
    first = from;
    last = to;
  }
}

/**
 * The least field that is `kept` on the seats and nowhere steeper than `slope`: what blending out past their edge takes at
 * least.
 *
 * @param kept mm, >= 0, itself nowhere steeper than `slope`
 * @param places `SEATED`: as it is; else: as little as the slope allows
 * @returns `kept` itself where every place is a seat
 */
export function leastBeyond(
  kept: Field,
  places: Uint8Array,
  grid: Grid,
  radius: number,
  slope: number,
): Field {
  if (isAllSeat(places)) return kept;
  const size = kept.length;
  let top = 0;
  for (let k = 0; k < size; k++) if (places[k] === SEATED && kept[k]! > top) top = kept[k]!;
  const below = belowRoom(size).subarray(0, size);
  for (let k = 0; k < size; k++) below[k] = places[k] === SEATED ? top - kept[k]! : top;
  const out = feather(below, grid, radius, slope);
  for (let k = 0; k < size; k++) {
    out[k] = places[k] === SEATED ? kept[k]! : Math.max(0, top - out[k]!);
  }
  return out;
}

const belowRoom = roomOf((length) => new Float64Array(length));

function isAllSeat(places: Uint8Array): boolean {
  for (let k = 0; k < places.length; k++) if (places[k] !== SEATED) return false;
  return true;
}
