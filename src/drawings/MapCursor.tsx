import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import type { MapFigure } from '../figures/map.ts';
import type { MapSheet } from '../figures/mapSheet.ts';
import { LETTER, LETTERS, round } from './ink.ts';

interface Props {
  readonly map: Pick<MapFigure, 'clockTicks' | 'depthTicks'>;
  readonly sheet: MapSheet;
  readonly theme: Theme;
  /** px from the drawing's corner. */
  readonly x: number;
  readonly y: number;
  /** The place in figures, as it stands on the two scales: `3:10`, `0.40`. */
  readonly clock: string;
  readonly depth: string;
}

const SIZE = 12;
const RING = 8;
/** Height of a figure on a scale, px. */
const CHIP = 18;

/** The pointed-at place: a ring, lines to both scales, and its figures on them. */
export function MapCursor({ map, sheet, theme, x, y, clock, depth }: Props) {
  const palette = paletteOf(theme);
  const { ink, ground } = palette;
  const { frame } = sheet;
  const { left, top, across, down } = frame;
  const d = [
    `M${left} ${round(y)}H${round(Math.max(left, x - RING - 1))}`,
    `M${round(Math.min(left + across, x + RING + 1))} ${round(y)}H${round(left + across)}`,
    `M${round(x)} ${top}V${round(Math.max(top, y - RING - 1))}`,
    `M${round(x)} ${round(Math.min(top + down, y + RING + 1))}V${round(top + down)}`,
  ].join('');
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(sheet.width)} ${round(sheet.height)}`}
      width={round(sheet.width)}
      height={round(sheet.height)}
      aria-hidden="true"
      data-x={round(x)}
      data-y={round(y)}
    >
      <path d={d} stroke={ground} strokeWidth={3} opacity={0.6} fill="none" />
      <path d={d} stroke={ink} strokeWidth={1} fill="none" />
      <circle cx={round(x)} cy={round(y)} r={RING} fill="none" stroke={ground} strokeWidth={4} />
      <circle cx={round(x)} cy={round(y)} r={RING} fill="none" stroke={ink} strokeWidth={2} />
      <style>{hidden({ map, sheet, x, y, clock })}</style>
      <Chip x={x} y={top + down + 14} text={clock} palette={palette} />
      <Chip x={left - 5 - chipWidth(depth) / 2} y={y} text={depth} palette={palette} />
    </svg>
  );
}

function chipWidth(text: string): number {
  return text.length * LETTER * SIZE + 8;
}

/** Figures of the scales that a chip would cover in part are not seen meanwhile: half a figure is none. */
function hidden({ map, sheet, x, y, clock }: Omit<Props, 'theme' | 'depth'>): string {
  const { left, top, scaleX, scaleY } = sheet.frame;
  const hours = map.clockTicks.filter(
    (tick) => Math.abs(left + tick.x * scaleX - x) < (chipWidth(tick.text) + chipWidth(clock)) / 2,
  );
  const depths = map.depthTicks.filter(
    (tick) => Math.abs(top + tick.y * scaleY - y) < (CHIP + SIZE) / 2,
  );
  const names = [
    ...hours.map((tick) => `c${round(tick.x)}`),
    ...depths.map((tick) => `d${round(tick.y)}`),
  ];
  return names.map((name) => `.map-view [data-scale="${name}"]{visibility:hidden}`).join('');
}

interface ChipProps {
  /** Its middle, px. */
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly palette: Palette;
}

/** A figure on a scale, light on dark so that it stands before the scale's own. */
function Chip({ x, y, text, palette: { ink, ground } }: ChipProps) {
  const wide = chipWidth(text);
  return (
    <g>
      <rect
        x={round(x - wide / 2)}
        y={round(y - CHIP / 2)}
        width={round(wide)}
        height={CHIP}
        rx={4}
        fill={ink}
        stroke={ground}
      />
      <text
        x={round(x)}
        y={round(y + 4)}
        textAnchor="middle"
        fontFamily={LETTERS}
        fontSize={SIZE}
        fill={ground}
      >
        {text}
      </text>
    </g>
  );
}
