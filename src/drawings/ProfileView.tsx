import { line } from 'd3';
import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import type { ProfileFigure, ProfilePoint } from '../figures/profileFigure.ts';
import {
  depthScale,
  PROFILE_MARGIN as MARGIN,
  sizeScale,
  spread,
} from '../figures/profileFrame.ts';
import { LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly profile: ProfileFigure;
  readonly theme: Theme;
  readonly width: number;
  readonly height: number;
  /** Depth pointed at, in the job's units; null none. */
  readonly at: number | null;
}

/** Figures of the depth stand about this far apart, px, or farther. */
const DEPTH_APART = 44;

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
  const x = depthScale(profile, width);
  const y = sizeScale(profile, height);
  const path = (of: (typeof LINES)[number]) =>
    line<ProfilePoint>(
      (p) => round(x(p.z)),
      (p) => round(y(p[of])),
    ).defined((p) => Number.isFinite(p[of]))(profile.points) ?? '';
  const bottom = y.range()[0]!;
  const right = x.range()[1]!;
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
      <Scales {...{ profile, width, height, palette }} />
      {Number.isFinite(profile.target) && (
        <path
          d={`M${MARGIN.left} ${round(y(profile.target))}H${right}`}
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
      <Fitted profile={profile} x={x} y={y} palette={palette} />
      {at !== null && (
        <path
          data-depth={round(at)}
          d={`M${round(x(at))} ${MARGIN.top}V${bottom}`}
          stroke={palette.ink}
        />
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
      <Names {...{ profile, width, height, palette }} />
    </svg>
  );
}

interface PartProps {
  readonly profile: ProfileFigure;
  readonly width: number;
  readonly height: number;
  readonly palette: Palette;
}

function Scales({ profile, width, height, palette }: PartProps) {
  const x = depthScale(profile, width);
  const y = sizeScale(profile, height);
  const bottom = y.range()[0]!;
  const diameters = y.ticks(Math.max(2, Math.min(5, Math.floor(height / 40))));
  const diameterText = y.tickFormat(diameters.length);
  const [left, right] = x.range() as [number, number];
  const depths = x.ticks(Math.max(1, Math.min(5, Math.floor((right - left) / DEPTH_APART))));
  return (
    <g stroke={palette.frame} fill={palette.inkSoft}>
      <path d={`M${MARGIN.left} ${MARGIN.top}V${bottom}H${x.range()[1]}`} fill="none" />
      {diameters.map((tick) => (
        <g key={tick}>
          <path d={`M${MARGIN.left - 4} ${round(y(tick))}h4`} />
          <text x={MARGIN.left - 7} y={round(y(tick) + 4)} textAnchor="end" stroke="none">
            {diameterText(tick)}
          </text>
        </g>
      ))}
      {depths.map((tick) => (
        <g key={tick}>
          <path d={`M${round(x(tick))} ${bottom}v4`} />
          <text x={round(x(tick))} y={bottom + 17} textAnchor="middle" stroke="none">
            {tick === 0 ? `0 ${profile.units}` : tick}
          </text>
        </g>
      ))}
      <text x={2} y={11} stroke="none" fontFamily={WORDS} fontSize={13}>
        {profile.units} across
      </text>
    </g>
  );
}

interface FittedProps {
  readonly profile: ProfileFigure;
  readonly x: (z: number) => number;
  readonly y: (diameter: number) => number;
  readonly palette: Palette;
}

/** The plain shape that the measured depths tell: a wide pale line under the mean. */
function Fitted({ profile: { fitted, range }, x, y, palette }: FittedProps) {
  if (fitted.length === 0) return null;
  const held = (diameter: number) => Math.min(range.greatest, Math.max(range.least, diameter));
  const d = line<{ z: number; diameter: number }>(
    (p) => round(x(p.z)),
    (p) => round(y(held(p.diameter))),
  )(fitted);
  return (
    <path d={d ?? ''} fill="none" stroke={palette.frame} strokeOpacity={0.55} strokeWidth={7} />
  );
}

/** What each line is, at its right end. */
function Names({ profile, width, height, palette }: PartProps) {
  const y = sizeScale(profile, height);
  const x = depthScale(profile, width);
  const last = profile.points.findLast((p) => Number.isFinite(p.mean));
  if (last === undefined) return null;
  const named = [
    ...(['greatest', 'mean', 'least'] as const).map((of) => ({
      name: of as string,
      at: y(last[of]),
      colour: palette.ink,
    })),
    { name: 'wanted', at: y(profile.target), colour: palette.tealText },
  ].filter(({ at }) => Number.isFinite(at));
  const heights = spread(
    named.map(({ at }) => at),
    14,
    MARGIN.top + 4,
    y.range()[0]! - 4,
  );
  return (
    <g fontFamily={WORDS} fontSize={13}>
      {named.map(({ name, colour }, i) => (
        <text key={name} x={x.range()[1]! + 6} y={round(heights[i]! + 4)} fill={colour}>
          {name}
        </text>
      ))}
    </g>
  );
}
