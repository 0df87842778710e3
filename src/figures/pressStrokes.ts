/** The contact pressure on the piece in three dimensions: its lines, and the figures that stand on them. */
import { type WallShape, wearAt } from './mesh.ts';
import type { PieceFigure } from './piece.ts';
import { standOn } from './pins.ts';
import type { PressedWall } from './pressedWall.ts';
import { pressFigures } from './pressFigures.ts';
import type { Sign } from './signs.ts';
import type { Knot, PressKind, Stroke } from './strokes.ts';

type Point = readonly [x: number, y: number];

/** Steps of a line: radians round, and shares of the bore's length. */
const ROUND = 0.07;
const ALONG = 1 / 24;

const BY_LEVEL: readonly PressKind[] = [
  'pressed-1',
  'pressed-2',
  'pressed-3',
  'pressed-4',
  'pressed-5',
];

export function pressStrokes(shape: WallShape, { parts }: PressedWall): Stroke[] {
  const stroke = (kind: PressKind, points: readonly Point[]): Stroke => ({
    kind,
    knots: stepped(points, shape.length).map((point) => knot(shape, point)),
  });
  return parts.flatMap(({ lines, edge, ruled }) => [
    ...lines.flatMap(({ level, lines: all }) =>
      all.map((line) => stroke(BY_LEVEL[level]!, joined(line))),
    ),
    ...edge.map((line) => stroke('touch-edge', joined(line))),
    ...ruled.map(({ x, from, to }) =>
      stroke('gap', [
        [x, from],
        [x, to],
      ]),
    ),
  ]);
}

/** Where the lines say how hard, on the wall; the harder the weightier. */
export function pressSigns({ shape }: PieceFigure, pressed: PressedWall): Sign[] {
  const scale = { x: PX, y: PX / shape.radius, width: 2 * Math.PI * PX };
  const room = { ...scale, height: shape.length * scale.y };
  return pressFigures(pressed, room, LETTER).map(({ text, x, y, level }) => {
    const [phi, z] = [x / scale.x - Math.PI, y / scale.y];
    const theta = phi + shape.cut + Math.PI;
    return {
      text,
      of: phi,
      on: 'wall',
      size: SIZE,
      points: false,
      minor: false,
      weight: 58 + level / 100,
      stand: (roll, exaggeration) => standOn(shape, theta, z, roll, exaggeration),
    };
  });
}

/** Usual size of the piece on a screen: px of a radius. */
const PX = 110;
const SIZE = 22;
/** Width and height of a letter as it is laid out, px. */
const LETTER = { wide: 8, high: 20 };

function joined({
  points,
  closed,
}: {
  readonly points: readonly Point[];
  readonly closed: boolean;
}) {
  return closed ? [...points, points[0]!] : points;
}

/** More points, so that the line follows the wall as it is bent and as it is worn. */
function stepped(points: readonly Point[], length: number): Point[] {
  return points.flatMap(([x, y], i): Point[] => {
    if (i === 0) return [[x, y]];
    const [fromX, fromY] = points[i - 1]!;
    const steps = Math.ceil(
      Math.max(Math.abs(x - fromX) / ROUND, Math.abs(y - fromY) / (ALONG * length), 1),
    );
    return Array.from({ length: steps }, (_, k): Point => {
      const share = (k + 1) / steps;
      return [fromX + share * (x - fromX), fromY + share * (y - fromY)];
    });
  });
}

function knot(shape: WallShape, [x, z]: Point): Knot {
  const phi = x - Math.PI;
  return { phi, z, wear: wearAt(shape, phi, z), out: 0, reach: 0 };
}
