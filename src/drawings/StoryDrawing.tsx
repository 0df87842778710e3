import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import type { StoryPicture } from '../figures/storyPicture.ts';
import { LETTERS, pathOf, round } from './ink.ts';

interface Props {
  readonly picture: StoryPicture;
  readonly theme: Theme;
  /** What it shows, in words. */
  readonly words: string;
  /** Sets this drawing's own ids apart from those of others on the page. */
  readonly id: string;
}

/** Drawn on a square of this many units; the page sets its size. */
const SIZE = 240;
const MARGIN = 22;
const HOURS = [12, 3, 6, 9];

/**
 * The bore from its end. Dots: worn away beyond the round; slanting lines: metal to take off; both told by colour as
 * well. Bushing and pin where they are in.
 */
export function StoryDrawing({ picture, theme, words, id }: Props) {
  const palette = paletteOf(theme);
  const middle = SIZE / 2;
  const scale = (middle - MARGIN) / picture.boss;
  const hole = pathOf(picture.hole, true, scale, -scale);
  const r = (mm: number) => round(mm * scale);
  const { bushing, pin } = picture;
  const off = picture.proud === 'take-off';
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${SIZE} ${SIZE}`}
      role="img"
      aria-label={words}
      fontFamily={LETTERS}
      fontSize={12}
    >
      <Patterns id={id} palette={palette} hole={hole} />
      <g transform={`translate(${middle} ${middle})`} stroke={palette.ink}>
        <circle r={r(picture.boss)} fill={palette.boss} strokeWidth={1.5} />
        {off && <circle r={r(picture.round)} fill={`url(#${id}-off)`} stroke="none" />}
        <path d={hole} fill={`url(#${id}-gone)`} stroke="none" />
        <circle
          r={r(picture.round)}
          fill={palette.ground}
          stroke="none"
          clipPath={`url(#${id}-hole)`}
        />
        <path d={hole} fill="none" strokeWidth={2} />
        {bushing !== null && (
          <>
            <circle r={r(bushing.outer)} fill={palette.bossCut} strokeWidth={1.5} />
            <circle r={r(bushing.inner)} fill={palette.ground} strokeWidth={1} />
          </>
        )}
        {bushing === null && pin === 0 && (
          <circle r={r(picture.round)} fill="none" strokeWidth={1.2} strokeDasharray="6 4" />
        )}
        {pin > 0 && <Pin r={r(pin)} palette={palette} />}
      </g>
      <Clock palette={palette} load={picture.load} />
    </svg>
  );
}

interface PatternsProps {
  readonly id: string;
  readonly palette: Palette;
  readonly hole: string;
}

function Patterns({ id, palette, hole }: PatternsProps) {
  return (
    <defs>
      <clipPath id={`${id}-hole`}>
        <path d={hole} />
      </clipPath>
      <pattern
        id={`${id}-off`}
        width={5}
        height={5}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width={5} height={5} fill={palette.copperText} />
        <rect width={1.4} height={5} fill={palette.ground} />
      </pattern>
      <pattern id={`${id}-gone`} width={6} height={6} patternUnits="userSpaceOnUse">
        <rect width={6} height={6} fill={palette.ground} />
        <rect width={6} height={6} fill={palette.tealText} opacity={0.4} />
        <circle cx={1.5} cy={1.5} r={1.1} fill={palette.ink} />
        <circle cx={4.5} cy={4.5} r={1.1} fill={palette.ink} />
      </pattern>
    </defs>
  );
}

/** The pin's end, with the cross that says that it is round and solid. */
function Pin({ r, palette }: { readonly r: number; readonly palette: Palette }) {
  return (
    <>
      <circle r={r} fill={palette.paper} strokeWidth={1.5} />
      <path
        d={`M${-r * 0.18} 0H${r * 0.18}M0 ${-r * 0.18}V${r * 0.18}`}
        strokeWidth={1}
        stroke={palette.inkSoft}
      />
    </>
  );
}

function Clock({ palette, load }: { readonly palette: Palette; readonly load: number }) {
  const middle = SIZE / 2;
  const out = middle - 9;
  return (
    <g fill={palette.inkSoft} textAnchor="middle">
      {HOURS.map((hour, i) => (
        <text
          key={hour}
          x={round(middle + out * Math.sin((i * Math.PI) / 2))}
          y={round(middle - out * Math.cos((i * Math.PI) / 2) + 5)}
        >
          {hour}
        </text>
      ))}
      {Number.isFinite(load) && (
        <path
          transform={`translate(${middle} ${middle}) rotate(${round((load * 180) / Math.PI)})`}
          d={`M0 ${-(middle - MARGIN - 4)}l-6 11h12z`}
          fill={palette.ink}
          stroke={palette.ground}
        />
      )}
    </g>
  );
}
