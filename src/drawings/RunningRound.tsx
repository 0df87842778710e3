/** A pin in the middle of the bushing's bore, clearance drawn larger than it is, with its room at every hour. */
import { grownBy, paletteOf, type Theme } from '../figures/colour.ts';
import { type RunningRound as Drawn, describeRound } from '../figures/runningRound.ts';
import type { Units } from '../job/schema.ts';
import { LETTERS, pathOf, round } from './ink.ts';

interface Props {
  readonly round: Drawn;
  readonly theme: Theme;
  readonly units: Units;
}

const HEIGHT = 290;
const PIN = 62;
/** Where the figures begin, from the middle: outside of the bushing. */
const FIGURES = 109;
/** Room for the widest figure beside the ring, in its letters' size. */
const WIDEST = 4.3;
/** Nearer to 12 or 6 than this (its sine), a figure stands above or below the ring, else beside it. */
const BESIDE = 0.3;

export function RunningRound({ round: drawn, theme, units }: Props) {
  const { ink, boss, ground, copperText } = paletteOf(theme);
  const size = 13 * grownBy(theme);
  const width = Math.ceil(2 * (FIGURES + WIDEST * size));
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${HEIGHT}`}
      width={width}
      style={{ maxWidth: '100%', height: 'auto' }}
      role="img"
      aria-label={describeRound(drawn, units)}
      fontFamily={LETTERS}
      fontSize={size}
    >
      <g transform={`translate(${width / 2} ${HEIGHT / 2})`}>
        <path
          d={`M-102 0a102 102 0 1 0 204 0a102 102 0 1 0 -204 0Z${pathOf(
            drawn.outline.map(([x, y]) => [x, y] as [number, number]),
            true,
            PIN,
            PIN,
          )}`}
          fill={boss}
          fillRule="evenodd"
          stroke={ink}
          strokeWidth={1.5}
        />
        <circle r={PIN} fill={ground} fillOpacity={0.6} stroke={ink} strokeWidth={2} />
        <path d={`M-8 0h16M0 -8v16`} stroke={ink} strokeWidth={1} />
        {drawn.hours.map(({ theta, text, tight }, i) => {
          const [sine, cosine] = [Math.sin(theta), Math.cos(theta)];
          const beside = Math.abs(sine) > BESIDE;
          return (
            <text
              key={theta}
              x={round(FIGURES * sine)}
              y={round(-(FIGURES + (beside ? 0 : size / 2)) * cosine + size / 3)}
              textAnchor={beside ? (sine > 0 ? 'start' : 'end') : 'middle'}
              fill={tight ? copperText : ink}
              fontWeight={tight ? 700 : 400}
              textDecoration={tight ? 'underline' : undefined}
            >
              {i % 3 === 0 ? `${i === 0 ? 12 : i}: ${text}` : text}
            </text>
          );
        })}
      </g>
    </svg>
  );
}
