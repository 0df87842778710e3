/**
 * The metal around the wall: both rims, the outside, and the two faces of the cut. Its inner edge is the wall's
 * own edge, so the two close without a gap at every roll.
 */
import { bend } from './bend.ts';
import type { WallMesh, WallShape } from './mesh.ts';

export interface BossMesh {
  readonly position: Float32Array;
  readonly normal: Float32Array;
  /** Clock position as radians from the middle of the map; share of the metal's thickness, 0 at the wall. */
  readonly place: Float32Array;
  /** 0 rim, 1 far rim, 2 outside, 3 cut face. */
  readonly face: Float32Array;
  readonly index: Uint32Array;
}

/** Where the piece is cut open: two clock positions, as radians from the middle of the map, `from` < `to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export const WHOLE: Span = { from: -Math.PI, to: Math.PI };

/** Metal drawn where the boss's outside is not known, as a share of the bore's radius. */
const USUAL_METAL = 0.42;
const LEAST_METAL = 0.04;

/** Thickness of the boss about the bore, mm; a usual one where the outside is not known (or no boss at all). */
export function metalAround(radius: number, bossOutside: number): number {
  const metal = bossOutside / 2 - radius;
  return metal > LEAST_METAL * radius ? metal : USUAL_METAL * radius;
}

export function bossMesh(shape: WallShape): BossMesh {
  const width = shape.columns + 1;
  const height = shape.rows + 1;
  const strips = [width, width, width, height, height];
  const size = 2 * strips.reduce((sum, n) => sum + n, 0);
  const index: number[] = [];
  let first = 0;
  strips.forEach((n, strip) => {
    // Rim, outside and second cut face are seen from the side that the order of their corners is not.
    const turn = strip % 2 === 0;
    for (let i = 0; i + 1 < n; i++) {
      const a = first + 2 * i;
      if (turn) index.push(a, a + 2, a + 1, a + 1, a + 2, a + 3);
      else index.push(a, a + 1, a + 2, a + 1, a + 3, a + 2);
    }
    first += 2 * n;
  });
  return {
    position: new Float32Array(3 * size),
    normal: new Float32Array(3 * size),
    place: new Float32Array(2 * size),
    face: new Float32Array(size),
    index: Uint32Array.from(index),
  };
}

/** Fills a boss about a wall that is bent already. @param metal thickness, mm */
export function bendBoss(
  shape: WallShape,
  roll: number,
  metal: number,
  span: Span,
  wall: Pick<WallMesh, 'position'>,
  boss: BossMesh,
): void {
  let at = 0;
  const put = (p: number[], n: number[], phi: number, share: number, face: number) => {
    boss.position.set(p, 3 * at);
    boss.normal.set(n, 3 * at);
    boss.place.set([phi, share], 2 * at);
    boss.face[at] = face;
    at++;
  };
  const { columns, rows, radius, cut, length } = shape;
  const width = columns + 1;
  const phiOf = (column: number) => (column / columns) * 2 * Math.PI - Math.PI;
  const outer = (phi: number, z: number) => {
    const { at: p, outward } = bend(phi, radius, cut, roll);
    return [p.x + metal * outward.x, p.y + metal * outward.y, z];
  };
  const inner = (i: number) => [...wall.position.subarray(3 * i, 3 * i + 3)];
  for (const [row, z, face] of [
    [0, 0, 0],
    [rows, -length, 1],
  ] as const) {
    const normal = [0, 0, face === 0 ? 1 : -1];
    for (let column = 0; column < width; column++) {
      const phi = phiOf(column);
      put(inner(row * width + column), normal, phi, 0, face);
      put(outer(phi, z), normal, phi, 1, face);
    }
  }
  for (let column = 0; column < width; column++) {
    const phi = phiOf(column);
    const { outward } = bend(phi, radius, cut, roll);
    const normal = [outward.x, outward.y, 0];
    put(outer(phi, 0), normal, phi, 1, 2);
    put(outer(phi, -length), normal, phi, 1, 2);
  }
  for (const [phi, side] of [
    [span.from, -1],
    [span.to, 1],
  ] as const) {
    const { outward } = bend(phi, radius, cut, roll);
    const normal = [side * outward.y, -side * outward.x, 0];
    const column = Math.round(((phi + Math.PI) / (2 * Math.PI)) * columns);
    for (let row = 0; row <= rows; row++) {
      put(inner(row * width + column), normal, phi, 0, 3);
      put(outer(phi, (-row / rows) * length), normal, phi, 1, 3);
    }
  }
}

/**
 * What is left of the piece when the half about the clock position `away` is taken off: its two ends, as
 * radians from the middle of the map, each on a column of the mesh.
 */
export function halfSpan(away: number, cut: number, columns: number): Span {
  const step = (2 * Math.PI) / columns;
  const snapped = (theta: number) => {
    const turns = (theta - cut) / (2 * Math.PI);
    const column = Math.round((turns - Math.floor(turns)) * columns);
    return (column % columns) * step - Math.PI;
  };
  return { from: snapped(away + Math.PI / 2), to: snapped(away - Math.PI / 2) };
}

/** Strips are pairs of an inner and an outer corner; every so many corners will do to frame them. */
const EVERY = 8;

/** Some corners all over a boss, enough to frame it, but for those that are hidden; x, y, z one after another. */
export function bossCorners(boss: BossMesh, hidden: (phi: number) => boolean): number[] {
  const out: number[] = [];
  for (let i = 0; i + 1 < boss.face.length; i += EVERY) {
    // Faces of the cut are there whatever is taken off.
    if (boss.face[i]! < 3 && hidden(boss.place[2 * i]!)) continue;
    out.push(...boss.position.subarray(3 * i, 3 * i + 6));
  }
  return out;
}
