import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import type { Point } from '../figures/contours.ts';
import type { Across, SectionFigure } from '../figures/sectionFigure.ts';
import type { SectionWords } from '../figures/sectionWords.ts';
import { CircleLine } from './CircleLine.tsx';
import { LETTER, LETTERS, pathOf, round } from './ink.ts';

interface Props {
  readonly section: SectionFigure;
  readonly words: SectionWords;
  readonly theme: Theme;
  /** px, both ways. */
  readonly size: number;
  /** Clock position pointed at, radians, and the deviation there, signed, in units of the map; null none. */
  readonly at: { readonly theta: number; readonly text: string } | null;
}

const MARGIN = 22;
const SIZE = 12;
const VALUE = 13;
/** Where along a radius figures are written: diameters, and that of the cursor. */
const IN = 0.52;
const OUT = 0.8;
/** Height of a slip of paper, and how much of a ray is seen beyond it, px. */
const SLIP = 18;
const BEYOND = 14;

/** px of the picture for each mm as drawn. */
export function sectionScale({ reach }: SectionFigure, size: number): number {
  return (size / 2 - MARGIN) / reach;
}

/** The bore cut across at one depth, wear drawn larger, with its circles, its diameters and the place pointed at. */
export function SectionView({ section, words, theme, size, at }: Props) {
  const palette = paletteOf(theme);
  const middle = size / 2;
  const scale = sectionScale(section, size);
  const ring = (points: readonly Point[]) => pathOf(points, true, scale, -scale);
  const { circles, radius, wanted, least, greatest, exaggeration } = section;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${size} ${size}`}
      width={size}
      height={size}
      role="img"
      aria-label={`${words.sentence} Wear drawn ${exaggeration} times, seen from face A.`}
      fontFamily={LETTERS}
    >
      <g transform={`translate(${middle} ${middle})`} fill="none">
        <path
          d={ring(section.outer) + ring(section.inner)}
          fill={palette.inkSoft}
          fillOpacity={0.22}
          fillRule="evenodd"
        />
        <path
          d={sideOf(section, Math.min, scale)}
          fill={palette.copperText}
          fillOpacity={0.6}
          fillRule="evenodd"
        />
        <path
          d={sideOf(section, Math.max, scale)}
          fill={palette.tealText}
          fillOpacity={0.6}
          fillRule="evenodd"
        />
        <g strokeWidth={1} stroke={palette.inkSoft}>
          {[least, greatest].map((one) =>
            one === null ? null : (
              <path key={one.theta} d={diameterPath(one, radius * scale)} strokeDasharray="1 3" />
            ),
          )}
        </g>
        <CircleLine
          kind="wanted"
          x={round(wanted.x * scale)}
          y={round(-wanted.y * scale)}
          radius={round(radius * scale)}
          theme={theme}
        />
        {circles.map(({ kind, x, y, radius: drawn }) => (
          <CircleLine
            key={kind}
            kind={kind}
            x={round(x * scale)}
            y={round(-y * scale)}
            radius={round(drawn * scale)}
            theme={theme}
          />
        ))}
        <path d={ring(section.outline)} stroke={palette.ink} strokeWidth={2.2} />
        {section.touched.map(({ at: [x, y], row }) => (
          <circle
            key={`${row} ${x}`}
            cx={round(x * scale)}
            cy={round(-y * scale)}
            r={2.4}
            fill={palette.ink}
            stroke={palette.ground}
          />
        ))}
        {at !== null && <Ray theta={at.theta} length={section.reach * scale} palette={palette} />}
        <Figures {...{ section, words, at, palette }} reach={radius * scale} />
      </g>
      <Hours middle={middle} palette={palette} />
    </svg>
  );
}

/** What lies between right and the outline on one side of right; '' where the outline is not known. */
function sideOf(
  { outline, radius, wanted }: SectionFigure,
  pick: (a: number, b: number) => number,
  scale: number,
): string {
  if (outline.length === 0) return '';
  const held = outline.map(([px, py]): Point => {
    const [x, y] = [px - wanted.x, py - wanted.y];
    const size = Math.hypot(x, y) || 1;
    const share = pick(size, radius) / size;
    return [wanted.x + x * share, wanted.y + y * share];
  });
  const r = round(radius * scale);
  return `M${round(wanted.x * scale) - r} ${round(-wanted.y * scale)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z${pathOf(held, true, scale, -scale)}`;
}

function toward(theta: number, length: number): [x: number, y: number] {
  return [length * Math.sin(theta), -length * Math.cos(theta)];
}

function diameterPath({ theta }: Across, length: number): string {
  const [x, y] = toward(theta, length);
  return `M${round(x)} ${round(y)}L${round(-x)} ${round(-y)}`;
}

interface RayProps {
  readonly theta: number;
  readonly length: number;
  readonly palette: Palette;
}

function Ray({ theta, length, palette }: RayProps) {
  const [x, y] = toward(theta, length + 4).map(round) as [number, number];
  return (
    <g data-ray={round(theta)}>
      <path d={`M0 0L${x} ${y}`} stroke={palette.ground} strokeWidth={4} opacity={0.7} />
      <path d={`M0 0L${x} ${y}`} stroke={palette.ink} strokeWidth={1.5} />
    </g>
  );
}

interface HoursProps {
  readonly middle: number;
  readonly palette: Palette;
}

/** Twelve ticks, every third with its hour. */
function Hours({ middle, palette }: HoursProps) {
  return (
    <g textAnchor="middle" fontSize={SIZE} fill={palette.inkSoft} stroke="none">
      {Array.from({ length: 12 }, (_, hour) => {
        const angle = (hour * Math.PI) / 6;
        const [x, y] = toward(angle, middle - 9);
        const [fromX, fromY] = toward(angle, middle - MARGIN + 5);
        const [toX, toY] = toward(angle, middle - MARGIN + (hour % 3 === 0 ? 5 : 10));
        return hour % 3 === 0 ? (
          <text key={angle} x={round(middle + x)} y={round(middle + y + 4)}>
            {hour === 0 ? 12 : hour}
          </text>
        ) : (
          <path
            key={angle}
            d={`M${round(middle + fromX)} ${round(middle + fromY)}L${round(middle + toX)} ${round(middle + toY)}`}
            stroke={palette.frame}
          />
        );
      })}
    </g>
  );
}

interface FiguresProps {
  readonly section: SectionFigure;
  readonly words: SectionWords;
  readonly at: Props['at'];
  readonly reach: number;
  readonly palette: Palette;
}

/** Figures on slips of paper, each at that end of its line which is farthest from the others. */
function Figures({ section: { least, greatest }, words, at, reach, palette }: FiguresProps) {
  const wanted = [
    at === null || at.text === ''
      ? null
      : { text: at.text, ends: [onRay(at.theta, at.text, reach)] },
    greatest && { text: words.greatest, ends: ends(greatest.theta, IN * reach) },
    least && { text: words.least, ends: ends(least.theta, IN * reach) },
  ];
  const placed: { text: string; x: number; y: number }[] = [];
  for (const one of wanted) {
    if (one === null) continue;
    const free = ([x, y]: readonly [number, number]) =>
      Math.min(...placed.map((p) => Math.hypot((p.x - x) / 3, p.y - y)));
    const [x, y] = one.ends.reduce((best, end) => (free(end) > free(best) ? end : best));
    placed.push({ text: one.text, x, y });
  }
  return placed.map(({ text, x, y }, i) => {
    const wide = slipWidth(text);
    return (
      <g key={`${text} ${wanted.length - i}`} stroke="none">
        <rect
          x={round(x - wide / 2)}
          y={round(y - SLIP / 2)}
          width={round(wide)}
          height={SLIP}
          rx={4}
          fill={palette.ground}
          fillOpacity={0.92}
        />
        <text
          x={round(x)}
          y={round(y + 4.5)}
          textAnchor="middle"
          fontSize={VALUE}
          fontWeight={600}
          fill={palette.ink}
        >
          {text}
        </text>
      </g>
    );
  });
}

function slipWidth(text: string): number {
  return text.length * LETTER * VALUE + 6;
}

/** On the ray, and so far in that the ray runs on beyond its slip: a stump would be read as a dash after the figure. */
function onRay(theta: number, text: string, reach: number): [number, number] {
  const half = Math.min(
    slipWidth(text) / 2 / Math.abs(Math.sin(theta)),
    SLIP / 2 / Math.abs(Math.cos(theta)),
  );
  return toward(theta, Math.min(OUT * reach, Math.max(0.4 * reach, reach - half - BEYOND)));
}

function ends(theta: number, length: number): [number, number][] {
  return [toward(theta, length), toward(theta + Math.PI, length)];
}
