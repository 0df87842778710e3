import { scaleLinear, ticks } from 'd3';
import { paletteOf, type Theme } from '../figures/colour.ts';
import type { FitRangesFigure, RangeRow } from '../figures/fitRanges.ts';
import { LETTER, LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly figure: FitRangesFigure;
  readonly width: number;
  readonly theme: Theme;
}

/** Of a letter of `WORDS`, on the whole, as a share of its height. */
const WORD_LETTER = 0.52;

/** One bar a range under the name of its source; the wanted press fit a broken line through all of them. */
export function FitRanges({ figure, width, theme }: Props) {
  const { rows, from, to, unit, wanted, words } = figure;
  const palette = paletteOf(theme);
  const letters = theme === 'sunlight' ? 18 : 13;
  const longest = Math.max(...rows.map(({ label }) => label.length)) * WORD_LETTER * letters;
  // Where the names would take up half of the room they stand over their bars.
  const beside = longest + 12 < 0.45 * width;
  const left = beside ? longest + 12 : 10;
  const x = scaleLinear([from, to], [left, width - 12]);
  const line = letters + 6;
  const places = placed(rows, beside, line);
  const foot = 1.5 * line + places.height;
  const shown = wanted >= from && wanted <= to;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${round(foot + 2.4 * line)}`}
      width={width}
      height={round(foot + 2.4 * line)}
      role="img"
      aria-label={words}
      fontFamily={WORDS}
      fontSize={letters}
      fill={palette.ink}
    >
      <rect width={width} height={round(foot + 2.4 * line)} fill={palette.ground} />
      <g transform={`translate(0 ${1.5 * line})`}>
        {ticks(from, to, width < 500 ? 4 : 8).map((at) => (
          <g key={at} transform={`translate(${round(x(at))} 0)`}>
            <path
              d={`M0 0V${places.height}`}
              stroke={palette.ink}
              strokeOpacity={at === 0 ? 0.8 : 0.2}
            />
            <text
              y={places.height + letters + 2}
              textAnchor="middle"
              fontFamily={LETTERS}
              fontSize={letters * 0.95}
            >
              {at < 0 ? `−${-at}` : at}
            </text>
          </g>
        ))}
        {shown && (
          <path
            d={`M${round(x(wanted))} -4V${places.height}`}
            stroke={palette.ink}
            strokeWidth={2}
            strokeDasharray="6 4"
          />
        )}
        {rows.map((row, i) => (
          <Row
            key={row.label}
            {...{ row, beside, letters, left, x, palette }}
            y={places.tops[i]!}
          />
        ))}
      </g>
      {shown && (
        <text
          x={round(Math.min(width - 12 - 11 * LETTER * letters, Math.max(4, x(wanted) - 30)))}
          y={letters + 2}
        >
          wanted <tspan fontFamily={LETTERS}>{figure.wantedText}</tspan>
        </text>
      )}
      <text x={left} y={round(foot + 2.2 * line)}>
        press fit, {unit}
      </text>
    </svg>
  );
}

interface Placed {
  readonly tops: readonly number[];
  readonly height: number;
}

/** Top of each row's bar: under the head of its source, and under its own name where that stands over it. */
function placed(rows: readonly RangeRow[], beside: boolean, line: number): Placed {
  const tops: number[] = [];
  let y = 0;
  for (const { head } of rows) {
    if (head !== '') y += line * 1.2;
    if (!beside) y += line * 0.85;
    tops.push(y);
    y += beside ? line : line * 0.85;
  }
  return { tops, height: round(y + 4) };
}

interface RowProps {
  readonly row: RangeRow;
  readonly y: number;
  readonly beside: boolean;
  readonly letters: number;
  readonly left: number;
  readonly x: (value: number) => number;
  readonly palette: ReturnType<typeof paletteOf>;
}

function Row({ row, y, beside, letters, left, x, palette }: RowProps) {
  const thick = letters * 0.75;
  const over = beside ? 0 : letters + 2;
  const [a, b] = [round(x(row.least)), round(x(row.most))];
  return (
    <g transform={`translate(0 ${round(y)})`}>
      {row.head !== '' && (
        <text x={4} y={-over - 4} fontWeight={600}>
          {row.head}
        </text>
      )}
      <text
        x={beside ? left - 8 : left}
        y={beside ? thick + 1 : -3}
        textAnchor={beside ? 'end' : 'start'}
        stroke={palette.ground}
        strokeWidth={4}
        paintOrder="stroke"
      >
        {row.label}
      </text>
      {row.shown && (
        <rect
          x={a}
          y={2}
          width={Math.max(2, b - a)}
          height={thick}
          fill={row.own ? palette.ground : palette.bossCut}
          stroke={palette.ink}
          strokeWidth={row.own ? 2 : 1}
        />
      )}
      {row.own && row.shown && (
        <path d={`M${round(x(row.mean))} 2v${thick}`} stroke={palette.ink} strokeWidth={3} />
      )}
    </g>
  );
}
