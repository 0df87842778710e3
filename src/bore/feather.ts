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
 * @returns as long as limit; Infinity only where every limit is
 */
export function feather(limit: Field, { theta, z }: Grid, radius: number, slope: number): Field {
  const arc = (2 * Math.PI * radius) / theta.length;
  const steep = slope > 0 ? slope : 0;
  const off = z.reduce((most, at, iz) => (iz > 0 ? Math.max(most, at - z[iz - 1]!) : 0), 0);
  const slack = steep * Math.hypot(arc, off);
  const wall: Wall = { z, columns: theta.length, arc, steep, slack };
  const out = limit.slice();
  alongEdges(out, wall);
  spreadAll(limit, out, wall);
  return out;
}

interface Wall {
  readonly z: Float64Array;
  readonly columns: number;
  /** mm from column to column. */
  readonly arc: number;
  readonly steep: number;
  /** What a cone rises over the diagonal of the largest cell. */
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
 * The places nearest to the points of that line are a chain of neighbours, corners included, and none is farther off
 * the line than half of a cell's diagonal: at each the cone of q is above the least by at most twice what it rises over that
 * distance. So each cone is followed from its place over neighbours for as long as it is no higher than that.
 */
function spreadAll(limit: Field, out: Field, wall: Wall): void {
  const { columns } = wall;
  const around = { stack: stackRoom(limit.length), seen: seenRoom(limit.length) };
  around.seen.fill(0);
  for (let q = 0, iz = 0; iz < wall.z.length; iz++) {
    for (let it = 0; it < columns; it++, q++) {
      const height = limit[q]!;
      if (!(height < Number.POSITIVE_INFINITY) || out[q]! < height) continue;
      if (leads(height, out, iz, it, wall)) spread(height, iz, it, out, wall, around);
    }
  }
}

/**
 * True where the cone of q may be the least at another place. Then it is so all along the straight line there, and where that
 * line first crosses an edge of the grid between two places next to q, at a point x, the cones of both are no lower:
 * limit(q) + slope |qx| <= out(n) + slope |nx| for either. The two together, |n1 x| + |n2 x| being the edge's length, ask for
 * what is compared here, whatever x is. A side without places beyond it leads nowhere.
 */
function leads(height: number, out: Field, iz: number, it: number, wall: Wall): boolean {
  const { z, columns, arc, steep } = wall;
  const row = iz * columns;
  const back = it > 0 ? it - 1 : columns - 1;
  const ahead = it + 1 < columns ? it + 1 : 0;
  const twice = 2 * height * (1 - ROUNDING);
  const side = Math.max(out[row + back]!, out[row + ahead]!);
  for (let way = -1; way <= 1; way += 2) {
    const near = iz + way;
    if (near < 0 || near >= z.length) continue;
    const deep = Math.abs(z[near]! - z[iz]!);
    const from = near * columns;
    const corner = Math.max(out[from + back]!, out[from + ahead]!);
    if (out[from + it]! + corner - twice >= steep * (2 * deep - arc)) return true;
    if (side + corner - twice >= steep * (2 * arc - deep)) return true;
  }
  return z.length === 1;
}

interface Around {
  readonly stack: Int32Array;
  /** Which place was followed over a place last, from 1. */
  readonly seen: Int32Array;
}

const stackRoom = roomOf((length) => new Int32Array(length));
const seenRoom = roomOf((length) => new Int32Array(length));

/** Rounding of sums, as a share of them. */
const ROUNDING = 1e-12;

function spread(
  height: number,
  row: number,
  column: number,
  out: Field,
  wall: Wall,
  { stack, seen }: Around,
): void {
  const { z, columns, arc, steep } = wall;
  const slack = wall.slack + ROUNDING * height;
  const q = row * columns + column;
  const mark = q + 1;
  seen[q] = mark;
  stack[0] = q;
  let top = 1;
  while (top > 0) {
    const p = stack[--top]!;
    const iz = Math.floor(p / columns);
    const it = p - iz * columns;
    const last = Math.min(iz + 1, z.length - 1);
    for (let near = Math.max(iz - 1, 0); near <= last; near++) {
      const away = z[near]! - z[row]!;
      for (let dt = -1; dt <= 1; dt++) {
        const turned = it + dt;
        const at = turned < 0 ? columns - 1 : turned < columns ? turned : 0;
        const k = near * columns + at;
        if (seen[k] === mark) continue;
        seen[k] = mark;
        const far = Math.abs(at - column);
        const round = arc * (2 * far > columns ? columns - far : far);
        const cone = height + steep * Math.sqrt(away * away + round * round);
        if (cone > out[k]! + slack) continue;
        if (cone < out[k]!) out[k] = cone;
        stack[top++] = k;
      }
    }
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
  let top = 0;
  for (let k = 0; k < kept.length; k++) if (places[k] === SEATED && kept[k]! > top) top = kept[k]!;
  const below = kept.map((g, k) => (places[k] === SEATED ? top - g : top));
  const cones = feather(below, grid, radius, slope);
  return kept.map((g, k) => (places[k] === SEATED ? g : Math.max(0, top - cones[k]!)));
}

function isAllSeat(places: Uint8Array): boolean {
  for (let k = 0; k < places.length; k++) if (places[k] !== SEATED) return false;
  return true;
}
