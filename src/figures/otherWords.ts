/**
 * The other reading of the same diameters: worn on one side instead of on both alike, or the other way about. Which
 * sides come into question, and how they are said.
 */
import type { SurveyEvaluation } from '../evaluate.ts';
import { angleApart, hourText } from '../job/clock.ts';

export interface OtherSide {
  /** As a worn side is typed, seen from face A; '' both sides alike. */
  readonly wornSide: string;
  /** `worn at 6 o’clock only`, `worn on both sides alike`. */
  readonly words: string;
}

const HALF_HOUR = Math.PI / 12;
const SIX = Math.PI;

/**
 * The best first. None where the readings themselves show the side, and none where nothing is out of round.
 *
 * @param stated the worn side as stated; empty or left out: both sides are taken alike
 * @param load clock position that the load pulls to, radians: that end of the long way comes first; NaN: the lower end
 */
export function otherSides(
  seen: SurveyEvaluation,
  stated: string | undefined,
  load: number,
): OtherSide[] {
  if (seen.target === null || seen.target.assumed === null) return [];
  if (stated) return [{ wornSide: '', words: sideWords('') }];
  const oval = seen.sections.filter(({ outOfRound }) => outOfRound > 0);
  if (oval.length === 0) return [];
  const most = oval.reduce((a, b) => (b.outOfRound > a.outOfRound ? b : a));
  const theta = Math.round(most.greatest.theta / HALF_HOUR) * HALF_HOUR;
  const near = (end: number) => angleApart(end, Number.isNaN(load) ? SIX : load);
  return [theta, theta + Math.PI]
    .sort((a, b) => near(a) - near(b))
    .map((end) => {
      const wornSide = hourText(end);
      return { wornSide, words: sideWords(wornSide) };
    });
}

function sideWords(wornSide: string): string {
  return wornSide === '' ? 'worn on both sides alike' : `worn at ${wornSide} o’clock only`;
}
