/** The bore as a way of mending is to leave it, to be drawn in place of the bore as it is. */
import type { WayOutcome } from '../bore/wayTypes.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import { drawAs, wallOf } from './wall.ts';

const known = new WeakMap<
  WayOutcome,
  { readonly of: SurveyEvaluation; readonly drawn: SurveyEvaluation }
>();

/**
 * Colours and exaggeration are those of the bore as it is, so that the two can be told from each other. Nothing of it was
 * measured: no reading is drawn, and there is nothing left to take off.
 *
 * @returns null where the survey has no target, or the two are not of one grid
 */
export function drawnWay(survey: SurveyEvaluation, outcome: WayOutcome): SurveyEvaluation | null {
  const before = known.get(outcome);
  if (before?.of === survey) return before.drawn;
  const drawn = draw(survey, outcome);
  if (drawn !== null) known.set(outcome, { of: survey, drawn });
  return drawn;
}

function draw(
  survey: SurveyEvaluation,
  { deviation, target }: WayOutcome,
): SurveyEvaluation | null {
  const wall = wallOf(survey);
  const { surface, removal } = survey;
  if (wall === null || surface === null || survey.target === null || removal === null) return null;
  if (deviation.length !== surface.mean.length) return null;
  const radius = target / 2;
  const none = deviation.map((e) => (Number.isNaN(e) ? e : 0));
  const drawn: SurveyEvaluation = {
    ...survey,
    sightings: [],
    checks: [],
    sections: survey.sections.map((section) => ({ ...section, count: 0 })),
    surface: { ...surface, mean: deviation.map((e) => e + radius), predicted: new Float64Array(0) },
    target: { ...survey.target, diameter: target, axis: NO_AXIS },
    removal: {
      ...removal,
      deviation,
      likely: none,
      sure: none,
      possible: none,
      firstPass: none,
      volume: 0,
      mass: 0,
      sureMass: 0,
      possibleMass: 0,
    },
    seating: null,
    zones: [],
    plugs: null,
    next: { readings: [], setups: [] },
  };
  drawAs(drawn, { ...wall, radius, deviation, about: 'target', scaledBy: [wall] });
  return drawn;
}

const NO_AXIS = { x: 0, y: 0, leanX: 0, leanY: 0 } as const;
