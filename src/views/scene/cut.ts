/** Where the bore may be cut open: at every quarter of an hour. */
import { wrapAngle } from '../../job/clock.ts';

/** Radians. */
export const STEP_OF_CUT = Math.PI / 24;

export function snappedCut(theta: number): number {
  return wrapAngle(Math.round(theta / STEP_OF_CUT) * STEP_OF_CUT);
}
