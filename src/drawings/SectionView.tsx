import { paletteOf, type Theme } from '../figures/colour.ts';
import type { Point } from '../figures/contours.ts';
import type { SectionFigure } from '../figures/sectionFigure.ts';
import { LETTERS, pathOf, round } from './ink.ts';

interface Props {
  readonly section: SectionFigure;
  readonly theme: Theme;
  /** px, both ways. */
  readonly size: number;
  /** In words, at which depth: `0.40 in deep`. */
  readonly depth: string;
  /** Clock position pointed at, radians; null none. */
  readonly at: number | null;
}

const MARGIN = 26;
const HOURS = [12, 3, 6, 9];

/** The bore cut across at one depth, wear drawn larger, with what is wanted and the average round. */
export function SectionView({ section, theme, size, depth, at: pointed }: Props) {
  const palette = paletteOf(theme);
  const middle = size / 2;
  const scale = (middle - MARGIN) / section.reach;
  const ring = (points: readonly Point[]) => pathOf(points, true, scale, -scale);
  const { average, radius } = section;
  const out = middle - MARGIN + 14;
  const wanted = section.about === 'target' ? 'wanted size' : 'average of the whole wall';
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${size} ${size}`}
      width={size}
      height={size}
      role="img"
      aria-label={`The bore cut across ${depth}, wear drawn ${section.exaggeration} times; ${wanted} as a thin circle`}
      fontFamily={LETTERS}
      fontSize={12}
    >
      <g transform={`translate(${middle} ${middle})`} fill="none">
        <path
          d={ring(section.outer) + ring(section.inner)}
          fill={palette.inkSoft}
          fillOpacity={0.18}
          fillRule="evenodd"
        />
        <circle r={round(radius * scale)} stroke={palette.tealText} strokeWidth={1.5} />
        {average !== null && (
          <circle
            cx={round(average.x * scale)}
            cy={round(-average.y * scale)}
            r={round(average.radius * scale)}
            stroke={palette.inkSoft}
            strokeDasharray="4 3"
          />
        )}
        <path d={ring(section.outline)} stroke={palette.ink} strokeWidth={2} />
        {pointed !== null && (
          <path
            d={`M0 0L${round(section.reach * scale * Math.sin(pointed))} ${round(
              -section.reach * scale * Math.cos(pointed),
            )}`}
            stroke={palette.inkSoft}
          />
        )}
        {section.touched.map(({ at, row }) => (
          <circle
            key={`${row} ${at[0]}`}
            cx={round(at[0] * scale)}
            cy={round(-at[1] * scale)}
            r={3}
            fill={palette.ink}
            stroke={palette.ground}
          />
        ))}
      </g>
      <g fill={palette.inkSoft} textAnchor="middle">
        {HOURS.map((hour, i) => (
          <text
            key={hour}
            x={round(middle + out * Math.sin((i * Math.PI) / 2))}
            y={round(middle - out * Math.cos((i * Math.PI) / 2) + 4)}
          >
            {hour}
          </text>
        ))}
      </g>
    </svg>
  );
}
