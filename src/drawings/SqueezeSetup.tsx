/** How a squeeze is set up: jaws across the long way, heat on the two sides between; and along which depths to grip. */
import { grownBy, type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import { pathOf, round, WORDS } from './ink.ts';

const WIDTH = 320;
const HEIGHT = 290;
const MIDDLE = { x: WIDTH / 2, y: HEIGHT / 2 };
const BOSS = 70;
const BORE = 38;
/** How oval the bore is drawn; only its direction is meant. */
const OVAL = 7;
const JAW = { from: BOSS + 3, to: BOSS + 30, half: 34 };
const SIGN = 8;

interface AcrossProps {
  /** Clock position of one jaw, radians. */
  readonly jaws: number;
  /** Clock positions in words: of the jaws, of the heat. */
  readonly jawsAt: readonly [string, string];
  readonly heatAt: readonly [string, string];
  readonly theme: Theme;
}

/** Looking in at face A. */
export function SqueezeAcross({ jaws, jawsAt, heatAt, theme }: AcrossProps) {
  const palette = paletteOf(theme);
  const size = 13 * grownBy(theme);
  const turn = (theta: number) => (theta * 180) / Math.PI;
  const bore = Array.from({ length: 97 }, (_, i) => {
    const theta = (2 * Math.PI * i) / 96;
    return toward(theta, BORE + OVAL * Math.cos(2 * (theta - jaws)));
  });
  const signs = [
    { theta: jaws, text: jawsAt[0] },
    { theta: jaws + Math.PI, text: jawsAt[1] },
    { theta: jaws + Math.PI / 2, text: heatAt[0] },
    { theta: jaws - Math.PI / 2, text: heatAt[1] },
  ];
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Seen looking in at face A: jaws press on the boss at ${jawsAt[0]} and ${jawsAt[1]} o’clock, heat plays on the sides between, at ${heatAt[0]} and ${heatAt[1]} o’clock.`}
      fontFamily={WORDS}
      fontSize={size}
    >
      <g transform={`translate(${MIDDLE.x} ${MIDDLE.y})`}>
        <path
          d={`M${-BOSS} 0a${BOSS} ${BOSS} 0 1 0 ${2 * BOSS} 0a${BOSS} ${BOSS} 0 1 0 ${-2 * BOSS} 0Z${pathOf(bore, true, 1, 1)}`}
          fill={palette.boss}
          stroke={palette.ink}
          strokeWidth={2}
          fillRule="evenodd"
        />
        <circle r={BORE} fill="none" stroke={palette.ink} strokeDasharray="5 4" strokeWidth={1.5} />
        {[jaws, jaws + Math.PI].map((theta) => (
          <g key={theta} transform={`rotate(${round(turn(theta))})`}>
            <Jaw palette={palette} />
          </g>
        ))}
        {[jaws + Math.PI / 2, jaws - Math.PI / 2].map((theta) => (
          <g key={theta} transform={`rotate(${round(turn(theta))})`}>
            <Flame palette={palette} />
          </g>
        ))}
        {signs.map(({ theta, text }) => {
          const [x, y] = toward(theta, JAW.to + SIGN + size / 2);
          return (
            <text
              key={text}
              x={round(x)}
              y={round(y + size / 3)}
              textAnchor="middle"
              fontWeight={600}
              fill={palette.ink}
            >
              {text}
            </text>
          );
        })}
      </g>
    </svg>
  );
}

function toward(theta: number, length: number): [number, number] {
  return [length * Math.sin(theta), -length * Math.cos(theta)];
}

interface Inked {
  readonly palette: Palette;
}

/** A block on the boss at 12 o'clock, and the way it presses. */
function Jaw({ palette }: Inked) {
  const { from, to, half } = JAW;
  return (
    <>
      <rect
        x={-half}
        y={-to}
        width={2 * half}
        height={to - from}
        fill={palette.inkSoft}
        stroke={palette.ink}
        strokeWidth={1.5}
      />
      <path
        d={`M0 ${-to + 4}V${-from - 9}M-6 ${-from - 14}L0 ${-from - 5}L6 ${-from - 14}`}
        fill="none"
        stroke={palette.ground}
        strokeWidth={2.5}
      />
    </>
  );
}

/** A heated side at 12 o'clock: three tongues that play on the boss. */
function Flame({ palette }: Inked) {
  return [-16, 0, 16].map((x) => (
    <path
      key={x}
      d={`M${x} ${-BOSS - 2}c-8 -8 -4 -14 0 -24c4 10 8 16 0 24Z`}
      fill={palette.copperText}
      stroke={palette.ink}
      strokeWidth={1}
    />
  ));
}

interface AlongProps {
  /** mm, from face A. */
  readonly length: number;
  readonly grip: { readonly from: number; readonly to: number };
  readonly gripText: { readonly from: string; readonly to: string };
  /** Depths to be measured cold. */
  readonly measured: readonly number[];
  readonly theme: Theme;
}

const LONG = { from: 46, to: 286, wall: 44, upper: 64, lower: 182 };

/** Cut along the axis: where the jaws sit and where they stay off, and the depths to be measured cold. */
export function SqueezeAlong({ length, grip, gripText, measured, theme }: AlongProps) {
  const palette = paletteOf(theme);
  const size = 13 * grownBy(theme);
  const x = (z: number) => round(LONG.from + ((LONG.to - LONG.from) * z) / length);
  const [left, right] = [x(grip.from), Math.max(x(grip.to), x(grip.from) + 12)];
  const middle = (LONG.upper + LONG.wall + LONG.lower) / 2;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Cut along the bore: the jaws grip the boss from ${gripText.from} to ${gripText.to} deep and nowhere else; the heat plays on the same stretch.`}
      fontFamily={WORDS}
      fontSize={size}
    >
      {[LONG.upper, LONG.lower].map((y) => (
        <rect
          key={y}
          x={LONG.from}
          y={y}
          width={LONG.to - LONG.from}
          height={LONG.wall}
          fill={palette.boss}
          stroke={palette.ink}
          strokeWidth={2}
        />
      ))}
      {[LONG.upper - 30, LONG.lower + LONG.wall + 3].map((y, i) => (
        <g key={y}>
          <rect
            x={left}
            y={y}
            width={right - left}
            height={27}
            fill={palette.inkSoft}
            stroke={palette.ink}
            strokeWidth={1.5}
          />
          <path
            d={
              i === 0
                ? `M${(left + right) / 2} ${y + 4}v16m-6 -6l6 8l6 -8`
                : `M${(left + right) / 2} ${y + 23}v-16m-6 6l6 -8l6 8`
            }
            fill="none"
            stroke={palette.ground}
            strokeWidth={2.5}
          />
        </g>
      ))}
      <rect
        x={left}
        y={LONG.upper + LONG.wall + 6}
        width={right - left}
        height={LONG.lower - LONG.upper - LONG.wall - 12}
        fill="none"
        stroke={palette.copperText}
        strokeWidth={2}
        strokeDasharray="6 4"
      />
      {measured.map((z) => (
        <path
          key={z}
          d={`M${x(z)} ${LONG.upper + LONG.wall}V${LONG.lower}`}
          stroke={palette.ink}
          strokeDasharray="2 4"
          strokeWidth={1.5}
        />
      ))}
      <g fill={palette.ink} stroke={palette.ground} strokeWidth={4} paintOrder="stroke">
        <text x={LONG.from - 6} y={middle} textAnchor="end">
          A
        </text>
        <text x={left} y={LONG.upper - 38}>
          {`jaws: ${gripText.from} to ${gripText.to}`}
        </text>
        <text x={left + 6} y={middle - 2}>
          heat
        </text>
        <text x={LONG.to} y={LONG.lower + LONG.wall + 24 + size} textAnchor="end">
          free
        </text>
      </g>
    </svg>
  );
}
