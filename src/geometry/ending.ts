/** Why a fit gives no answer. */
export type FitFailure =
  /** fewer different points than the feature has unknowns */
  | { status: 'too-few-points'; needed: number; found: number }
  /** all on one straight line, to rounding */
  | { status: 'on-a-line' }
  /** all in one plane, to rounding: which way an axis leans cannot be told */
  | { status: 'in-a-plane' }
  /** bent, but by no more than two standard errors: the radius could be anything */
  | { status: 'arc-too-short' }
  /** the points leave an opening of half a turn or more, so that nothing holds an inscribed feature */
  | { status: 'not-all-round' }
  /** the axis direction is not known to a twentieth of a radian (one standard error) */
  | { status: 'too-short-along-axis' }
  /** `row` is the first point, counted from 0, with NaN or an infinity in it */
  | { status: 'not-finite'; row: number }
  | { status: 'did-not-converge'; iterations: number };

/**
 * One sentence, without a full stop, that says what is wrong with the points and what would help.
 *
 * @param feature what was to be fitted: "circle", "cylinder"
 */
export function failureInWords(failure: FitFailure, feature: string): string {
  switch (failure.status) {
    case 'too-few-points':
      return `a ${feature} needs at least ${failure.needed} different points, and there ${count(failure.found)}`;
    case 'on-a-line':
      return `all points lie on one straight line; a ${feature} needs points around the wall`;
    case 'in-a-plane':
      return `all points lie in one plane; a ${feature} needs points at two depths or more`;
    case 'arc-too-short':
      return `the points cover too short an arc to tell the size of a ${feature}; add points further round`;
    case 'not-all-round':
      return `the points do not go all round, so that an inscribed ${feature} could slip out between them; add points on the open side`;
    case 'too-short-along-axis':
      return `the points cover too short a length to tell which way the axis of a ${feature} leans; add points at other depths`;
    case 'not-finite':
      return `row ${failure.row} (counted from 0) is not a finite number in every column`;
    case 'did-not-converge':
      return `no ${feature} could be settled on in ${failure.iterations} steps; the points do not look like a ${feature}`;
  }
}

function count(found: number): string {
  return found === 1 ? 'is 1' : `are ${found}`;
}
