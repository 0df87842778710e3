import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import type { MapFigure } from '../figures/map.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { MAP_UNIT_NAME } from '../figures/steps.ts';
import { LETTER, LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly theme: Theme;
}

const SIZE = 12;

/** Clock along the bottom, depth down the left, which face it is seen from, and where the load pulls. */
export function MapScales({ map, frame, theme }: Props) {
  const palette = paletteOf(theme);
  const { left, top, across, down } = frame;
  const bottom = top + down;
  return (
    <g fontFamily={LETTERS} fontSize={SIZE} fill={palette.inkSoft}>
      <rect x={left} y={top} width={across} height={down} fill="none" stroke={palette.frame} />
      {thin(map.depthTicks, 15 / frame.scaleY, (tick) => tick.y).map(({ y, text }) => (
        <g key={text}>
          <path d={`M${left - 5} ${round(top + y * frame.scaleY)}h5`} stroke={palette.frame} />
          <text x={left - 8} y={round(top + y * frame.scaleY + 4)} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {map.clockTicks.map(({ x, text }) => (
        <g key={x}>
          <path d={`M${round(left + x * frame.scaleX)} ${bottom}v5`} stroke={palette.frame} />
          <text x={round(left + x * frame.scaleX)} y={bottom + 18} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <text x={left} y={top - 8} fontFamily={WORDS} fontSize={13}>{`rim · ${map.face}`}</text>
      <text x={left + across} y={top - 8} textAnchor="end" fontFamily={WORDS} fontSize={13}>
        {`${MAP_UNIT_NAME[map.units]} per side${stretchWords(frame.stretch)}`}
      </text>
      {map.load !== null && (
        <Load x={left + map.load * frame.scaleX} frame={frame} palette={palette} />
      )}
    </g>
  );
}

/** Nothing where the map is in true proportion, or so nearly that nobody sees it. */
function stretchWords(stretch: number): string {
  return Math.abs(stretch - 1) < 0.05 ? '' : ` · depth ×${stretch.toFixed(1)}`;
}

/** Every n-th tick, so that none comes closer to the next than `least`. */
function thin<T>(ticks: readonly T[], least: number, at: (tick: T) => number): T[] {
  const [first, second] = ticks;
  if (first === undefined || second === undefined) return [...ticks];
  const every = Math.max(1, Math.ceil(least / (at(second) - at(first))));
  return ticks.filter((_, i) => i % every === 0);
}

interface LoadProps {
  readonly x: number;
  readonly frame: MapFrame;
  readonly palette: Palette;
}

/** A flag in the map's lower edge where the load pulls; its word stays inside the map. */
function Load({ x, frame, palette }: LoadProps) {
  const bottom = frame.top + frame.down;
  const half = (4 * LETTER * SIZE) / 2 + 4;
  const middle = Math.min(Math.max(x, frame.left + half), frame.left + frame.across - half);
  return (
    <g>
      <path d={`M${round(x)} ${bottom}l-6 -9h12z`} fill={palette.ink} stroke={palette.ground} />
      <text
        x={round(middle)}
        y={round(bottom - 13)}
        textAnchor="middle"
        fill={palette.ink}
        stroke={palette.ground}
        strokeWidth={3}
        paintOrder="stroke"
      >
        load
      </text>
    </g>
  );
}
