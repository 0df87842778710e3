/** Where a bushing presses in its bore: the darker the harder, hatched where it does not touch. */
import { paletteOf, type Theme } from '../figures/colour.ts';
import { type PressureMap as Drawn, PRESSURE_STEPS } from '../figures/pressureMap.ts';
import { HatchPattern } from './Hatch.tsx';
import { LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly map: Drawn;
  readonly theme: Theme;
  readonly width: number;
  readonly id: string;
  /** What it shows, in words. */
  readonly label: string;
}

const LEFT = 62;
const RIGHT = 12;
const TOP = 22;
const HIGH = 130;
/** Room for the key below. */
const KEY = 56;
const LEAST = 120;
/** Of the whole picture, however wide. */
export const PRESSURE_MAP_HEIGHT = TOP + HIGH + KEY;

/** Darkness of the ink, by step. */
const SHADE = [0, 0.1, 0.28, 0.5, 0.76] as const;

export function PressureMap({ map, theme, width, id, label }: Props) {
  const palette = paletteOf(theme);
  const wide = Math.max(LEAST, width - LEFT - RIGHT);
  const height = PRESSURE_MAP_HEIGHT;
  const hatch = `${id}-untouched`;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(width)} ${height}`}
      width={round(width)}
      height={height}
      role="img"
      aria-label={label}
      fontFamily={LETTERS}
      fontSize={12}
    >
      <defs>
        <HatchPattern id={hatch} palette={palette} />
      </defs>
      <g transform={`translate(${LEFT} ${TOP})`}>
        <rect width={round(wide)} height={HIGH} fill={palette.ground} />
        <g shapeRendering="crispEdges">
          {map.patches.map(({ x, y, width: w, height: h, step }) => (
            <rect
              key={`${x} ${y}`}
              x={round(x * wide)}
              y={round(y * HIGH)}
              width={round(w * wide)}
              height={round(h * HIGH)}
              fill={step === 0 ? `url(#${hatch})` : palette.ink}
              fillOpacity={step === 0 ? 1 : SHADE[step]}
            />
          ))}
        </g>
        <rect width={round(wide)} height={HIGH} fill="none" stroke={palette.frame} />
        {map.hours.map(({ x, text }, i) => (
          <text
            key={x}
            x={round(x * wide)}
            y={-7}
            textAnchor={i === 0 ? 'start' : x === 1 ? 'end' : 'middle'}
            fill={palette.inkSoft}
          >
            {text}
          </text>
        ))}
        {map.depths.map(({ y, text }) => (
          <text
            key={y}
            x={-6}
            y={round(y * HIGH + (y === 0 ? 10 : 0))}
            textAnchor="end"
            fill={palette.inkSoft}
          >
            {text}
          </text>
        ))}
        <Mark {...map.hardest} wide={wide} theme={theme} kind="hardest" />
        {map.widest && <Mark {...map.widest} wide={wide} theme={theme} kind="widest" />}
        <Key map={map} theme={theme} wide={wide} hatch={hatch} />
      </g>
    </svg>
  );
}

interface MarkProps {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly theme: Theme;
  readonly kind: 'hardest' | 'widest';
}

/** A filled dot where it presses hardest, an open ring where the gap is widest. */
function Mark({ x, y, wide, theme, kind }: MarkProps) {
  const { ink, ground } = paletteOf(theme);
  const filled = kind === 'hardest';
  return (
    <circle
      cx={round(Math.min(wide - 6, Math.max(6, x * wide)))}
      cy={round(Math.min(HIGH - 6, Math.max(6, y * HIGH)))}
      r={5}
      fill={filled ? ink : ground}
      stroke={filled ? ground : ink}
      strokeWidth={2}
    />
  );
}

interface KeyProps {
  readonly map: Drawn;
  readonly theme: Theme;
  readonly wide: number;
  readonly hatch: string;
}

function Key({ map, theme, wide, hatch }: KeyProps) {
  const { ink, ground, frame, inkSoft } = paletteOf(theme);
  const each = wide / (PRESSURE_STEPS + 1);
  const words = ['none', ...map.steps.map((text) => `to ${text}`)];
  return (
    <g transform={`translate(0 ${HIGH + 10})`} fontFamily={WORDS}>
      {words.map((text, step) => (
        <g key={text} transform={`translate(${round(step * each)} 0)`}>
          <rect width={round(each)} height={14} fill={ground} stroke={frame} />
          <rect
            width={round(each)}
            height={14}
            fill={step === 0 ? `url(#${hatch})` : ink}
            fillOpacity={step === 0 ? 1 : SHADE[step]}
          />
          <text x={2} y={28} fontSize={11} fill={inkSoft}>
            {text}
          </text>
        </g>
      ))}
    </g>
  );
}
