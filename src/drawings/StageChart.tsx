import { line, scaleLinear, ticks } from 'd3';
import { paletteOf, type Theme } from '../figures/colour.ts';
import type { StageChartFigure, StageCurve } from '../figures/stageChart.ts';
import { LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly figure: StageChartFigure;
  readonly width: number;
  readonly theme: Theme;
}

const DEEP = 130;
/** Line style of each curve: never told by colour alone. */
const DASHES: Readonly<Record<StageCurve['kind'], string>> = { round: '', high: '7 4', low: '2 4' };

/** Three curves over the stages: those measured on plain ground, those planned on hatched. */
export function StageChart({ figure, width, theme }: Props) {
  const { stages, measured, curves, most, unit, words } = figure;
  const palette = paletteOf(theme);
  const letters = theme === 'sunlight' ? 18 : 13;
  const colours = { round: palette.ink, high: palette.copperText, low: palette.tealText };
  const [left, right] = [3 * letters, width - 8];
  const top = curves.length * (letters + 6) + 10;
  const x = scaleLinear([-0.5, stages.length - 0.5], [left, right]);
  const y = scaleLinear([0, 1.05 * most], [top + DEEP, top]);
  const named = stages.map((name, i) => (i < measured ? name : name.replace(/^pass /, '')));
  const room = (right - left) / stages.length;
  const height = top + DEEP + 3 * letters + 6;
  const planned = round(x(measured - 0.5));
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={words}
      fontFamily={WORDS}
      fontSize={letters}
      fill={palette.ink}
    >
      {curves.map(({ kind, name }, i) => (
        <g key={kind} transform={`translate(${left} ${(i + 1) * (letters + 6) - 4})`}>
          <path
            d={`M0 ${-letters / 3}h34`}
            stroke={colours[kind]}
            strokeWidth={2.5}
            strokeDasharray={DASHES[kind]}
          />
          <text x={42} fill={colours[kind]}>
            {name}
          </text>
        </g>
      ))}
      {measured < stages.length && (
        <path d={`M${planned} ${top}V${top + DEEP}`} stroke={palette.ink} strokeDasharray="3 3" />
      )}
      <g fontFamily={LETTERS}>
        {ticks(0, most, 4).map((value) => (
          <g key={value} transform={`translate(${left} ${round(y(value))})`}>
            <path d={`M-4 0H${round(right - left)}`} stroke={palette.ink} strokeOpacity={0.2} />
            <text x={-7} y={letters / 3} textAnchor="end">
              {value}
            </text>
          </g>
        ))}
        {named.map((name, i) => (
          <text key={i} x={round(x(i))} y={top + DEEP + letters + 4} textAnchor="middle">
            {fitting(name, room, letters)}
          </text>
        ))}
      </g>
      <text x={left} y={height - 6}>
        {unit}
        {measured < stages.length && '; right of the line: planned'}
      </text>
      {curves.map(({ kind, values }) => (
        <path
          key={kind}
          d={line<number>((_, i) => x(i), y)([...values]) ?? ''}
          fill="none"
          stroke={colours[kind]}
          strokeWidth={2.5}
          strokeDasharray={DASHES[kind]}
        />
      ))}
    </svg>
  );
}

/** As much of a name as there is room for; a letter is about half as wide as it is high. */
function fitting(name: string, room: number, letters: number): string {
  const most = Math.max(2, Math.floor(room / (0.6 * letters)));
  return name.length <= most ? name : `${name.slice(0, most - 1)}…`;
}
