/** Everything that the 3D drawing needs to know of a bore, as plain data. */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { fromMiddle } from './bend.ts';
import { metalAround } from './boss.ts';
import { type Exaggeration, exaggerations } from './exaggeration.ts';
import { depthTicks } from './map.ts';
import { type Mark, marksOf, nextMarks, thinned } from './marks.ts';
import { type WallShape, wallShape } from './mesh.ts';
import { signedText } from './signed.ts';
import type { Steps, Units } from './steps.ts';
import { scaleOf, stepsOf, type Wall, wallOf } from './wall.ts';

export interface PieceFigure {
  readonly shape: WallShape;
  readonly steps: Steps;
  readonly about: Wall['about'];
  /** Thickness of the boss about the wall, mm. */
  readonly metal: number;
  readonly exaggeration: Exaggeration;
  /** Readings to be drawn as pins, thinned out where there are very many. */
  readonly marks: readonly Mark[];
  /** Where the next reading would touch. */
  readonly next: readonly { readonly theta: number; readonly z: number }[];
  /** Angles from the middle of the map; `half` is half the width as an angle, pi all round. */
  readonly keepouts: readonly {
    readonly phi: number;
    readonly from: number;
    readonly to: number;
    readonly half: number;
    readonly hole: boolean;
  }[];
  /** Depths of the edges of the bushing's seat, where it is not the whole wall, mm. */
  readonly seatEdges: readonly number[];
  /** Where the load pulls to, radians from the middle of the map; null not stated. */
  readonly load: number | null;
  /** Peaks of the zones, written as on the flat map; those that round to nothing left out. */
  readonly zones: readonly {
    readonly theta: number;
    readonly z: number;
    readonly text: string;
    /** Its peak by the root of its area: which of two zones is spoken of first. */
    readonly weight: number;
  }[];
  /** The scale of depths, in the job's units; z in mm. */
  readonly depthTicks: readonly { readonly z: number; readonly text: string }[];
}

const MOST_PINS = 400;

/** @returns null where the survey has no surface to draw */
export function pieceFigure(
  survey: SurveyEvaluation,
  facts: BoreFacts,
  units: Units,
  cut: number,
): PieceFigure | null {
  const wall = wallOf(survey);
  if (wall === null) return null;
  const { radius, length } = wall;
  const steps = stepsOf(wall, units);
  const metal = metalAround(radius, facts.bossOutside.mm);
  const { least, greatest } = scaleOf(wall);
  const inside = (z: number) => z > 1e-6 && z < length - 1e-6;
  return {
    shape: wallShape(wall, steps.step, cut),
    steps,
    about: wall.about,
    metal,
    exaggeration: exaggerations(least, greatest, radius, metal),
    marks: thinned(marksOf(survey), MOST_PINS),
    next: nextMarks(survey),
    keepouts: facts.keepouts.map(({ kind, from, to, theta, width }) => ({
      phi: Number.isNaN(theta) ? 0 : fromMiddle(theta, cut),
      from,
      to,
      half: Number.isNaN(theta) ? Math.PI : width / 2 / radius,
      hole: kind === 'grease-hole',
    })),
    seatEdges: facts.seats.flatMap(({ from, to }) => [from, to]).filter(inside),
    load: Number.isFinite(facts.load) ? fromMiddle(facts.load, cut) : null,
    zones: survey.zones
      .map(({ theta, z, peak, give, area }) => ({
        theta,
        z,
        text: signedText(peak, give, units),
        weight: Math.abs(peak) * Math.sqrt(area),
      }))
      .filter(({ text }) => Number(text) !== 0),
    depthTicks: depthTicks(length, units).map(({ y, text }) => ({ z: y, text })),
  };
}
