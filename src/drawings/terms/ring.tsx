/** What the pictures of terms are made of where one looks into the bore: a wall, its sizes, lines and labels. */
import type { ReactNode } from 'react';

export const WIDTH = 240;
export const HEIGHT = 132;
export const MIDDLE = { x: WIDTH / 2, y: HEIGHT / 2 } as const;
/** Radii in the picture: the bore as it was new, and the boss around it. */
export const NEW = 40;
const BOSS = 58;
const STEPS = 96;

/** Distance of the wall from the middle at an angle clockwise from 12, radians. */
export type Shape = (theta: number) => number;
export const round: Shape = () => NEW;
/** Worn to 6 o'clock only. */
export const egg: Shape = (theta) => NEW + 10 * Math.max(0, -Math.cos(theta));
export const oval: Shape = (theta) => NEW + 6 * Math.cos(2 * theta);
/** Proud at 3 and 9, low at 12 and 6, unevenly: a bore that something is to be done about. */
export const worn: Shape = (theta) =>
  NEW + 6 * Math.cos(2 * theta) - 2.5 * Math.cos(theta) + 1.5 * Math.sin(3 * theta);

export function at(radius: number, hour: number, from = MIDDLE): { x: number; y: number } {
  const theta = (hour * Math.PI) / 6;
  return { x: from.x + radius * Math.sin(theta), y: from.y - radius * Math.cos(theta) };
}

export function ringPath(shape: Shape, from = MIDDLE): string {
  const points = Array.from({ length: STEPS }, (_, step) => {
    const theta = (step / STEPS) * 2 * Math.PI;
    const { x, y } = at(shape(theta), (theta * 6) / Math.PI, from);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  });
  return `M${points.join('L')}Z`;
}

/** The boss with its bore, seen looking in. */
export function Wall({
  shape,
  from = MIDDLE,
}: {
  readonly shape: Shape;
  readonly from?: typeof MIDDLE;
}) {
  return (
    <>
      <path
        d={ringPath(() => BOSS, from) + ringPath(shape, from)}
        fill="var(--line)"
        fillRule="evenodd"
      />
      <path d={ringPath(shape, from)} fill="none" stroke="var(--ink)" strokeWidth={2} />
    </>
  );
}

/** Between two shapes: what is to come off where `inner` lies inside `outer`, what is missing where outside. */
export function Between({
  inner,
  outer,
  fill,
}: {
  readonly inner: Shape;
  readonly outer: Shape;
  readonly fill: string;
}) {
  return <path d={ringPath(inner) + ringPath(outer)} fill={fill} fillRule="evenodd" />;
}

interface ArrowProps {
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  /** A head at the beginning too. */
  readonly both?: boolean;
  readonly colour?: string;
}

/** A line with a head: drawn, not a marker, as several pictures may stand on one page. */
export function Arrow({ from, to, both = false, colour = 'var(--ink)' }: ArrowProps) {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const head = (tip: { x: number; y: number }, turn: number) => {
    const side = (by: number) =>
      `${(tip.x - 8 * Math.cos(turn + by)).toFixed(1)} ${(tip.y - 8 * Math.sin(turn + by)).toFixed(1)}`;
    return (
      <path
        d={`M${tip.x.toFixed(1)} ${tip.y.toFixed(1)}L${side(0.38)}L${side(-0.38)}Z`}
        fill={colour}
      />
    );
  };
  return (
    <>
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} stroke={colour} strokeWidth={2} />
      {head(to, angle)}
      {both && head(from, angle + Math.PI)}
    </>
  );
}

export interface LabelProps {
  readonly x: number;
  readonly y: number;
  readonly children: ReactNode;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly colour?: string;
}

export function Label({ x, y, children, anchor = 'start', colour = 'var(--ink)' }: LabelProps) {
  return (
    <text
      x={x}
      y={y}
      textAnchor={anchor}
      fill={colour}
      fontSize={13}
      stroke="var(--card)"
      strokeWidth={3}
      paintOrder="stroke"
    >
      {children}
    </text>
  );
}

/** A circle that is not there, only meant. */
export function Meant({
  radius,
  from = MIDDLE,
  colour = 'var(--teal)',
}: {
  readonly radius: number;
  readonly from?: { readonly x: number; readonly y: number };
  readonly colour?: string;
}) {
  return (
    <circle
      cx={from.x}
      cy={from.y}
      r={radius}
      fill="none"
      stroke={colour}
      strokeWidth={2}
      strokeDasharray="5 3"
    />
  );
}

export function Dot({
  x,
  y,
  colour = 'var(--ink)',
}: {
  readonly x: number;
  readonly y: number;
  readonly colour?: string;
}) {
  return <circle cx={x} cy={y} r={3.2} fill={colour} />;
}
