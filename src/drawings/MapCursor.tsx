import { paletteOf, type Theme } from '../figures/colour.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { round } from './ink.ts';

interface Props {
  readonly frame: MapFrame;
  readonly theme: Theme;
  /** px from the drawing's corner. */
  readonly x: number;
  readonly y: number;
}

/** The pointed-at place: a ring, and lines to both scales. */
export function MapCursor({ frame, theme, x, y }: Props) {
  const { ink, ground } = paletteOf(theme);
  const { left, top, across, down } = frame;
  const d = [
    `M${left} ${round(y)}H${round(Math.max(left, x - 9))}`,
    `M${round(Math.min(left + across, x + 9))} ${round(y)}H${round(left + across)}`,
    `M${round(x)} ${top}V${round(Math.max(top, y - 9))}`,
    `M${round(x)} ${round(Math.min(top + down, y + 9))}V${round(top + down)}`,
  ].join('');
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(frame.width)} ${round(frame.height)}`}
      width={round(frame.width)}
      height={round(frame.height)}
      aria-hidden="true"
    >
      <path d={d} stroke={ground} strokeWidth={3} opacity={0.6} fill="none" />
      <path d={d} stroke={ink} strokeWidth={1} fill="none" />
      <circle cx={round(x)} cy={round(y)} r={8} fill="none" stroke={ground} strokeWidth={4} />
      <circle cx={round(x)} cy={round(y)} r={8} fill="none" stroke={ink} strokeWidth={2} />
    </svg>
  );
}
