/** A boss between two ears, cut along the pin: what stands beside it, to scale, and what stays open. */
import { grownBy, type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import { SIDE_STACK, type StackBar, type StackFigure } from '../figures/sideGapFigure.ts';
import { round, WORDS } from './ink.ts';

export function SideStackView({
  stack,
  theme,
}: {
  readonly stack: StackFigure;
  readonly theme: Theme;
}) {
  const palette = paletteOf(theme);
  const { width, height, boss, ear, top, tall } = SIDE_STACK;
  const size = 12 * grownBy(theme);
  const names = [...new Set(stack.bars.map(({ name }) => name))].join(', ');
  const edge = { stroke: palette.ink, strokeWidth: 1.5 };
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`The boss between its ears after the work, cut along the pin: ${names}.`}
      fontFamily={WORDS}
      fontSize={size}
    >
      <rect
        x={round(stack.left - ear)}
        y={top - 12}
        width={ear}
        height={tall + 24}
        fill={palette.bossCut}
        {...edge}
      />
      <rect
        x={round(stack.right)}
        y={top - 12}
        width={ear}
        height={tall + 24}
        fill={palette.bossCut}
        {...edge}
      />
      <rect
        x={(width - boss) / 2}
        y={top}
        width={boss}
        height={tall}
        fill={palette.boss}
        {...edge}
      />
      <path
        d={`M${width / 2 - 4} ${top - 4}l4 ${tall / 2}l-4 8l4 ${tall / 2}`}
        fill="none"
        stroke={palette.ink}
        strokeWidth={2}
      />
      {stack.bars.map((bar, at) => (
        <Bar key={at} bar={bar} palette={palette} />
      ))}
      <text x={round(stack.left - ear)} y={size} fill={palette.ink}>
        ear, face A
      </text>
      <text x={round(stack.right + ear)} y={size} textAnchor="end" fill={palette.ink}>
        ear, face B
      </text>
      <text x={0} y={height - 6} fill={palette.ink}>
        boss cut short
      </text>
      <path
        d={`M${round(width - 76 - stack.check.long)} ${height - 16}v7h${round(stack.check.long)}v-7`}
        fill="none"
        stroke={palette.ink}
        strokeWidth={1.5}
      />
      <text x={width} y={height - 6} textAnchor="end" fill={palette.ink}>
        {stack.check.text}
      </text>
    </svg>
  );
}

/** Shims are hatched, bushings dark, washers and other parts pale; a gap stays open. */
function Bar({
  bar: { kind, x, width },
  palette,
}: {
  readonly bar: StackBar;
  readonly palette: Palette;
}) {
  const { top, tall } = SIDE_STACK;
  if (kind === 'gap') return null;
  const low = kind === 'bushing' || kind === 'ear-bushing';
  const y = low ? top + tall / 4 : top + 4;
  const height = low ? tall / 2 : tall - 8;
  const fill = low ? palette.inkSoft : palette.paper;
  const strokes = kind === 'shims' ? Math.floor(height / 8) : 0;
  return (
    <g stroke={palette.ink} strokeWidth={1.2}>
      <rect x={round(x)} y={y} width={round(Math.max(width, 1))} height={height} fill={fill} />
      {Array.from({ length: strokes }, (_, i) => (
        <path key={i} d={`M${round(x)} ${y + 8 * (i + 1)}l${round(width)} -8`} />
      ))}
    </g>
  );
}
