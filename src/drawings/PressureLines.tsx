import { paletteOf, type Theme } from '../figures/colour.ts';
import type { Polyline } from '../figures/contours.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import type { PressedPart, PressedWall } from '../figures/pressedWall.ts';
import { pressFigures } from '../figures/pressFigures.ts';
import { turned } from '../figures/sample.ts';
import { FigureSlip } from './FigureSlip.tsx';
import { LETTER, pathOf, round } from './ink.ts';

interface Props {
  readonly pressed: PressedWall;
  readonly frame: MapFrame;
  readonly theme: Theme;
  /** Sets this drawing's own ids apart from those of others on the page. */
  readonly id: string;
  /** What it shows, in words. */
  readonly label: string;
}

const SIZE = 13;
/** px of a line by its level: the harder, the thicker; as in three dimensions. */
export const PRESS_WIDTHS = [1, 1.6, 2.3, 3, 3.8] as const;

/** Over the flat map: how hard a bushing presses, in lines with their figures, and ruled where it does not touch. */
export function PressureLines({ pressed, frame, theme, id, label }: Props) {
  const scale = {
    x: frame.across / (2 * Math.PI),
    y: frame.scaleY,
    width: frame.across,
    height: frame.down,
  };
  const figures = pressFigures(pressed, scale, { wide: LETTER * SIZE, high: SIZE + 4 });
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(frame.width)} ${round(frame.height)}`}
      width={round(frame.width)}
      height={round(frame.height)}
      role="img"
      aria-label={label}
    >
      <defs>
        <GapPattern id={`${id}-gap`} theme={theme} />
        <clipPath id={`${id}-pressed`}>
          <rect width={round(frame.across)} height={round(frame.down)} />
        </clipPath>
      </defs>
      <g transform={`translate(${frame.left} ${frame.top})`} clipPath={`url(#${id}-pressed)`}>
        {pressed.parts.map((part) => (
          <Part key={part.name} {...{ part, pressed, scale, theme }} gap={`${id}-gap`} />
        ))}
        {figures.map(({ text, x, y }) => (
          <FigureSlip
            key={`${text} ${round(x)} ${round(y)}`}
            {...{ text, x, y, theme }}
            size={SIZE}
          />
        ))}
      </g>
    </svg>
  );
}

interface PartProps {
  readonly part: PressedPart;
  readonly pressed: PressedWall;
  readonly scale: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly theme: Theme;
  /** Id of the pattern. */
  readonly gap: string;
}

function Part({ part, pressed, scale, theme, gap }: PartProps) {
  const { ink, ground } = paletteOf(theme);
  const path = (lines: readonly Polyline[]) =>
    lines.map(({ points, closed }) => pathOf(points, closed, scale.x, scale.y)).join('');
  const at = ({ theta, z }: { readonly theta: number; readonly z: number }) => ({
    x: round(held(turned(theta - pressed.cut) * scale.x, scale.width)),
    y: round(held(z * scale.y, scale.height)),
  });
  const edge = path(part.edge);
  return (
    <g fill="none" strokeLinejoin="round">
      <path
        d={part.gaps.map((ring) => pathOf(ring, true, scale.x, scale.y)).join('')}
        fill={`url(#${gap})`}
        fillRule="evenodd"
      />
      <path d={edge} stroke={ground} strokeWidth={3.2} />
      <path d={edge} stroke={ink} strokeWidth={1.3} strokeDasharray="5 3" />
      {part.lines.map(({ level, lines }) => {
        const d = path(lines);
        const wide = PRESS_WIDTHS[level]!;
        return (
          <g key={level}>
            <path d={d} stroke={ground} strokeWidth={wide + 2.2} />
            <path d={d} stroke={ink} strokeWidth={wide} />
          </g>
        );
      })}
      {part.widest !== null && <Spot {...at(part.widest)} filled={false} theme={theme} />}
      {part.hardest !== null && <Spot {...at(part.hardest)} filled theme={theme} />}
    </g>
  );
}

/** A spot at the edge of the map is drawn whole. */
function held(at: number, size: number): number {
  return Math.min(size - SPOT, Math.max(SPOT, at));
}

/** px of a spot with the paper around it. */
const SPOT = 7;

interface SpotProps {
  readonly x: number;
  readonly y: number;
  readonly filled: boolean;
  readonly theme: Theme;
}

/** A filled dot where it presses hardest, an open ring where the gap is widest. */
export function Spot({ x, y, filled, theme }: SpotProps) {
  const { ink, ground } = paletteOf(theme);
  return (
    <>
      <circle cx={x} cy={y} r={SPOT} fill={ground} />
      <circle cx={x} cy={y} r={5} fill={filled ? ink : ground} stroke={ink} strokeWidth={2} />
    </>
  );
}

/** Ruled along the depth, dark and pale side by side: what is unsure of the wall is ruled aslant. */
export function GapPattern({ id, theme }: { readonly id: string; readonly theme: Theme }) {
  const { ink, ground } = paletteOf(theme);
  return (
    <pattern id={id} width={7} height={7} patternUnits="userSpaceOnUse">
      <rect width={7} height={7} fill={ground} opacity={0.5} />
      <rect x={2.5} width={1.6} height={7} fill={ink} />
    </pattern>
  );
}
