import { scaleLinear } from 'd3';
import { paletteOf, type Theme } from '../figures/colour.ts';
import type { TemperStripFigure } from '../figures/temperStrip.ts';
import { LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly figure: TemperStripFigure;
  readonly width: number;
  readonly theme: Theme;
}

/** A bar for each colour, as long as tables differ, over the heat; the boss and its limit as lines across all. */
export function TemperStrip({ figure, width, theme }: Props) {
  const palette = paletteOf(theme);
  const letters = theme === 'sunlight' ? 18 : 13;
  const row = letters + 7;
  const [left, right] = [10, width - 10];
  const x = scaleLinear([figure.from, figure.to], [left, right]);
  const top = figure.marks.length * row + 6;
  const foot = top + figure.colours.length * row;
  const height = foot + letters + 12;
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
      {figure.marks.map(({ name, at, kind }, i) => {
        const place = round(x(at));
        const turned = place > width / 2;
        const colour = kind === 'is' ? palette.copperText : palette.ink;
        return (
          <g key={name}>
            <path
              d={`M${place} ${i * row + 4}V${foot + 4}`}
              stroke={colour}
              strokeWidth={2.5}
              strokeDasharray={kind === 'is' ? '' : '6 4'}
            />
            <text
              x={place + (turned ? -6 : 6)}
              y={(i + 1) * row - 4}
              textAnchor={turned ? 'end' : 'start'}
              fill={colour}
              stroke={palette.ground}
              strokeWidth={4}
              paintOrder="stroke"
              fontWeight={600}
            >
              {name}
            </text>
          </g>
        );
      })}
      {figure.colours.map(({ name, shade, least, most }, i) => (
        <g key={name} transform={`translate(0 ${top + i * row})`}>
          <rect
            x={round(x(least))}
            y={2}
            width={round(x(most) - x(least))}
            height={row - 5}
            fill={shade}
            stroke={palette.ink}
            strokeWidth={1.2}
          />
          <text
            x={round(x(least)) - 6}
            y={letters - 1}
            textAnchor="end"
            stroke={palette.ground}
            strokeWidth={4}
            paintOrder="stroke"
          >
            {name}
          </text>
        </g>
      ))}
      <path d={`M${left} ${foot + 2}H${right}`} stroke={palette.ink} />
      <g fontFamily={LETTERS}>
        {figure.ticks.map((value) => (
          <text key={value} x={round(x(value))} y={foot + letters + 6} textAnchor="middle">
            {value}
          </text>
        ))}
        <text x={left} y={foot + letters + 6}>
          {figure.unit}
        </text>
      </g>
    </svg>
  );
}
