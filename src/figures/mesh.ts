/**
 * The wall as a mesh that rolls out: plain arrays, allocated once and refilled in place.
 *
 * Row by row from the rim, column by column clockwise from the cut; the last column lies on the cut again, so
 * that the seam can open. Triangles face the bore's axis. Millimetres; coordinates as in bend.ts.
 */
import { bend } from './bend.ts';
import { resample, type Sampled } from './sample.ts';
import { doubtOf, type Wall } from './wall.ts';

/** What the wall looks like, drawn out once for an evaluation and a cut; the roll-out only bends it. */
export interface WallShape {
  readonly columns: number;
  readonly rows: number;
  readonly cut: number;
  /** mm */
  readonly radius: number;
  readonly length: number;
  /** (rows + 1) * (columns + 1): per side, mm; 0 where it is not known. */
  readonly deviation: Float32Array;
  /** Above 1 uncertain, `UNKNOWN_DOUBT` where nothing is known. */
  readonly doubt: Float32Array;
  /** Two standard deviations of the deviation, mm; 0 where nothing is known. */
  readonly give: Float32Array;
  /** Change of the deviation, per radian round the bore and per mm of depth. */
  readonly round: Float32Array;
  readonly along: Float32Array;
}

/** `doubt` of a place of which nothing is known. */
const UNKNOWN_DOUBT = 9;

export interface WallMesh {
  /** x, y, z of each vertex. */
  readonly position: Float32Array;
  readonly normal: Float32Array;
  /** Clock position as radians from the middle of the map, and depth in mm. */
  readonly place: Float32Array;
  readonly index: Uint32Array;
}

/** @param step mm between contours, against which doubt is judged */
export function wallShape(
  wall: Wall,
  step: number,
  cut: number,
  columns = 256,
  rows = 128,
): WallShape {
  const e = resample(wall.grid, wall.deviation, columns, rows, cut);
  const give = resample(wall.grid, wall.give, columns, rows, cut);
  const size = (columns + 1) * (rows + 1);
  const deviation = new Float32Array(size);
  const doubt = new Float32Array(size);
  const known = new Float32Array(size);
  for (let row = 0; row <= rows; row++) {
    const start = row * (columns + 1);
    for (let column = 0; column < columns; column++) {
      const [value, band] = [
        e.values[row * columns + column]!,
        give.values[row * columns + column]!,
      ];
      deviation[start + column] = Number.isFinite(value) ? value : 0;
      doubt[start + column] = Math.min(UNKNOWN_DOUBT, doubtOf(value, band, step));
      known[start + column] = band || 0;
    }
    for (const field of [deviation, doubt, known]) field[start + columns] = field[start]!;
  }
  const { radius, length } = wall;
  const slopes = slopesOf(deviation, columns, rows, length);
  return { columns, rows, cut, radius, length, deviation, doubt, give: known, ...slopes };
}

/** The doubt of a resampled wall, on the same mesh, for whoever draws its border. */
export function doubtField(e: Sampled, give: Sampled, step: number): Sampled {
  const values = e.values.map((value, i) =>
    Math.min(UNKNOWN_DOUBT, doubtOf(value, give.values[i]!, step)),
  );
  return { ...e, values };
}

function slopesOf(e: Float32Array, columns: number, rows: number, length: number) {
  const width = columns + 1;
  const round = new Float32Array(e.length);
  const along = new Float32Array(e.length);
  const perColumn = columns / (4 * Math.PI);
  for (let row = 0; row <= rows; row++) {
    const up = Math.max(row - 1, 0);
    const down = Math.min(row + 1, rows);
    const perRow = rows / (length * (down - up));
    for (let column = 0; column <= columns; column++) {
      // The last column is the first one again.
      const next = column + 1 < width ? column + 1 : 1;
      const before = column > 0 ? column - 1 : columns - 1;
      const at = row * width + column;
      round[at] = (e[row * width + next]! - e[row * width + before]!) * perColumn;
      along[at] = (e[down * width + column]! - e[up * width + column]!) * perRow;
    }
  }
  return { round, along };
}

