import { paletteOf, type Theme } from '../figures/colour.ts';
import { LETTERS, round } from './ink.ts';

interface Props {
  readonly theme: Theme;
  /** px, both ways. */
  readonly size: number;
  /** Clock position to point at, radians; null none. */
  readonly hand: number | null;
  /** Clock position that the load pulls to; null not stated. */
  readonly load: number | null;
  /** Which face it is looked into from: from B the clock runs the other way round. */
  readonly face: 'A' | 'B';
}

const HOURS = [12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11];

/** The bore as a clock, seen looking in at a face. */
export function ClockFace({ theme, size, hand, load, face }: Props) {
  const palette = paletteOf(theme);
  const middle = size / 2;
  const radius = middle - 15;
  const sign = face === 'A' ? 1 : -1;
  const at = (theta: number, r: number) => ({
    x: round(middle + sign * r * Math.sin(theta)),
    y: round(middle - r * Math.cos(theta)),
  });
  const line = (theta: number, from: number, to: number) => {
    const [a, b] = [at(theta, from), at(theta, to)];
    return `M${a.x} ${a.y}L${b.x} ${b.y}`;
  };
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${size} ${size}`}
      width={size}
      height={size}
      role="img"
      aria-label={`Clock seen looking in at face ${face}`}
      fontFamily={LETTERS}
      fontSize={12}
    >
      <circle cx={middle} cy={middle} r={radius} fill={palette.ground} stroke={palette.frame} />
      {HOURS.map((hour, i) => {
        const theta = (i * Math.PI) / 6;
        const { x, y } = at(theta, radius + 8);
        return (
          <g key={hour}>
            <path d={line(theta, radius - 5, radius)} stroke={palette.frame} />
            {i % 3 === 0 && (
              <text x={x} y={round(y + 4)} textAnchor="middle" fill={palette.inkSoft}>
                {hour}
              </text>
            )}
          </g>
        );
      })}
      {load !== null && (
        <path d={line(load, 0, 0.55 * radius)} stroke={palette.inkSoft} strokeDasharray="3 3" />
      )}
      {hand !== null && (
        <path d={line(hand, 0, radius - 4)} stroke={palette.ink} strokeWidth={2.5} />
      )}
      <circle cx={middle} cy={middle} r={2.5} fill={palette.ink} />
    </svg>
  );
}
