import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { posed } from '../../src/figures/bend.ts';
import { bendBoss, bossCorners, bossMesh, WHOLE } from '../../src/figures/boss.ts';
import {
  axesOf,
  eyeFor,
  framedBy,
  homeTurn,
  lensAt,
  type Vector,
} from '../../src/figures/framing.ts';
import { mapFrame, placeAt, pointAt } from '../../src/figures/mapFrame.ts';
import { bendWall, wallMesh, wallShape } from '../../src/figures/mesh.ts';
import { pieceFigure } from '../../src/figures/piece.ts';
import { signsOf } from '../../src/figures/signs.ts';
import { wallOf } from '../../src/figures/wall.ts';
import { FACTS, LENGTH, madeSurvey, TARGET } from '../fixtures/evaluation.ts';

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Where a camera at `at` shows a point: half widths and half heights of the frame from its middle. */
function shown(p: Vector, at: Vector, axes: ReturnType<typeof axesOf>, tanX: number, tanY: number) {
  const d: Vector = [p[0] - at[0], p[1] - at[1], p[2] - at[2]];
  const far = -dot(d, axes.toward);
  return { x: dot(d, axes.right) / far / tanX, y: dot(d, axes.up) / far / tanY, far };
}

describe('the eye', () => {
  const place = fc.double({ min: -80, max: 80, noNaN: true });
  const cloud = fc.array(place, { minLength: 6, maxLength: 60 });

  it('has every point in the frame, and comes no nearer than that allows', () => {
    fc.assert(
      fc.property(
        cloud,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -1.4, max: 1.4, noNaN: true }),
        fc.double({ min: 0.02, max: 0.8, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (numbers, azimuth, elevation, tan, aspect) => {
          const points = numbers.slice(0, numbers.length - (numbers.length % 3));
          const axes = axesOf({ azimuth, elevation });
          const eye = eyeFor(points, axes, tan * aspect, tan);
          let reach = 0;
          for (let i = 0; i < points.length; i += 3) {
            const p: Vector = [points[i]!, points[i + 1]!, points[i + 2]!];
            const { x, y, far } = shown(p, eye.at, axes, tan * aspect, tan);
            fc.pre(far > 1e-6);
            expect(Math.abs(x)).toBeLessThan(1 + 1e-6);
            expect(Math.abs(y)).toBeLessThan(1 + 1e-6);
            expect(far).toBeGreaterThan(eye.nearest - 1e-6);
            expect(far).toBeLessThan(eye.farthest + 1e-6);
            reach = Math.max(reach, Math.abs(x), Math.abs(y));
          }
          expect(reach).toBeGreaterThan(1 - 1e-6);
        },
      ),
    );
  });

  it('looks straight at the map when all is rolled out, and in from the left and above before', () => {
    expect(homeTurn(false, 0, 1)).toEqual({ azimuth: -0, elevation: 0 });
    expect(homeTurn(false, 0, 0).azimuth).toBeLessThan(0);
    // The half at 3 is taken off: one looks in from the right.
    expect(homeTurn(true, Math.PI / 2, 0).azimuth).toBeGreaterThan(0);
    expect(homeTurn(true, (3 * Math.PI) / 2, 0).azimuth).toBeLessThan(0);
  });

  it('shows the flat end as the map has it, to a pixel, wear exaggerated or not', () => {
    const shape = wallShape(wallOf(madeSurvey())!, 0.0254, Math.PI, 64, 16);
    const mesh = wallMesh(shape);
    const picture = { width: 850, height: 400 };
    const map = { width: Math.PI * TARGET, height: LENGTH, cut: Math.PI };
    for (const factor of [1, 50]) {
      bendWall(shape, 1, factor, mesh);
      const points = pointsOf(mesh.position, 1);
      const seen = framedBy(points.flat(), homeTurn(false, 0, 1), lensAt(1), picture, 0);
      const screen = points.map((p) => {
        const { x, y } = shown(p, seen.at, seen.axes, seen.tanX, seen.tanY);
        return { x: (x * picture.width) / 2, y: (-y * picture.height) / 2 };
      });
      // A map of the same width as the picture; both from the middle of their rims.
      const frame = mapFrame(map, screen[64]!.x - screen[0]!.x + MARGINS, 1e4);
      expect(frame.stretch).toBeCloseTo(1, 9);
      const middle = pointAt(frame, map, { theta: 0, z: 0 });
      screen.forEach(({ x, y }, i) => {
        // The last column lies on the cut again, which the map has at its left.
        const column = Math.min(i % 65, 63);
        if (i % 65 !== column) return;
        const theta = Math.PI + (2 * Math.PI * column) / 64;
        const on = pointAt(frame, map, { theta, z: (LENGTH * Math.floor(i / 65)) / 16 });
        expect(Math.abs(x - screen[32]!.x - (on.x - middle.x))).toBeLessThan(1);
        expect(Math.abs(y - screen[32]!.y - (on.y - middle.y))).toBeLessThan(1);
      });
    }
  });

  it('has wall, metal and letters in the picture at every step of the roll, and fills it one way', () => {
    const piece = pieceFigure(madeSurvey(), FACTS, 'in', Math.PI)!;
    const { shape, metal, exaggeration } = piece;
    const wall = wallMesh(shape);
    const boss = bossMesh(shape);
    const turn = (roll: number) => homeTurn(false, 0, roll);
    const pictures = [
      { width: 860, height: 400, edge: 20 },
      { width: 390, height: 170, edge: 14 },
      { width: 480, height: 400, edge: 20 },
    ];
    for (let step = 0; step <= 20; step++) {
      const roll = step / 20;
      bendWall(shape, roll, exaggeration.chosen, wall);
      bendBoss(shape, roll, metal, WHOLE, wall, boss);
      const signs = signsOf(piece, { zones: true, filled: false, away: null, roll });
      const places = signs.flatMap((sign) => sign.stand(roll, exaggeration.chosen).at);
      const framed = pointsOf([...bossCorners(boss, () => false), ...places], roll);
      const all = pointsOf([...wall.position, ...places], roll);
      for (const picture of pictures) {
        const { edge } = picture;
        const seen = framedBy(framed.flat(), turn(roll), lensAt(roll), picture, edge);
        const most = { x: 0, y: 0 };
        for (const p of all) {
          const { x, y } = shown(p, seen.at, seen.axes, seen.tanX, seen.tanY);
          most.x = Math.max(most.x, Math.abs(x) * picture.width);
          most.y = Math.max(most.y, Math.abs(y) * picture.height);
        }
        // Between the corners that are framed the metal bulges by less than a pixel or two.
        expect(most.x).toBeLessThan(picture.width - 2 * edge + 4);
        expect(most.y).toBeLessThan(picture.height - 2 * edge + 4);
        // Wall and letters alone, without the metal behind them, still reach most of the way one way.
        const fills = Math.max(
          most.x / (picture.width - 2 * edge),
          most.y / (picture.height - 2 * edge),
        );
        expect(fills).toBeGreaterThan(0.8);
      }
    }
  });
});

