import { area, line, type ScaleLinear, scaleLinear } from 'd3';
import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import {
  markLanes,
  type Panel,
  type TradeOffFigure,
  textAt,
  valueAt,
} from '../figures/tradeOff.ts';
import { LETTER, LETTERS, round, WORDS } from './ink.ts';

/** Where the parts of the chart go, px. */
export interface TradeOffFrame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  /** Top of each panel's scale, and its height. */
  readonly tops: readonly number[];
  readonly deep: number;
  readonly axis: number;
  /** Size of the letters; lines are thicker with larger ones. */
  readonly letters: number;
  readonly x: ScaleLinear<number, number>;
}

const DEEP = 62;
/** Radius of the handle's knob, which sits on the axis, and how far below the axis the tops of its figures stand, px. */
const KNOB = 13;
const BELOW = 13;
/** Left room for five letters of a scale. */
const MARGIN = { letters: 3.5, right: 18 } as const;

export function tradeOffFrame(figure: TradeOffFigure, width: number, theme: Theme): TradeOffFrame {
  const letters = theme === 'sunlight' ? 19 : 13;
  const title = letters + 12;
  const tops = figure.panels.map((_, i) => title + i * (DEEP + title + 4));
  const axis = tops[tops.length - 1]! + DEEP;
  const [left, right] = [MARGIN.letters * letters, width - MARGIN.right];
  const x = scaleLinear([figure.least, figure.greatest], [left, right]);
  const lanes = markLanes(figure, x, [0, width], letters * 0.52).map(({ lane }) => lane);
  const height = axis + 2 * letters + BELOW + 5 + (Math.max(-1, ...lanes) + 1) * (letters + 6);
  return { width, height, left, right, tops, deep: DEEP, axis, letters, x };
}

interface Props {
  readonly figure: TradeOffFigure;
  readonly frame: TradeOffFrame;
  readonly theme: Theme;
}

/** Keeps letters apart from lines behind them. */
const HALO = {
  stroke: 'var(--paper, #fff)',
  strokeWidth: 4,
  strokeLinejoin: 'round',
  paintOrder: 'stroke',
} as const;

const COLOURS: Readonly<Record<Panel['kind'], 'copperText' | 'ink' | 'tealText'>> = {
  off: 'copperText',
  held: 'ink',
  gap: 'tealText',
};

