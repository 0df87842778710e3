/** What the pictures of terms are made of where the bore is cut in half along its length. */
import { HEIGHT, Label, MIDDLE } from './ring.tsx';

const LEFT = 40;
const RIGHT = 200;
const HALF = 30;
const METAL = 22;
const STEPS = 40;

/** How much further out than new the wall lies, at a share of the length from face A. */
export type Along = (share: number) => number;
export const straight: Along = () => 0;

export const xAt = (share: number) => LEFT + share * (RIGHT - LEFT);
/** Edge of the wall: above the middle line, or below it. */
export const edge = (side: 1 | -1, out: number) => MIDDLE.y + side * (HALF + out);

function edgePath(shape: Along, side: 1 | -1): string[] {
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const share = step / STEPS;
    return `${xAt(share).toFixed(1)} ${edge(side, shape(share)).toFixed(1)}`;
  });
}

/** Both walls, face A on the left, hatched nowhere: the metal is the tint, the wall the line. */
export function Cut({ upper, lower = upper }: { readonly upper: Along; readonly lower?: Along }) {
  const wall = (shape: Along, side: 1 | -1) => {
    const out = edge(side, METAL);
    const points = edgePath(shape, side);
    return (
      <>
        <path d={`M${LEFT} ${out}L${points.join('L')}L${RIGHT} ${out}Z`} fill="var(--line)" />
        <path d={`M${points.join('L')}`} fill="none" stroke="var(--ink)" strokeWidth={2} />
      </>
    );
  };
  return (
    <>
      {wall(upper, -1)}
      {wall(lower, 1)}
      <line
        x1={LEFT - 12}
        y1={MIDDLE.y}
        x2={RIGHT + 12}
        y2={MIDDLE.y}
        stroke="var(--line-strong)"
        strokeDasharray="10 3 2 3"
      />
    </>
  );
}

/** Where the wall was when it was new. */
export function AsNew() {
  return ([-1, 1] as const).map((side) => (
    <line
      key={side}
      x1={LEFT}
      y1={edge(side, 0)}
      x2={RIGHT}
      y2={edge(side, 0)}
      stroke="var(--teal)"
      strokeWidth={1.5}
      strokeDasharray="5 3"
    />
  ));
}

export function Faces() {
  return (
    <>
      <Label x={LEFT - 16} y={HEIGHT - 4} anchor="middle">
        face A
      </Label>
      <Label x={RIGHT + 12} y={HEIGHT - 4} anchor="middle">
        face B
      </Label>
    </>
  );
}
