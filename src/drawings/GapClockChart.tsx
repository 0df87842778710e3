import { scaleLinear } from 'd3';
import { paletteOf, type Theme } from '../figures/colour.ts';
import type { GapClock } from '../figures/gapClock.ts';
import { LETTERS, pathOf, round, WORDS } from './ink.ts';

interface Props {
  readonly figure: GapClock;
  readonly width: number;
  readonly theme: Theme;
  /** Sets this drawing's own ids apart from those of others on the page. */
  readonly id: string;
}

const DEEP = 150;

/** Room against time: the line as counted, the hatched band of its give-or-take, and the moment it must be home. */
export function GapClockChart({ figure, width, theme, id }: Props) {
  const palette = paletteOf(theme);
  const letters = theme === 'sunlight' ? 18 : 13;
  const [left, right, top] = [3.2 * letters, width - 10, letters + 12];
  const x = scaleLinear([0, figure.last], [left, right]);
  const y = scaleLinear([0, 1.06 * figure.most], [top + DEEP, top]);
  const height = top + DEEP + 2 * letters + 16;
  const at = (points: GapClock['usual'], closed = false) =>
    pathOf(
      points.map(([t, room]) => [x(t), y(room)] as const),
      closed,
      1,
      1,
    );
  const home = round(x(figure.needs));
  const leftOfHome = home > (left + right) / 2;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={figure.words}
      fontFamily={WORDS}
      fontSize={letters}
      fill={palette.ink}
    >
      <defs>
        <pattern
          id={`${id}-give`}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V7" stroke={palette.copperText} strokeWidth={1.4} />
        </pattern>
      </defs>
      <text x={left} y={letters}>
        {figure.unit}
      </text>
      <g fontFamily={LETTERS}>
        {figure.ticks.room.map((value) => (
          <g key={value} transform={`translate(${left} ${round(y(value))})`}>
            <path
              d={`M-4 0H${round(right - left)}`}
              stroke={palette.ink}
              strokeOpacity={value === 0 ? 1 : 0.2}
            />
            <text x={-7} y={letters / 3} textAnchor="end">
              {value}
            </text>
          </g>
        ))}
        {figure.ticks.time.map((value) => (
          <text key={value} x={round(x(value))} y={top + DEEP + letters + 4} textAnchor="middle">
            {value}
          </text>
        ))}
      </g>
      <path
        d={at(figure.band, true)}
        fill={`url(#${id}-give)`}
        stroke={palette.copperText}
        strokeWidth={1}
      />
      <path d={at(figure.usual)} fill="none" stroke={palette.ground} strokeWidth={6} />
      <path d={at(figure.usual)} fill="none" stroke={palette.ink} strokeWidth={3} />
      <path
        d={`M${home} ${top}V${top + DEEP}`}
        stroke={palette.tealText}
        strokeWidth={2.5}
        strokeDasharray="7 4"
      />
      <text
        x={home + (leftOfHome ? -6 : 6)}
        y={top + letters}
        textAnchor={leftOfHome ? 'end' : 'start'}
        fill={palette.tealText}
        stroke={palette.ground}
        strokeWidth={4}
        paintOrder="stroke"
        fontWeight={600}
      >
        home by here
      </text>
      <text x={right} y={height - 4} textAnchor="end">
        {figure.unitOfTime}
      </text>
    </svg>
  );
}
