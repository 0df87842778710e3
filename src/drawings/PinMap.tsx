import { paletteOf, type Theme } from '../figures/colour.ts';
import { describeMap, type MapFigure } from '../figures/map.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { MAP_UNIT_NAME } from '../figures/steps.ts';
import { HatchPattern } from './Hatch.tsx';
import { LETTER, LETTERS, round, WORDS } from './ink.ts';
import { Dot, Spot } from './MapMarks.tsx';
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
const SIZE = 13;
/** Beyond this many, dots would hide the surface. */
const MOST_DOTS = 300;

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
          <Marks map={map} theme={theme} scaleX={frame.scaleY} scaleY={frame.scaleX} />
        </g>
        <Scales map={map} theme={theme} along={along} down={round_} />
      </g>
    </svg>
  );
}

interface MarksProps {
  readonly map: MapFigure;
  readonly theme: Theme;
  /** px per mm along the pin, and round it. */
  readonly scaleX: number;
  readonly scaleY: number;
}

/** What is left alone, the ends of what runs, readings, and the lowest place of each zone with its figure. */
function Marks({ map, theme, scaleX, scaleY }: MarksProps) {
  const { ink, ground } = paletteOf(theme);
  const every = Math.ceil(map.marks.length / MOST_DOTS);
  const high = round(map.width * scaleY);
  return (
    <>
      {map.keepouts.map(({ name, kind, boxes }, i) => (
        <g key={`${kind} ${i}`} fill={ground} fillOpacity={0.75} stroke={ink} strokeWidth={1.5}>
          <title>{`${name}: leave alone`}</title>
          {boxes.map(({ x, y, width, height }) => (
            <rect
              key={x}
              x={round(y * scaleX)}
              y={round(x * scaleY)}
              width={round(height * scaleX)}
              height={round(width * scaleY)}
            />
          ))}
        </g>
      ))}
      {map.seats.map(({ from, to }) => (
        <path
          key={`${from} ${to}`}
          d={[from, to].map((z) => `M${round(z * scaleX)} 0v${high}`).join('')}
          stroke={ink}
          strokeWidth={1.5}
          strokeDasharray="10 4 2 4"
        />
      ))}
      {map.marks
        .filter(({ suspect }, i) => suspect || i % every === 0)
        .map(({ row, x, y, suspect }) => (
          <Dot
            key={`${row} ${round(x)}`}
            x={round(y * scaleX)}
            y={round(x * scaleY)}
            suspect={suspect}
            theme={theme}
          />
        ))}
      {map.zones.map(({ x, y, text, kind }) => (
        <g key={`${x} ${y}`}>
          <Spot x={round(y * scaleX)} y={round(x * scaleY)} kind={kind} theme={theme} />
          <Label
            text={text}
            x={y * scaleX}
            y={x * scaleY}
            most={map.height * scaleX}
            theme={theme}
          />
        </g>
      ))}
    </>
  );
}

interface LabelProps {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Right edge, px. */
  readonly most: number;
  readonly theme: Theme;
}

function Label({ text, x, y, most, theme }: LabelProps) {
  const { ink, ground } = paletteOf(theme);
  const wide = text.length * LETTER * SIZE + 6;
  const left = x + 8 + wide > most ? x - 8 - wide : x + 8;
  return (
    <>
      <rect
        x={round(left)}
        y={round(y - 9)}
        width={round(wide)}
        height={18}
        rx={4}
        fill={ground}
        fillOpacity={0.9}
      />
      <text
        x={round(left + wide / 2)}
        y={round(y + 4.5)}
        textAnchor="middle"
        fontFamily={LETTERS}
        fontSize={SIZE}
        fontWeight={600}
        fill={ink}
      >
        {text}
      </text>
    </>
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
        <text y={-8}>face A · clock seen from face A</text>
        <text x={round(along)} y={-8} textAnchor="end">
          {MAP_UNIT_NAME[map.units]} per side
        </text>
      </g>
    </g>
  );
}
