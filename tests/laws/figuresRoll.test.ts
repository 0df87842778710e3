/** What the roll-out must keep at every step, whatever the bore. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bend, fromMiddle, middleOf, posed } from '../../src/figures/bend.ts';
import { bendBoss, bossMesh, halfSpan, metalAround, WHOLE } from '../../src/figures/boss.ts';
import { exaggerations } from '../../src/figures/exaggeration.ts';
import { bendWall, type WallMesh, wallMesh, wallShape } from '../../src/figures/mesh.ts';
import { rangeOf, wallOf } from '../../src/figures/wall.ts';
import { LENGTH, madeSurvey, TARGET } from '../fixtures/evaluation.ts';

const RADIUS = TARGET / 2;
const COLUMNS = 96;
const ROWS = 24;
const STEP = 0.0254;
const ROLLS = Array.from({ length: 41 }, (_, i) => i / 40);
const CUTS = [Math.PI, 0.3, (3 * Math.PI) / 2];

const round = wallOf(madeSurvey({ deviation: () => 0 }))!;
const worn = wallOf(madeSurvey())!;

const at = (mesh: WallMesh, i: number): [number, number, number] => [
  mesh.position[3 * i]!,
  mesh.position[3 * i + 1]!,
  mesh.position[3 * i + 2]!,
];
const apart = (a: readonly number[], b: readonly number[]) =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);

function bent(wall: typeof round, cut: number, roll: number, exaggeration: number) {
  const shape = wallShape(wall, STEP, cut, COLUMNS, ROWS);
  const mesh = wallMesh(shape);
  bendWall(shape, roll, exaggeration, mesh);
  return { shape, mesh };
}

/** Twice the area of each triangle as a vector, and the mean of its corners' normals. */
function faces(mesh: Pick<WallMesh, 'position' | 'normal' | 'index'>) {
  const { position, normal, index } = mesh;
  const vec = (from: Float32Array, i: number) => [...from.subarray(3 * i, 3 * i + 3)];
  return Array.from({ length: index.length / 3 }, (_, t) => {
    const corners = [0, 1, 2].map((k) => index[3 * t + k]!);
    const [a, b, c] = corners.map((i) => vec(position, i)) as [number[], number[], number[]];
    const u = b.map((x, k) => x - a[k]!);
    const v = c.map((x, k) => x - a[k]!);
    const cross = [
      u[1]! * v[2]! - u[2]! * v[1]!,
      u[2]! * v[0]! - u[0]! * v[2]!,
      u[0]! * v[1]! - u[1]! * v[0]!,
    ];
    const n = [0, 1, 2].map((k) => corners.reduce((sum, i) => sum + normal[3 * i + k]!, 0) / 3);
    return { cross, n, facing: cross.reduce((sum, x, k) => sum + x * n[k]!, 0), corners };
  });
}