/** Three small charts over one scale of target sizes: what a size costs, what it holds, what it leaves open. */
export function TradeOffChart({ figure, frame, theme }: Props) {
  const palette = paletteOf(theme);
  const { width, height, letters } = frame;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(width)} ${round(height)}`}
      width={round(width)}
      height={round(height)}
      role="img"
      aria-label={`Metal off, share of the seat held and worst gap for target sizes from ${figure.least.toFixed(4)} to ${figure.greatest.toFixed(4)} ${figure.units} across`}
      fontFamily={LETTERS}
      fontSize={letters}
    >
      <Marks figure={figure} frame={frame} palette={palette} />
      {figure.panels.map((panel, i) => (
        <PanelView
          key={panel.kind}
          panel={panel}
          diameters={figure.diameters}
          frame={frame}
          top={frame.tops[i]!}
          palette={palette}
        />
      ))}
      <SizeAxis frame={frame} palette={palette} />
    </svg>
  );
}

interface PartProps {
  readonly figure: TradeOffFigure;
  readonly frame: TradeOffFrame;
  readonly palette: Palette;
}

/** Sizes of the bore dotted, sizes of the bushing dashed; each with its name under the axis. */
function Marks({ figure, frame, palette }: PartProps) {
  const { axis, letters, x, width, tops } = frame;
  const lanes = markLanes(figure, x, [0, width], letters * 0.52);
  const foot = axis + letters + BELOW + 3;
  const yOf = (lane: number) => round(foot + (lane + 1) * (letters + 6));
  return (
    <g fontFamily={WORDS} fill={palette.inkSoft}>
      {lanes.map(({ x: at, middle, lane, name, own }) => (
        <path
          key={name}
          d={`M${round(at)} ${tops[0]! - 4}V${round(foot + 4)}L${round(middle)} ${yOf(lane) - letters + 1}`}
          fill="none"
          stroke={palette.frame}
          strokeWidth={letters / 12}
          strokeDasharray={own ? '1.5 3' : '6 3'}
        />
      ))}
      {lanes.map(({ middle, lane, name }) => (
        <text key={name} x={round(middle)} y={yOf(lane)} textAnchor="middle" {...HALO}>
          {name}
        </text>
      ))}
    </g>
  );
}

interface PanelProps {
  readonly panel: Panel;
  readonly diameters: readonly number[];
  readonly frame: TradeOffFrame;
  readonly top: number;
  readonly palette: Palette;
}

function PanelView({ panel, diameters, frame, top, palette }: PanelProps) {
  const { left, right, deep, letters, x } = frame;
  const y = scaleLinear([0, panel.top], [top + deep, top]);
  const colour = palette[COLOURS[panel.kind]];
  const at = (i: number) => round(x(diameters[i]!));
  const path = line<number>(
    (_, i) => at(i),
    (v) => round(y(v)),
  ).defined(Number.isFinite);
  const band = area<readonly [number, number]>()
    .x((_, i) => at(i))
    .y0(([least]) => round(y(least)))
    .y1(([, most]) => round(y(most)))
    .defined((pair) => pair.every(Number.isFinite));
  const ticks = panel.kind === 'held' ? [0, 50, 100] : y.ticks(2);
  const text = y.tickFormat(2);
  return (
    <g>
      <text x={left} y={top - 8} fontFamily={WORDS} fill={palette.ink} {...HALO}>
        {panel.title}
      </text>
      <g fill={palette.inkSoft} stroke={palette.frame}>
        {ticks.map((tick) => (
          <g key={tick}>
            <path d={`M${left} ${round(y(tick))}H${right}`} strokeWidth={tick === 0 ? 1 : 0.5} />
            <text
              x={left - 6}
              y={round(y(tick) + letters / 3)}
              textAnchor="end"
              stroke="none"
              fontSize={letters - 1}
            >
              {text(tick)}
            </text>
          </g>
        ))}
      </g>
      <path d={band(panel.band) ?? ''} fill={colour} fillOpacity={0.16} />
      {[...panel.curves].reverse().map(({ of, values }) => (
        <path
          key={of}
          d={path(values) ?? ''}
          fill="none"
          stroke={colour}
          strokeWidth={(of === 'suit' && panel.curves.length > 1 ? 0.12 : 0.18) * letters}
          strokeDasharray={of === 'suit' && panel.curves.length > 1 ? '7 4' : undefined}
        />
      ))}
    </g>
  );
}

function SizeAxis({ frame, palette }: Omit<PartProps, 'figure'>) {
  const { axis, letters, x, left, right } = frame;
  const ticks = x.ticks(Math.max(2, Math.floor((right - left) / (7.5 * letters))));
  const text = x.tickFormat(ticks.length);
  return (
    <g fill={palette.inkSoft} stroke={palette.frame} fontSize={letters - 1}>
      {ticks.map((tick) => (
        <g key={tick}>
          <path d={`M${round(x(tick))} ${axis}v5`} />
          <text x={round(x(tick))} y={axis + letters + BELOW} textAnchor="middle" {...HALO}>
            {text(tick)}
          </text>
        </g>
      ))}
    </g>
  );
}

/** The chosen size: a line through the panels with what each says there, and a grip at its foot. */
export function TradeOffHandle({ figure, frame, theme, at }: Props & { readonly at: number }) {
  const palette = paletteOf(theme);
  const { axis, letters, x, left, right, tops, deep, width, height } = frame;
  const px = round(x(at));
  const beside = px > (left + right) / 2 ? -1 : 1;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(width)} ${round(height)}`}
      width={round(width)}
      height={round(height)}
      aria-hidden="true"
      fontFamily={LETTERS}
      fontSize={letters + 1}
      fontWeight={600}
    >
      {tops.map((top) => (
        <path
          key={top}
          d={`M${px} ${top - 4}V${top + deep}`}
          stroke={palette.ink}
          strokeWidth={2}
        />
      ))}
      {figure.panels.map((panel, i) => {
        const value = valueAt(figure.diameters, panel.curves[0]!.values, at);
        if (Number.isNaN(value)) return null;
        const y = round(tops[i]! + deep * (1 - value / panel.top));
        const top = tops[i]!;
        return (
          <Value
            key={panel.kind}
            {...{ px, y, beside, letters, palette }}
            foot={Math.min(Math.max(y - 7, top + letters - 4), top + deep - 4)}
            text={textAt(figure, panel, at)}
          />
        );
      })}
      <circle
        cx={px}
        cy={axis}
        r={KNOB}
        fill={palette.ink}
        stroke={palette.ground}
        strokeWidth={2}
      />
      <path
        d={`M${px - 3} ${axis - 5}l-5 5 5 5M${px + 3} ${axis - 5}l5 5 -5 5`}
        fill="none"
        stroke={palette.ground}
        strokeWidth={2}
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}

interface ValueProps {
  readonly px: number;
  readonly y: number;
  /** Side of the line that the figure stands on, and its foot. */
  readonly beside: number;
  readonly foot: number;
  readonly text: string;
  readonly letters: number;
  readonly palette: Palette;
}

/** A dot on the curve and its figure on a slip of paper, so that no line runs through it. */
function Value({ px, y, beside, foot, text, letters, palette }: ValueProps) {
  const wide = text.length * LETTER * (letters + 1);
  const from = px + 10 * beside - (beside > 0 ? 0 : wide);
  return (
    <g>
      <circle cx={px} cy={y} r={5} fill={palette.ink} stroke={palette.ground} strokeWidth={2} />
      <rect
        x={round(from - 3)}
        y={round(foot - letters)}
        width={round(wide + 6)}
        height={round(letters + 5)}
        rx={3}
        fill={HALO.stroke}
        fillOpacity={0.88}
      />
      <text x={round(from)} y={foot} fill={palette.ink} {...HALO}>
        {text}
      </text>
    </g>
  );
}
