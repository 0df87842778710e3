import { paletteOf, type Theme } from '../figures/colour.ts';
import type { Point } from '../figures/contours.ts';
import { teethOf } from '../figures/teeth.ts';
import { pathOf } from './ink.ts';

interface Props {
  /** px, metal to the right of the way that each runs. */
  readonly lines: readonly (readonly Point[])[];
  readonly kind: 'sure' | 'possible';
  readonly theme: Theme;
}

/** px between teeth, and how long they are: few and short, so that the colours under them stay in sight. */
const TEETH = { sure: { every: 22, long: 5 }, possible: { every: 44, long: 4 } } as const;
const DOTS = { strokeDasharray: '0.1 4.5', strokeLinecap: 'round' } as const;

/**
 * The edge of the metal that is sure to come off (a full line), or of what possibly may (a row of fine dots); teeth
 * point to the metal.
 */
export function SureLine({ lines, kind, theme }: Props) {
  const { ink, ground } = paletteOf(theme);
  const sure = kind === 'sure';
  const { every, long } = TEETH[kind];
  const d = lines.map((points) => pathOf(points, false, 1, 1)).join('');
  const teeth = lines
    .flatMap((points) => teethOf(points, every, -long))
    .map((tooth) => pathOf(tooth, false, 1, 1))
    .join('');
  const dots = sure ? {} : DOTS;
  return (
    <g fill="none" strokeLinejoin="round">
      <path d={d} stroke={ground} strokeWidth={sure ? 4 : 3.5} strokeOpacity={0.8} {...dots} />
      <path d={d} stroke={ink} strokeWidth={sure ? 2 : 1.8} {...dots} />
      <path d={teeth} stroke={ink} strokeWidth={1.4} />
    </g>
  );
}
