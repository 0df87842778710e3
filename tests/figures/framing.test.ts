import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { posed } from '../../src/figures/bend.ts';
import { axesOf, eyeFor, homeTurn, lensAt, type Vector } from '../../src/figures/framing.ts';
import { mapFrame, placeAt, pointAt } from '../../src/figures/mapFrame.ts';
import { bendWall, wallMesh, wallShape } from '../../src/figures/mesh.ts';
import { wallOf } from '../../src/figures/wall.ts';
import { LENGTH, madeSurvey, TARGET } from '../fixtures/evaluation.ts';

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
    const [width, height] = [850, 400];
    for (const factor of [1, 50]) {
      bendWall(shape, 1, factor, mesh);
      const points: Vector[] = [];
      for (let i = 0; i < mesh.position.length; i += 3) {
        const [x = 0, y = 0, z = 0] = mesh.position.subarray(i, i + 3);
        points.push(posed([x, y, z], 1, Math.PI));
      }
      const axes = axesOf(homeTurn(false, 0, 1));
      const tan = lensAt(1);
      const eye = eyeFor(points.flat(), axes, (tan * width) / height, tan);
      const screen = points.map((p) => {
        const { x, y } = shown(p, eye.at, axes, (tan * width) / height, tan);
        return { x: (x * width) / 2, y: (-y * height) / 2 };
      });
      const scale = width / (Math.PI * TARGET);
      const middle = screen[32]!.y;
      screen.forEach(({ x, y }, i) => {
        const [column, row] = [i % 65, Math.floor(i / 65)];
        expect(Math.abs(x - scale * Math.PI * TARGET * (column / 64 - 0.5))).toBeLessThan(1);
        expect(Math.abs(y - middle - (scale * LENGTH * row) / 16)).toBeLessThan(1);
      });
    }
  });
});

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
