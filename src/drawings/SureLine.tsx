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

/** px between teeth, and how long they are. */
const EVERY = 16;
const TOOTH = 6;

/**
 * The edge of the metal that is sure to come off (a heavy line), or of what possibly may (a row of dots); teeth point
 * to the metal.
 */
export function SureLine({ lines, kind, theme }: Props) {
  const { ink, ground } = paletteOf(theme);
  const d = lines.map((points) => pathOf(points, false, 1, 1)).join('');
  const teeth = lines
    .flatMap((points) => teethOf(points, EVERY, -TOOTH))
    .map((tooth) => pathOf(tooth, false, 1, 1))
    .join('');
  const dots =
    kind === 'possible' ? { strokeDasharray: '0.1 5', strokeLinecap: 'round' as const } : {};
  return (
    <g fill="none" strokeLinejoin="round">
      <path d={d} stroke={ground} strokeWidth={4.5} {...dots} />
      <path d={teeth} stroke={ground} strokeWidth={3.5} />
      <path d={d} stroke={ink} strokeWidth={2.5} {...dots} />
      <path d={teeth} stroke={ink} strokeWidth={1.6} />
    </g>
  );
}
