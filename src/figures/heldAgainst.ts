/** The bore at hand and a made-up one side by side: both counted from the new size, in the same steps and colours. */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { exaggerations } from './exaggeration.ts';
import { chooseSteps, type Steps, type Units, usualRange } from './steps.ts';
import { rangeOf, wallOf } from './wall.ts';

export interface CountedFromNew {
  readonly survey: SurveyEvaluation;
  /** New radius, mm; `from`: as stated, from its bushing, or the narrowest place that was found. */
  readonly radius: number;
  readonly from: 'stated' | 'bushing' | 'narrowest';
}

/**
 * The bore about the axis that it was read from, since wear on one side is one-sided about the old centre alone.
 *
 * @returns null where it has no surface
 */
export function countedFromNew(
  survey: SurveyEvaluation,
  { nominal }: BoreFacts,
): CountedFromNew | null {
  const { surface } = survey;
  if (surface === null) return null;
  const narrowest = Math.min(...surface.mean.filter(Number.isFinite));
  const known = nominal.mm > 0;
  const radius = known ? nominal.mm / 2 : narrowest;
  if (!(radius > 0) || !Number.isFinite(radius)) return null;
  const deviation = surface.mean.map((r) => r - radius);
  const sd = surface.sdSeen;
  const none = { volume: 0, mass: 0, sureMass: 0, possibleMass: 0 };
  return {
    radius,
    from: !known ? 'narrowest' : nominal.from === 'typed' ? 'stated' : 'bushing',
    survey: {
      ...survey,
      zones: [],
      target: {
        diameter: 2 * radius,
        axis: { x: 0, y: 0, leanX: 0, leanY: 0 },
        centreRule: 'by-hand',
        assumed: survey.target?.assumed ?? null,
      },
      removal: {
        deviation,
        sd,
        likely: deviation,
        sure: deviation,
        possible: deviation,
        firstPass: deviation,
        ...none,
      },
    },
  };
}

/** How far it departs from new, per side, mm: its rarest places left out. */
export function departure({ survey }: CountedFromNew): number {
  const wall = wallOf(survey);
  if (wall === null) return Number.NaN;
  const { least, greatest } = usualRange(wall.deviation);
  return Math.max(-least, greatest);
}

/** One set of contour steps and one factor for all of them. */
export function sharedScale(
  surveys: readonly SurveyEvaluation[],
  units: Units,
): { readonly steps: Steps; readonly exaggeration: number } {
  const walls = surveys.map(wallOf).filter((wall) => wall !== null);
  const ranges = walls.map(rangeOf).filter(({ least }) => Number.isFinite(least));
  const least = Math.min(0, ...ranges.map((one) => one.least));
  const greatest = Math.max(0, ...ranges.map((one) => one.greatest));
  const radius = walls[0]?.radius ?? Number.NaN;
  return {
    steps: chooseSteps(least, greatest, units),
    exaggeration: exaggerations(least, greatest, radius, radius).chosen,
  };
}
