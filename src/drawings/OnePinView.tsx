/** The largest straight pin through several bores, seen from the side or from above; the air beside it is exaggerated. */
import { grownBy, paletteOf, type Theme } from '../figures/colour.ts';
import { ONE_PIN, type OnePinView as View } from '../figures/onePinFigure.ts';
import { round, WORDS } from './ink.ts';

/** Metal of a bore drawn beyond its wall. */
const METAL = 12;

export function OnePinView({ view, theme }: { readonly view: View; readonly theme: Theme }) {
  const palette = paletteOf(theme);
  const { width, height, middle, pin } = ONE_PIN;
  const size = 12 * grownBy(theme);
  const { top, foot, bores } = view;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`The largest straight pin in its bores, ${top} o’clock above and ${foot} o’clock below: ${bores.map(({ name }) => name).join(', ')}.`}
      fontFamily={WORDS}
      fontSize={size}
    >
      {bores.map(({ name, left, right, upper, lower }) => (
        <g key={name} fill={palette.boss} stroke={palette.ink} strokeWidth={1.5}>
          <path
            d={`M${round(left)} ${round(middle - pin - upper[0])}L${round(right)} ${round(middle - pin - upper[1])}v${-METAL}L${round(left)} ${round(middle - pin - upper[0] - METAL)}Z`}
          />
          <path
            d={`M${round(left)} ${round(middle + pin + lower[0])}L${round(right)} ${round(middle + pin + lower[1])}v${METAL}L${round(left)} ${round(middle + pin + lower[0] + METAL)}Z`}
          />
        </g>
      ))}
      <rect
        x={2}
        y={middle - pin}
        width={width - 4}
        height={2 * pin}
        fill={palette.paper}
        stroke={palette.ink}
        strokeWidth={1.5}
      />
      <path
        d={`M2 ${middle}H${width - 2}`}
        stroke={palette.ink}
        strokeWidth={1}
        strokeDasharray="9 3 2 3"
      />
      <text x={4} y={size} fill={palette.ink}>
        {top} o’clock
      </text>
      <text x={4} y={height - 4} fill={palette.ink}>
        {foot} o’clock
      </text>
    </svg>
  );
}
