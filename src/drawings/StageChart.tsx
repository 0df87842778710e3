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
  const room = (right - left) / stages.length;
  const { labels, key } = named(stages, measured, (name) => name.length * 0.6 * letters <= room);
  const foot = top + DEEP + letters + 4;
  const height = foot + (key.length + 1) * (letters + 6) + 2;
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
        {labels.map((name, i) => (
          <text key={i} x={round(x(i))} y={foot} textAnchor="middle">
            {name}
          </text>
        ))}
      </g>
      {key.map((text, i) => (
        <text key={text} x={left} y={foot + (i + 1) * (letters + 6)}>
          {text}
        </text>
      ))}
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

/**
 * What stands under the axis: names where all of them fit, else a letter for each stage that was measured, told below. A pass
 * that is planned is its number.
 */
function named(
  stages: readonly string[],
  measured: number,
  fits: (name: string) => boolean,
): { readonly labels: readonly string[]; readonly key: readonly string[] } {
  const short = (name: string) => name.replace(/^pass /, '');
  if (stages.every((name, i) => fits(i < measured ? name : short(name)))) {
    return { labels: stages.map((name, i) => (i < measured ? name : short(name))), key: [] };
  }
  const letter = (i: number) => String.fromCharCode(65 + (i % 26));
  return {
    labels: stages.map((name, i) => (i < measured ? letter(i) : short(name))),
    key: stages.slice(0, measured).map((name, i) => `${letter(i)}: ${name}`),
  };
}
