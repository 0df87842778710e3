import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import type { StripBox } from '../figures/mapSheet.ts';
import type { Steps } from '../figures/steps.ts';
import { type StripPoint, type StripScale, stripRun } from '../figures/strips.ts';
import { LETTER, LETTERS, round } from './ink.ts';
import { StripShade } from './StripShade.tsx';

interface Props {
  readonly points: readonly StripPoint[];
  readonly scale: StripScale;
  readonly steps: Steps;
  /** Length of the strip, mm: what `along` runs to. */
  readonly length: number;
  readonly box: StripBox;
  /** True: it runs down, metal that stands proud to the left; else to the right, proud metal up. */
  readonly upright: boolean;
  readonly theme: Theme;
  /** Sets this drawing's own ids apart from those of others on the page. */
  readonly id: string;
  /** Place pointed at, mm along; its figure, signed. Null: none. */
  readonly at: { readonly along: number; readonly text: string } | null;
}

const SIZE = 12;
const VALUE = 14;

/** Deviation along a line on the wall, towards the map where metal stands proud: copper off, teal short. */
export function StripView(props: Props) {
  const { points, scale, length, box, upright, theme, at } = props;
  const palette = paletteOf(theme);
  const { width, height } = box;
  const place = stripRun(scale, length, box, upright);
  const here = at === null ? null : nearest(points, at.along);
  return (
    <g transform={`translate(${round(box.left)} ${round(box.top)})`} fontFamily={LETTERS}>
      <rect width={round(width)} height={round(height)} fill={palette.ground} />
      <StripShade {...props} />
      <path
        d={upright ? `M${place.rise(0)} 0v${round(height)}` : `M0 ${place.rise(0)}h${round(width)}`}
        stroke={palette.ink}
      />
      <rect width={round(width)} height={round(height)} fill="none" stroke={palette.frame} />
      <Ticks {...{ scale, box, upright, palette }} rise={place.rise} />
      {at !== null && (
        <path
          d={upright ? `M0 ${place.run(at.along)}h${width}` : `M${place.run(at.along)} 0v${height}`}
          stroke={palette.ink}
        />
      )}
      {at !== null && here !== null && Number.isFinite(here.deviation) && (
        <Value
          x={upright ? place.rise(here.deviation) : place.run(at.along)}
          y={upright ? place.run(at.along) : place.rise(here.deviation)}
          {...{ box, palette }}
          text={at.text}
        />
      )}
    </g>
  );
}

function nearest(points: readonly StripPoint[], along: number): StripPoint | null {
  const [first, second] = points;
  if (first === undefined || second === undefined) return null;
  return points[Math.round((along - first.along) / (second.along - first.along))] ?? null;
}

interface TicksProps {
  readonly scale: StripScale;
  readonly rise: (mm: number) => number;
  readonly box: StripBox;
  readonly upright: boolean;
  readonly palette: Palette;
}

/** The figures of the scale, zero before all: left of a lying strip, under an upright one. */
function Ticks({ scale, rise, box, upright, palette }: TicksProps) {
  const room = upright ? box.width : box.height;
  const least = upright ? 4.2 * LETTER * SIZE : SIZE + 1;
  const taken: number[] = [];
  const shown = [...scale.ticks]
    .sort((a, b) => Math.abs(a.value) - Math.abs(b.value))
    .filter(({ value }) => {
      const at = rise(value);
      const free = at >= 3 && at <= room - 3 && taken.every((t) => Math.abs(t - at) >= least);
      if (free) taken.push(at);
      return free;
    });
  return (
    <g fill={palette.inkSoft} fontSize={SIZE}>
      {shown.map(({ value, text }) =>
        upright ? (
          <g key={text}>
            <path d={`M${rise(value)} ${round(box.height)}v4`} stroke={palette.frame} />
            <text x={rise(value)} y={round(box.height + 16)} textAnchor="middle">
              {text}
            </text>
          </g>
        ) : (
          <g key={text}>
            <path d={`M-4 ${rise(value)}h4`} stroke={palette.frame} />
            <text x={-7} y={round(rise(value) + 4)} textAnchor="end">
              {text}
            </text>
          </g>
        ),
      )}
    </g>
  );
}

interface ValueProps {
  readonly x: number;
  readonly y: number;
  readonly box: StripBox;
  readonly text: string;
  readonly palette: Palette;
}

/** A dot on the profile and its figure on a slip of paper, inside the strip and clear of the dot. */
function Value({ x, y, box, text, palette }: ValueProps) {
  const wide = text.length * LETTER * VALUE + 8;
  const right = x + 9 + wide <= box.width;
  const left = right ? x + 9 : Math.max(0, x - 9 - wide);
  const top = Math.min(Math.max(y - 10, 1), Math.max(1, box.height - 21));
  return (
    <g>
      <circle cx={x} cy={y} r={4} fill={palette.ink} stroke={palette.ground} strokeWidth={1.5} />
      <rect
        x={round(left)}
        y={round(top)}
        width={round(wide)}
        height={20}
        rx={4}
        fill={palette.ground}
        stroke={palette.frame}
      />
      <text
        x={round(left + wide / 2)}
        y={round(top + 15)}
        textAnchor="middle"
        fontSize={VALUE}
        fontWeight={600}
        fill={palette.ink}
      >
        {text}
      </text>
    </g>
  );
}
