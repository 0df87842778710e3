/** Figures on the lines of contact pressure: how hard it presses there. Pixels of a map that begins at the cut. */
import type { Point } from './contours.ts';
import type { PressedWall } from './pressedWall.ts';

export interface PressFigureAt {
  readonly text: string;
  readonly level: number;
  /** Middle of the text. */
  readonly x: number;
  readonly y: number;
}

/** px a radian round, px a mm deep, and the whole map. */
interface Scale {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Letter {
  readonly wide: number;
  readonly high: number;
}

/** A line shorter than so many widths of its figure is hardly more than the figure. */
const LEAST = 1.6;
/** Shares of a line's way where its figure may stand, best first. */
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92] as const;
/** Figures on one line stand no closer than this, px. */
const APART = 260;

/** The hardest first, each where none of the others stands and all of it is on the map. */
export function pressFigures(
  { parts }: PressedWall,
  scale: Scale,
  { wide, high }: Letter,
): PressFigureAt[] {
  const out: (PressFigureAt & { readonly w: number })[] = [];
  const all = parts.flatMap(({ lines }) => lines).sort((a, b) => b.level - a.level);
  for (const { level, text, lines } of all) {
    const w = text.length * wide + 6;
    const free = ([x, y]: Point) =>
      x > w / 2 &&
      x < scale.width - w / 2 &&
      y > high / 2 &&
      y < scale.height - high / 2 &&
      out.every(
        (one) => Math.abs(one.x - x) > (one.w + w) / 2 + 2 || Math.abs(one.y - y) > high + 2,
      );
    const far = ([x, y]: Point) =>
      out.every((one) => one.level !== level || Math.hypot(one.x - x, one.y - y) > APART);
    for (const { points, closed } of lines) {
      const line = (closed ? [...points, points[0]!] : points).map(
        ([x, y]): Point => [x * scale.x, y * scale.y],
      );
      const ways = waysAlong(line);
      if (!(ways[ways.length - 1]! > LEAST * w)) continue;
      for (const share of SHARES) {
        const at = pointAlong(line, ways, share);
        if (free(at) && far(at)) out.push({ text, level, x: at[0], y: at[1], w });
      }
    }
  }
  return out.map(({ w: _, ...figure }) => figure);
}

/** Way from the first point to each. */
function waysAlong(line: readonly Point[]): number[] {
  let way = 0;
  return line.map(([x, y], i) => {
    if (i > 0) way += Math.hypot(x - line[i - 1]![0], y - line[i - 1]![1]);
    return way;
  });
}

function pointAlong(line: readonly Point[], ways: readonly number[], share: number): Point {
  const at = share * ways[ways.length - 1]!;
  const next = Math.max(
    1,
    ways.findIndex((way) => way >= at),
  );
  const [from, to] = [line[next - 1]!, line[next]!];
  const t = (at - ways[next - 1]!) / (ways[next]! - ways[next - 1]! || 1);
  return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
}
