/** The three circles that say what a hole is good for, at one measured depth, as the drawing shows them. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { formatDepth } from '../job/units.ts';
import { axisOf } from './ghost.ts';
import type { Units } from './steps.ts';
import { written } from './written.ts';

export interface ShownCircle {
  readonly kind: 'plug' | 'average' | 'around';
  readonly name: string;
  /** `2.0018 in`, across. */
  readonly size: string;
  /** Centre from the axis that the drawing stands about, and radius, mm. */
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export interface ShownCircles {
  /** Depth that they were taken at, `0.15 in`. */
  readonly deep: string;
  readonly circles: readonly ShownCircle[];
}

const KINDS = [
  { kind: 'plug', from: 'entering', name: 'biggest plug' },
  { kind: 'average', from: 'average', name: 'average round' },
  { kind: 'around', from: 'around', name: 'smallest clean-up' },
] as const;

/**
 * @param z depth asked for, mm: the nearest measured one is shown
 * @returns null where no circle is known
 */
export function circlesAt(survey: SurveyEvaluation, z: number, units: Units): ShownCircles | null {
  const sections = survey.plugs?.sections ?? [];
  const [nearest] = [...sections].sort((a, b) => Math.abs(a.z - z) - Math.abs(b.z - z));
  if (nearest === undefined) return null;
  const give = survey.sections.find((one) => one.z === nearest.z)?.give ?? Number.NaN;
  const axis = axisOf(survey);
  const circles = KINDS.flatMap(({ kind, from, name }): ShownCircle[] => {
    const plug = nearest[from];
    if (plug === null) return [];
    return [
      {
        kind,
        name,
        size: written(units, give).plain(plug.diameter),
        x: plug.axis.x - axis.x - axis.leanX * nearest.z,
        y: plug.axis.y - axis.y - axis.leanY * nearest.z,
        radius: plug.diameter / 2,
      },
    ];
  });
  return circles.length === 0 ? null : { deep: formatDepth(nearest.z, units), circles };
}