/** Deviation at a place of the drawn wall, per side, mm; straight between the corners of the mesh. */
export function wearAt(shape: WallShape, phi: number, z: number): number {
  const { columns, rows, length, deviation } = shape;
  const turns = (phi + Math.PI) / (2 * Math.PI);
  const u = (turns - Math.floor(turns)) * columns;
  const v = Math.min(1, Math.max(0, z / length)) * rows;
  const [i, k] = [Math.min(Math.floor(u), columns - 1), Math.min(Math.floor(v), rows - 1)];
  const at = k * (columns + 1) + i;
  const row = (from: number) =>
    deviation[from]! + (u - i) * (deviation[from + 1]! - deviation[from]!);
  return row(at) + (v - k) * (row(at + columns + 1) - row(at));
}

/** The wall as it is without wear, or once all that stands proud is off; the same mesh. */
export function wallWith(shape: WallShape, kept: 'nothing' | 'low'): WallShape {
  const { columns, rows, length } = shape;
  const none = new Float32Array(shape.deviation.length);
  if (kept === 'nothing') {
    return { ...shape, deviation: none, doubt: none, give: none, round: none, along: none };
  }
  const deviation = shape.deviation.map((e) => Math.max(0, e));
  return { ...shape, deviation, ...slopesOf(deviation, columns, rows, length) };
}

/** Room for the mesh of a shape, with the parts that never change already filled in. */
export function wallMesh(shape: WallShape): WallMesh {
  const { columns, rows, length } = shape;
  const width = columns + 1;
  const size = width * (rows + 1);
  const place = new Float32Array(2 * size);
  for (let at = 0; at < size; at++) {
    place[2 * at] = ((at % width) / columns) * 2 * Math.PI - Math.PI;
    place[2 * at + 1] = (Math.floor(at / width) / rows) * length;
  }
  const index = new Uint32Array(6 * columns * rows);
  let k = 0;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = row * width + column;
      index.set([at, at + width, at + 1, at + 1, at + width, at + width + 1], k);
      k += 6;
    }
  }
  return { position: new Float32Array(3 * size), normal: new Float32Array(3 * size), place, index };
}

/**
 * Bends a shape to a roll: fills `position` and `normal`, keeps everything else.
 * @param roll 0 hole to 1 flat
 * @param exaggeration factor on the deviations; 1 is true size
 */
export function bendWall(
  shape: WallShape,
  roll: number,
  exaggeration: number,
  { position, normal }: Pick<WallMesh, 'position' | 'normal'>,
): void {
  const { columns, rows, radius, deviation, round, along } = shape;
  const width = columns + 1;
  const bent = 1 - roll;
  for (let column = 0; column < width; column++) {
    const phi = (column / columns) * 2 * Math.PI - Math.PI;
    const { at, outward } = bend(phi, radius, shape.cut, roll);
    const { x: nx, y: ny } = outward;
    for (let row = 0; row <= rows; row++) {
      const i = row * width + column;
      const k = 3 * i;
      const lift = exaggeration * deviation[i]!;
      position[k] = at.x + lift * nx;
      position[k + 1] = at.y + lift * ny;
      position[k + 2] = (-row / rows) * shape.length;
      // Across both tangents of the surface, towards the axis: (b, -a, -ac) in (clockwise, outward, out of
      // the bore), where a is the width of a radian, b and c the rise per radian and per mm.
      const a = radius + bent * lift;
      const b = exaggeration * round[i]!;
      const c = exaggeration * along[i]!;
      const size = 1 / Math.sqrt(a * a + b * b + a * a * c * c);
      normal[k] = (b * ny - a * nx) * size;
      normal[k + 1] = (-b * nx - a * ny) * size;
      normal[k + 2] = -a * c * size;
    }
  }
}