/** Left and right of the map's wall, px. */
const MARGINS =
  mapFrame({ width: 100, height: 10 }, 500).width -
  mapFrame({ width: 100, height: 10 }, 500).across;

function pointsOf(numbers: ArrayLike<number>, roll: number): Vector[] {
  return Array.from({ length: numbers.length / 3 }, (_, i) =>
    posed([numbers[3 * i]!, numbers[3 * i + 1]!, numbers[3 * i + 2]!], roll, Math.PI),
  );
}

describe('the map on the screen', () => {
  const wall = { width: Math.PI * TARGET, height: LENGTH, cut: Math.PI };

  it('is in true proportion where it can be read', () => {
    const frame = mapFrame(wall, 900, 500);
    expect(frame.stretch).toBeCloseTo(1, 9);
    expect(frame.width).toBeCloseTo(900, 9);
    // A deep bore is drawn narrower rather than pressed.
    const deep = mapFrame({ width: 100, height: 80 }, 900, 300);
    expect(deep.stretch).toBeCloseTo(1, 9);
    expect(deep.height).toBeLessThanOrEqual(300);
    expect(deep.across).toBeLessThan(900);
  });

  it('is never too low to read, and says how far it is stretched', () => {
    const frame = mapFrame(wall, 360, 300);
    expect(frame.down).toBe(150);
    expect(frame.stretch).toBeCloseTo(150 / (LENGTH * frame.scaleX), 9);
    expect(frame.stretch).toBeGreaterThan(1);
  });

  it('goes from place to point and back', () => {
    const frame = mapFrame(wall, 820, 400);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2 * Math.PI - 1e-6, noNaN: true }),
        fc.double({ min: 0, max: LENGTH, noNaN: true }),
        fc.constantFrom(0, Math.PI, 1.1),
        (theta, z, cut) => {
          const map = { ...wall, cut };
          const { x, y } = pointAt(frame, map, { theta, z });
          const back = placeAt(frame, map, x, y);
          expect(Math.cos(back.theta - theta)).toBeCloseTo(1, 9);
          expect(back.z).toBeCloseTo(z, 6);
        },
      ),
    );
  });

  it('rises clockwise to the right, 12 in the middle of 6 to 6, and holds to the wall', () => {
    const frame = mapFrame(wall, 820, 400);
    expect(pointAt(frame, wall, { theta: 0, z: 0 }).x).toBeCloseTo(frame.left + frame.across / 2);
    expect(pointAt(frame, wall, { theta: Math.PI / 2, z: 0 }).x).toBeCloseTo(
      frame.left + 0.75 * frame.across,
    );
    expect(placeAt(frame, wall, -50, 9999).z).toBe(LENGTH);
    expect(placeAt(frame, wall, 9999, -50).z).toBe(0);
  });
});