describe('the roll-out', () => {
  it('keeps every arc, every depth and the whole way round within 0.1 % at every step', () => {
    // A chord of a column's arc is short of it by angle^2 / 24: 0.018 % at 96 columns.
    const arc = (2 * Math.PI * RADIUS) / COLUMNS;
    const deep = LENGTH / ROWS;
    let worst = { arc: 0, deep: 0, round: 0 };
    for (const cut of CUTS) {
      for (const roll of ROLLS) {
        const { mesh } = bent(round, cut, roll, 80);
        for (let row = 0; row <= ROWS; row++) {
          let all = 0;
          for (let column = 0; column < COLUMNS; column++) {
            const i = row * (COLUMNS + 1) + column;
            const one = apart(at(mesh, i), at(mesh, i + 1));
            all += one;
            const below = row === ROWS ? deep : apart(at(mesh, i), at(mesh, i + COLUMNS + 1));
            worst = {
              ...worst,
              arc: Math.max(worst.arc, Math.abs(one / arc - 1)),
              deep: Math.max(worst.deep, Math.abs(below / deep - 1)),
            };
          }
          worst.round = Math.max(worst.round, Math.abs(all / (COLUMNS * arc) - 1));
        }
      }
    }
    expect(worst.arc).toBeLessThan(1e-3);
    expect(worst.round).toBeLessThan(1e-3);
    expect(worst.deep).toBeLessThan(1e-4);
  });

  it('inverts no triangle, nor lets one vanish, and every one faces the axis of the bore', () => {
    const { least, greatest } = rangeOf(worn);
    const { chosen } = exaggerations(least, greatest, RADIUS, metalAround(RADIUS, Number.NaN));
    expect(chosen).toBeGreaterThan(1);
    // Twice the area of a flat cell's triangle: deformed, none is to shrink to a tenth of it.
    const cell = ((2 * Math.PI * RADIUS) / COLUMNS) * (LENGTH / ROWS);
    for (const factor of [1, chosen]) {
      for (const roll of ROLLS) {
        const { mesh } = bent(worn, Math.PI, roll, factor);
        const seen = {
          facing: Number.POSITIVE_INFINITY,
          area: Number.POSITIVE_INFINITY,
          inward: 1,
        };
        for (const { facing, corners, cross } of faces(mesh)) {
          seen.facing = Math.min(seen.facing, facing);
          seen.area = Math.min(seen.area, Math.hypot(...cross));
          const { outward } = bend(mesh.place[2 * corners[0]!]!, RADIUS, Math.PI, roll);
          const i = 3 * corners[0]!;
          const inward = -(mesh.normal[i]! * outward.x + mesh.normal[i + 1]! * outward.y);
          seen.inward = Math.min(seen.inward, inward);
        }
        expect(seen.facing).toBeGreaterThan(0);
        expect(seen.area).toBeGreaterThan(0.1 * cell);
        expect(seen.inward).toBeGreaterThan(0.3);
      }
    }
  });

  it('has normals square to the bent surface', () => {
    const oval = wallOf(
      madeSurvey({ deviation: (theta, z) => 0.1 * Math.cos(2 * theta) * Math.exp(-z / 22) }),
    )!;
    for (const roll of [0, 0.37, 1]) {
      const { mesh } = bent(oval, Math.PI, roll, 10);
      for (const { cross, facing, n } of faces(mesh)) {
        const cosine = facing / (Math.hypot(...cross) * Math.hypot(...n));
        // Over a cell the hole turns by 3.75 degrees and the tenfold oval, at most 4 mm / 25.4 mm rise a
        // radian a radian, by 0.6; a face stands half of that off its corners.
        expect(cosine).toBeGreaterThan(Math.cos((2.5 * Math.PI) / 180));
      }
    }
  });

  it('moves continuously', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (phi, roll, cut) => {
          const a = bend(phi, RADIUS, cut, roll);
          const b = bend(phi, RADIUS, cut, roll + 1e-6);
          // d/dt of the place is at most R phi^2 / 2 along each of two directions.
          const limit = 1e-6 * RADIUS * Math.PI * Math.PI;
          expect(Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y)).toBeLessThan(limit);
        },
      ),
    );
  });

  it('closes at the cut as a hole, and lifts wear along the normal by the stated factor', () => {
    const { mesh, shape } = bent(worn, Math.PI, 0, 50);
    for (let row = 0; row <= ROWS; row++) {
      const first = row * (COLUMNS + 1);
      expect(apart(at(mesh, first), at(mesh, first + COLUMNS))).toBeLessThan(1e-4);
      for (let column = 0; column <= COLUMNS; column++) {
        const [x, y] = at(mesh, first + column);
        const r = RADIUS + 50 * shape.deviation[first + column]!;
        expect(Math.hypot(x, y)).toBeCloseTo(r, 4);
      }
    }
  });
});

