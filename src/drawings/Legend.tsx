import { grownBy, lineOver, paletteOf, type Theme } from '../figures/colour.ts';
import type { LegendFigure } from '../figures/legend.ts';
import { HatchPattern } from './Hatch.tsx';
import { LETTER, LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly legend: LegendFigure;
  readonly theme: Theme;
  readonly width: number;
  /** Little height: the words stand in the bar. */
  readonly low: boolean;
  readonly id: string;
}

const SIZE = 12;
/** Room at the right for what is hatched, and how much of it the hatching takes. */
const UNSURE = 62;
const HATCHED = 46;
/** A bar that long has room for whole words over both its ends. */
const ROOMY = 260;

/** The key: which colour is how much, on which side of right, and what hatching means. */
export function Legend({ legend, theme, width, low, id }: Props) {
  const palette = paletteOf(theme);
  const grown = grownBy(theme);
  const wide = width / grown;
  const across = round(wide - UNSURE);
  const top = low ? 0.5 : 18;
  const bar = low ? 17 : 14;
  const height = top + bar + 15;
  const middle = round(wide - HATCHED / 2 - 1);
  const sides = [
    legend.high && `copper is ${legend.high.words}`,
    legend.low && `teal is ${legend.low.words}`,
  ];
  const words = [...sides, 'hatched is unsure', legend.unit].filter(Boolean).join(', ');
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(wide)} ${height}`}
      width={round(width)}
      height={round(height * grown)}
      role="img"
      aria-label={`Key: ${words}`}
      fontFamily={LETTERS}
      fontSize={SIZE}
    >
      <defs>
        <HatchPattern id={`${id}-hatch`} palette={palette} />
      </defs>
      <Bar
        legend={legend}
        across={across}
        top={top}
        height={bar}
        id={`${id}-ramp`}
        colour={palette.frame}
      />
      <g fill="none" stroke={palette.frame}>
        <rect x={0.5} y={top} width={across} height={bar} />
        <rect x={middle - HATCHED / 2} y={top} width={HATCHED} height={bar} fill={palette.paper} />
        <rect
          x={middle - HATCHED / 2}
          y={top}
          width={HATCHED}
          height={bar}
          fill={`url(#${id}-hatch)`}
        />
      </g>
      <Edges legend={legend} across={across} y={height - 2} colour={palette.inkSoft} />
      <g fontFamily={WORDS} fontSize={13}>
        <text x={middle} y={height - 2} textAnchor="middle" fill={palette.inkSoft}>
          unsure
        </text>
        <Sides legend={legend} theme={theme} across={across} low={low} />
      </g>
    </svg>
  );
}

interface BarProps {
  readonly legend: LegendFigure;
  readonly across: number;
  readonly top: number;
  readonly height: number;
  /** Id of the gradient. */
  readonly id: string;
  readonly colour: string;
}

function Bar({ legend, across, top, height, id, colour }: BarProps) {
  const last = legend.colours.length - 1;
  return (
    <>
      <linearGradient id={id}>
        {legend.colours.map((one, i) => (
          <stop key={i / last} offset={round(i / last)} stopColor={one} />
        ))}
      </linearGradient>
      <rect x={0.5} y={top} width={across} height={height} fill={`url(#${id})`} />
      <g stroke={colour}>
        {legend.edges.map(({ share, text }) => (
          <path key={text} d={`M${round(share * across)} ${top + height}v-4`} />
        ))}
      </g>
    </>
  );
}

interface EdgesProps {
  readonly legend: LegendFigure;
  readonly across: number;
  readonly y: number;
  readonly colour: string;
}

/** The figures at the contours, as many as there is room for, dropped from the middle outwards. */
function Edges({ legend: { edges }, across, y, colour }: EdgesProps) {
  const wide = across / (edges.length + 1);
  const longest = Math.max(1, ...edges.map(({ text }) => text.length));
  const every = Math.max(1, Math.ceil(((longest + 0.6) * LETTER * SIZE) / wide));
  const low = edges.findIndex(({ text }) => text.startsWith('+'));
  const middle = low < 0 ? edges.length : low;
  const shown = (i: number) => (i >= middle ? i - middle : middle - 1 - i) % every === 0;
  return edges.map(({ share, text }, i) =>
    shown(i) ? (
      <text key={text} x={round(share * across)} y={y} textAnchor="middle" fill={colour}>
        {text}
      </text>
    ) : null,
  );
}

interface SidesProps {
  readonly legend: LegendFigure;
  readonly theme: Theme;
  readonly across: number;
  readonly low: boolean;
}

/** In words, what either end of the bar means: over it, or in it where there is little height. */
function Sides({ legend, theme, across, low }: SidesProps) {
  const { copperText, tealText } = paletteOf(theme);
  if (!low) {
    return (
      <g fontSize={14} fontWeight={500}>
        <text y={12} fill={copperText}>
          {across < ROOMY ? legend.high?.short : legend.high?.words}
        </text>
        <text x={across} y={12} textAnchor="end" fill={tealText}>
          {across < ROOMY ? legend.low?.short : legend.low?.words}
        </text>
      </g>
    );
  }
  const ends = [
    { text: legend.high?.short, x: 5, anchor: 'start', ground: legend.colours[0] },
    { text: legend.low?.short, x: across - 5, anchor: 'end', ground: legend.colours.at(-1) },
  ] as const;
  return ends.map(({ text, x, anchor, ground = '#000' }) => (
    <text
      key={anchor}
      x={x}
      y={13.5}
      textAnchor={anchor}
      fontWeight={600}
      fill={lineOver([ground], theme)}
      stroke={ground}
      strokeWidth={4}
      strokeLinejoin="round"
      paintOrder="stroke"
    >
      {text}
    </text>
  ));
}
