import { paletteOf, type Theme } from '../figures/colour.ts';
import { describeMap, type MapFigure } from '../figures/map.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { lying } from '../figures/pinMap.ts';
import { MAP_UNIT_NAME } from '../figures/steps.ts';
import { HatchPattern } from './Hatch.tsx';
import { LETTERS, round, WORDS } from './ink.ts';
import { MapMarks } from './MapMarks.tsx';
import { MapShading } from './MapShading.tsx';

interface Props {
  readonly map: MapFigure;
  readonly theme: Theme;
  readonly width: number;
  readonly height: number;
  readonly id: string;
}

const MARGIN = { left: 34, right: 14, top: 22, bottom: 24 } as const;
/** Both sides of the map have at least this, px, however little room the page has while it is laid out. */
const LEAST = 40;
/** Below this, px, what stands over the map is said in fewer words. */
const NARROW = 320;

/**
 * The outside of a pin rolled out as it is seen from outside, lying with face A at the left: depth runs to the right and the
 * clock downwards from 12 to 12. Turned so, and not mirrored.
 */
export function PinMap({ map, theme, width, height, id }: Props) {
  const palette = paletteOf(theme);
  const along = Math.max(LEAST, width - MARGIN.left - MARGIN.right);
  const round_ = Math.max(LEAST, height - MARGIN.top - MARGIN.bottom);
  // The shading is laid out with the clock across and the depth down; the two change places.
  const frame: MapFrame = {
    width,
    height,
    left: 0,
    top: 0,
    across: round_,
    down: along,
    scaleX: round_ / map.width,
    scaleY: along / map.height,
    stretch: 1,
  };
  const laid: MapFrame = {
    ...frame,
    across: along,
    down: round_,
    scaleX: frame.scaleY,
    scaleY: frame.scaleX,
  };
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(width)} ${round(height)}`}
      width={round(width)}
      height={round(height)}
      role="img"
      aria-label={describeMap(map).replace(
        'The wall of the bore rolled out, rim on top',
        'The outside of the pin rolled out, face A at the left, the clock running down',
      )}
    >
      <defs>
        <HatchPattern id={`${id}-hatch`} palette={palette} />
        <clipPath id={`${id}-pin`}>
          <rect width={round(along)} height={round(round_)} />
        </clipPath>
      </defs>
      <g transform={`translate(${MARGIN.left} ${MARGIN.top})`}>
        <g clipPath={`url(#${id}-pin)`}>
          <g transform="matrix(0 1 1 0 0 0)">
            <MapShading map={map} frame={frame} theme={theme} hatch={`${id}-hatch`} />
          </g>
          <MapMarks map={lying(map)} frame={laid} theme={theme} lying />
        </g>
        <Scales map={map} theme={theme} along={along} down={round_} />
      </g>
    </svg>
  );
}

interface ScalesProps {
  readonly map: MapFigure;
  readonly theme: Theme;
  readonly along: number;
  readonly down: number;
}

function Scales({ map, theme, along, down }: ScalesProps) {
  const { frame, inkSoft } = paletteOf(theme);
  const scaleX = along / map.height;
  const scaleY = down / map.width;
  const hours = map.clockTicks.filter((_, i) => i % (down < 260 ? 3 : 1) === 0);
  return (
    <g fontFamily={LETTERS} fontSize={12} fill={inkSoft}>
      <rect width={round(along)} height={round(down)} fill="none" stroke={frame} />
      {hours.map(({ x, text }) => (
        <text key={x} x={-6} y={round(x * scaleY + 4)} textAnchor="end">
          {text}
        </text>
      ))}
      {map.depthTicks.map(({ y, text }) => (
        <g key={text}>
          <path d={`M${round(y * scaleX)} ${round(down)}v5`} stroke={frame} />
          <text x={round(y * scaleX)} y={round(down + 18)} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <g fontFamily={WORDS}>
        <text y={-8}>
          {along < NARROW ? 'clock from face A' : 'face A · clock seen from face A'}
        </text>
        <text x={round(along)} y={-8} textAnchor="end">
          {MAP_UNIT_NAME[map.units]} per side
        </text>
      </g>
    </g>
  );
}
