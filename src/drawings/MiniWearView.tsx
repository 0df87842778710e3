import { paletteOf, type Theme } from '../figures/colour.ts';
import type { MiniWear } from '../figures/miniWear.ts';
import { pathOf } from './ink.ts';

interface Props {
  readonly mini: MiniWear;
  readonly theme: Theme;
}

const R = 26;
const DEPTH = 62;

/** The hole from its end beside a cut along it; the thin lines are the hole when new. */
export function MiniWearView({ mini, theme }: Props) {
  const { ink, tealText, boss, ground } = paletteOf(theme);
  const far = mini.far.map(([x, y]) => [-x, y] as const);
  const hollow = [...mini.near, ...far.reverse()];
  return (
    <svg viewBox="0 0 176 92" aria-hidden="true" stroke={ink} fill="none">
      <g transform="translate(46 46)">
        <circle r={43} fill={boss} strokeWidth={1} />
        <path d={pathOf(mini.end, true, R, -R)} fill={ground} strokeWidth={2} />
        <circle r={R} stroke={tealText} strokeWidth={1} strokeDasharray="4 3" />
      </g>
      <g transform={`translate(132 ${46 - DEPTH / 2})`}>
        <rect x={-41} width={82} height={DEPTH} fill={boss} strokeWidth={1} />
        <path d={pathOf(hollow, true, R, DEPTH)} fill={ground} strokeWidth={2} />
        <path
          d={`M${-R} 0V${DEPTH}M${R} 0V${DEPTH}`}
          stroke={tealText}
          strokeWidth={1}
          strokeDasharray="4 3"
        />
      </g>
    </svg>
  );
}

/** Half a bore, where both axes lie, and the thickest bar that both let through: it touches the wall of each once. */
const HALF = 11;
const AXES = { left: 52, right: 40 } as const;
const BAR = { top: AXES.left - HALF, bottom: AXES.right + HALF } as const;

/** Two ears whose bores are good and out of line, and the straight bar that says so. */
export function TwoEarsView({ theme, words }: { readonly theme: Theme; readonly words: string }) {
  const { ink, tealText, copperText, boss, ground, paper } = paletteOf(theme);
  return (
    <svg viewBox="0 0 176 92" stroke={ink} fill="none" role="img" aria-label={words}>
      <Ear x={24} axis={AXES.left} boss={boss} ground={ground} line={tealText} />
      <Ear x={112} axis={AXES.right} boss={boss} ground={ground} line={tealText} />
      <rect x={8} y={BAR.top} width={160} height={BAR.bottom - BAR.top} fill={paper} />
      <circle cx={44} cy={BAR.top} r={4} stroke={copperText} strokeWidth={2} />
      <circle cx={132} cy={BAR.bottom} r={4} stroke={copperText} strokeWidth={2} />
    </svg>
  );
}

interface EarProps {
  readonly x: number;
  readonly axis: number;
  readonly boss: string;
  readonly ground: string;
  readonly line: string;
}

function Ear({ x, axis, boss, ground, line }: EarProps) {
  return (
    <>
      <rect x={x} y={4} width={40} height={84} fill={boss} strokeWidth={1} />
      <rect x={x} y={axis - HALF} width={40} height={2 * HALF} fill={ground} strokeWidth={1.5} />
      <path d={`M${x - 6} ${axis}h52`} stroke={line} strokeWidth={1} strokeDasharray="7 3 2 3" />
    </>
  );
}
