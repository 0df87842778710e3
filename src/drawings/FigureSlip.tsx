import { paletteOf, type Theme } from '../figures/colour.ts';
import { LETTER, LETTERS, round } from './ink.ts';

interface Props {
  readonly text: string;
  /** Middle of the slip, px. */
  readonly x: number;
  readonly y: number;
  /** Of the letters, px. */
  readonly size: number;
  readonly theme: Theme;
}

/** A figure on a slip of paper, so that neither lines nor dots run through it. */
export function FigureSlip({ text, x, y, size, theme }: Props) {
  const { ink, ground } = paletteOf(theme);
  const width = text.length * LETTER * size + 6;
  return (
    <g>
      <rect
        x={round(x - width / 2)}
        y={round(y - size / 2 - 2)}
        width={round(width)}
        height={size + 4}
        rx={4}
        fill={ground}
        fillOpacity={0.9}
      />
      <text
        x={round(x)}
        y={round(y + size * 0.36)}
        textAnchor="middle"
        fontFamily={LETTERS}
        fontSize={size}
        fontWeight={600}
        fill={ink}
      >
        {text}
      </text>
    </g>
  );
}
