/** Stringers of one layer of weld round the clock, numbered in the order of welding. */
import { grownBy, paletteOf, type Theme } from '../figures/colour.ts';
import { hourText } from '../job/clock.ts';
import { round, WORDS } from './ink.ts';

const SIZE = 320;
const BORE = 104;
const NUMBERED = 12;

interface Props {
  /** Clock positions in the order of welding, radians. */
  readonly order: readonly number[];
  readonly theme: Theme;
}

/** Looking in at face A, so that the clock runs as on a dial. */
export function SkipOrder({ order, theme }: Props) {
  const palette = paletteOf(theme);
  const size = 13 * grownBy(theme);
  const first = order.slice(0, NUMBERED);
  const at = (theta: number, length: number) => [
    round(length * Math.sin(theta)),
    round(-length * Math.cos(theta)),
  ];
  const said = first.map((theta) => hourText(theta)).join(', ');
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`${-SIZE / 2} ${-SIZE / 2} ${SIZE} ${SIZE}`}
      role="img"
      aria-label={`Seen looking in at face A: ${order.length} stringers round the bore, welded in this order: ${said}${order.length > NUMBERED ? ', then the next to each of these' : ''}.`}
      fontFamily={WORDS}
      fontSize={size}
      fill={palette.ink}
    >
      <circle r={BORE + 20} fill={palette.boss} />
      <circle r={BORE} fill={palette.ground} stroke={palette.ink} strokeWidth={2} />
      {order.map((theta, i) => {
        const [x, y] = at(theta, BORE);
        return (
          <circle
            key={theta}
            cx={x}
            cy={y}
            r={i < NUMBERED ? 5 : 3}
            fill={i < NUMBERED ? palette.ink : palette.ground}
            stroke={palette.ink}
            strokeWidth={1.5}
          />
        );
      })}
      {first.map((theta, i) => {
        // Neighbours stand on rings of their own, or their figures would touch.
        const [x, y] = at(theta, BORE - 18 - Math.floor(i / 4) * (size + 3));
        return (
          <text key={theta} x={x} y={y! + size / 3} textAnchor="middle" fontWeight={600}>
            {i + 1}
          </text>
        );
      })}
      {[0, 3, 6, 9].map((hour) => {
        const [x, y] = at((hour * Math.PI) / 6, BORE + 20 + size);
        return (
          <text key={hour} x={x} y={y! + size / 3} textAnchor="middle">
            {hour === 0 ? 12 : hour}
          </text>
        );
      })}
    </svg>
  );
}
