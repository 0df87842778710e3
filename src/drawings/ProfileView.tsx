import { line, scaleLinear } from 'd3';
import { paletteOf, type Theme } from '../figures/colour.ts';
import type { ProfileFigure, ProfilePoint } from '../figures/profileFigure.ts';
import { LETTERS, round } from './ink.ts';

interface Props {
  readonly profile: ProfileFigure;
  readonly theme: Theme;
  readonly width: number;
  readonly height: number;
  /** Depth pointed at, in the job's units; null none. */
  readonly at: number | null;
}

const MARGIN = { left: 62, right: 16, top: 12, bottom: 26 } as const;
const LINES = ['least', 'mean', 'greatest'] as const;
const DASH: Readonly<Record<(typeof LINES)[number], string | undefined>> = {
  least: '5 3',
  mean: undefined,
  greatest: '2 3',
};

/** Least, mean and greatest diameter from the rim (left) to the bottom, with the size that is wanted. */
export function ProfileView({ profile, theme, width, height, at }: Props) {
  const palette = paletteOf(theme);
  const { least, greatest } = profile.range;
  const room = Math.max(0.08 * (greatest - least), 1e-3);
  const x = scaleLinear([0, profile.length], [MARGIN.left, width - MARGIN.right]);
  const y = scaleLinear([least - room, greatest + room], [height - MARGIN.bottom, MARGIN.top]);
  const path = (of: (typeof LINES)[number]) =>
    line<ProfilePoint>(
      (p) => round(x(p.z)),
      (p) => round(y(p[of])),
    ).defined((p) => Number.isFinite(p[of]))(profile.points) ?? '';
  const diameters = y.ticks(4);
  const diameterText = y.tickFormat(4);
  const bottom = height - MARGIN.bottom;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={`Diameter along the depth, across: from ${least.toFixed(4)} to ${greatest.toFixed(4)} ${profile.units}`}
      fontFamily={LETTERS}
      fontSize={12}
    >
      <g stroke={palette.frame} fill={palette.inkSoft}>
        <path d={`M${MARGIN.left} ${MARGIN.top}V${bottom}H${width - MARGIN.right}`} fill="none" />
        {diameters.map((tick) => (
          <text
            key={tick}
            x={MARGIN.left - 6}
            y={round(y(tick) + 4)}
            textAnchor="end"
            stroke="none"
          >
            {diameterText(tick)}
          </text>
        ))}
        {x.ticks(5).map((tick) => (
          <text key={tick} x={round(x(tick))} y={bottom + 18} textAnchor="middle" stroke="none">
            {tick}
          </text>
        ))}
      </g>
      {Number.isFinite(profile.target) && (
        <path
          d={`M${MARGIN.left} ${round(y(profile.target))}H${width - MARGIN.right}`}
          stroke={palette.tealText}
          strokeWidth={1.5}
        />
      )}
      {profile.seats.map(({ from, to }) => (
        <path
          key={from}
          d={`M${round(x(from))} ${bottom - 3}H${round(x(to))}`}
          stroke={palette.tealText}
          strokeWidth={5}
        />
      ))}
      {at !== null && (
        <path d={`M${round(x(at))} ${MARGIN.top}V${bottom}`} stroke={palette.inkSoft} />
      )}
      {LINES.map((of) => (
        <path
          key={of}
          d={path(of)}
          fill="none"
          stroke={palette.ink}
          strokeWidth={of === 'mean' ? 2 : 1.3}
          strokeDasharray={DASH[of]}
        />
      ))}
      {profile.measured.map(({ z, least: low, greatest: high }) => (
        <path
          key={z}
          d={`M${round(x(z))} ${round(y(low))}V${round(y(high))}`}
          stroke={palette.copperText}
          strokeWidth={3}
          strokeLinecap="round"
        />
      ))}
    </svg>
  );
}