describe('no part is mirrored', () => {
  it('seen from face A with 12 on top, 3 o’clock is on the right and depth goes away', () => {
    const { mesh } = bent(round, Math.PI, 0, 1);
    const column = (theta: number) =>
      Math.round(((fromMiddle(theta, Math.PI) + Math.PI) / (2 * Math.PI)) * COLUMNS);
    const [x3, y3, z3] = at(mesh, column(Math.PI / 2));
    expect(x3).toBeCloseTo(RADIUS, 3);
    expect(y3).toBeCloseTo(0, 3);
    expect(z3).toBeCloseTo(0, 9);
    const [x12, y12] = at(mesh, column(0));
    expect(x12).toBeCloseTo(0, 3);
    expect(y12).toBeCloseTo(RADIUS, 3);
    const [, , bottom] = at(mesh, ROWS * (COLUMNS + 1));
    expect(bottom).toBeCloseTo(-LENGTH, 4);
  });

  it('the flat end is the map: x the arc from the cut, y the depth, as the camera sees it', () => {
    for (const cut of CUTS) {
      const { mesh } = bent(round, cut, 1, 1);
      for (let row = 0; row <= ROWS; row += 6) {
        for (let column = 0; column <= COLUMNS; column += 8) {
          const i = row * (COLUMNS + 1) + column;
          const [x, y, z] = posed(at(mesh, i), 1, cut);
          const map = (2 * Math.PI * RADIUS * column) / COLUMNS - Math.PI * RADIUS;
          expect(x).toBeCloseTo(map, 3);
          expect(y).toBeCloseTo((-row / ROWS) * LENGTH, 3);
          expect(z).toBeCloseTo(-RADIUS, 3);
        }
      }
    }
  });

  it('keeps the clock rising to the right all the way, and the rim above the bottom at the end', () => {
    for (const roll of ROLLS) {
      const { mesh } = bent(round, Math.PI, roll, 1);
      const middle = COLUMNS / 2;
      const [before] = posed(at(mesh, middle - 1), roll, Math.PI);
      const [after] = posed(at(mesh, middle + 1), roll, Math.PI);
      expect(after).toBeGreaterThan(before);
    }
    expect(middleOf(Math.PI)).toBeCloseTo(0, 12);
  });

  it('wear at 3 o’clock is drawn at 3 o’clock', () => {
    const dent = wallOf(
      madeSurvey({
        deviation: (theta) => (Math.abs(theta - Math.PI / 2) < 0.2 ? 0.1 : 0),
      }),
    )!;
    const { mesh, shape } = bent(dent, Math.PI, 0, 1);
    const deepest = shape.deviation.indexOf(Math.max(...shape.deviation));
    expect(at(mesh, deepest)[0]).toBeGreaterThan(0.95 * RADIUS);
  });
});

describe('the boss', () => {
  it('closes on the wall without a gap and turns no face inside out', () => {
    for (const roll of [0, 0.4, 1]) {
      for (const span of [WHOLE, halfSpan(Math.PI / 2, Math.PI, COLUMNS)]) {
        const { mesh, shape } = bent(worn, Math.PI, roll, 40);
        const boss = bossMesh(shape);
        bendBoss(shape, roll, 18, span, mesh, boss);
        for (const { facing } of faces(boss)) expect(facing).toBeGreaterThan(0);
        for (let column = 0; column <= COLUMNS; column++) {
          expect([...boss.position.subarray(6 * column, 6 * column + 3)]).toEqual(
            at(mesh, column).map(Math.fround),
          );
        }
      }
    }
  });

  it('cut in half with 3 o’clock away, ends at 6 and 12', () => {
    const { from, to } = halfSpan(Math.PI / 2, Math.PI, COLUMNS);
    // Angles from 12, the middle of the map: what is left runs clockwise from 6 o'clock to 12.
    expect(from).toBeCloseTo(-Math.PI, 9);
    expect(to).toBeCloseTo(0, 9);
  });
});
