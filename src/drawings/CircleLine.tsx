import { paletteOf, type Theme } from '../figures/colour.ts';
import type { DrawnCircle } from '../figures/sectionFigure.ts';

export type CircleKind = 'wanted' | DrawnCircle['kind'];

interface Props {
  readonly kind: CircleKind;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly theme: Theme;
}

const DASHES: Readonly<Record<CircleKind, string | undefined>> = {
  wanted: undefined,
  average: '6 4',
  entering: '1.5 3',
  around: '10 3 2 3',
};

/** One of the circles of a section, px; each kind has its own dashes, so that none needs its colour. */
export function CircleLine({ kind, x, y, radius, theme }: Props) {
  const { inkSoft, tealText, copperText } = paletteOf(theme);
  const colours = { wanted: tealText, average: inkSoft, entering: copperText, around: copperText };
  return (
    <circle
      cx={x}
      cy={y}
      r={radius}
      fill="none"
      stroke={colours[kind]}
      strokeWidth={kind === 'wanted' ? 2 : 1.6}
      strokeDasharray={DASHES[kind]}
    />
  );
}
