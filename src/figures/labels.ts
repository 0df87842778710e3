/** Placing figures on the map so that none covers another. Pixels throughout. */

export interface Label {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly weight: number;
  /** Half the height of what the label speaks of: one too small to write on is written beside. */
  readonly reach: number;
}
export interface Box {
  readonly width: number;
  readonly height: number;
}
export interface Placed<T> {
  readonly label: T;
  /** Middle of the text, which may be moved from the place that it speaks of. */
  readonly x: number;
  readonly y: number;
}

/** Room that is kept between a label and the frame. */
const EDGE = 4;
/** Of the mark on the spot itself, both ways. */
const MARK = 8;
/**
 * Where a label may go, in its own widths and heights from the spot that it speaks of, best first: never on the spot,
 * which has a mark of its own, and clear of lines that cross there.
 */
const MOVES: readonly (readonly [number, number])[] = [
  [0.62, -0.85],
  [-0.62, -0.85],
  [0.62, 0.85],
  [-0.62, 0.85],
  [0, -1.1],
  [0, 1.1],
  [0.75, 0],
  [-0.75, 0],
  [0, 2],
];

/**
 * Heaviest first, each label goes to the best free room beside its spot, inside the frame; one that finds
 * none is left out (its zone is still in the list in words).
 *
 * @param textWidth width of one letter, px
 */
export function placeLabels<T extends Label>(
  labels: readonly T[],
  frame: Box,
  textWidth: number,
  textHeight: number,
  taken: readonly (Box & { readonly x: number; readonly y: number })[] = [],
): Placed<T>[] {
  const placed: Placed<T>[] = [];
  const marks = labels.map(({ x, y }) => ({ x, y, width: MARK, height: MARK }));
  const boxes = [...taken, ...marks];
  for (const label of [...labels].sort((a, b) => b.weight - a.weight)) {
    const width = label.text.length * textWidth + 6;
    const height = textHeight + 2;
    const inside = (v: number, half: number, end: number) =>
      Math.min(Math.max(v, half + EDGE), Math.max(half + EDGE, end - half - EDGE));
    const clear = label.reach < 0.8 * height ? label.reach : 0;
    const spots = MOVES.map(([dx, dy]) => ({
      x: inside(label.x + dx * width, width / 2, frame.width),
      y: inside(label.y + dy * height + Math.sign(dy) * clear, height / 2, frame.height),
      width,
      height,
    }));
    const spot = spots.find((one) => boxes.every((box) => !overlap(one, box)));
    if (spot === undefined) continue;
    boxes.push(spot);
    placed.push({ label, x: spot.x, y: spot.y });
  }
  return placed;
}

function overlap(
  a: Box & { x: number; y: number },
  b: Box & { readonly x: number; readonly y: number },
): boolean {
  return (
    Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2
  );
}
