/** The contact pressure that may be laid over map and drawing: the fit it is of, and the lines once they are shown. */
import { useMemo } from 'react';
import type { FitAnswer } from '../../evaluate/fit.ts';
import { type PressedWall, pressedWall } from '../../figures/pressedWall.ts';
import type { Units } from '../../figures/steps.ts';
import { useSession } from '../../store/session.ts';

export interface Pressed {
  readonly answer: FitAnswer;
  readonly wall: PressedWall;
}

/** Worked out once for map, drawing and words. */
const known = new WeakMap<FitAnswer, PressedWall | null>();

function pressedOf(answer: FitAnswer, units: Units, cut: number): PressedWall | null {
  const before = known.get(answer);
  if (before === null || (before?.units === units && before.cut === cut)) return before;
  const found = pressedWall(answer, units, cut);
  known.set(answer, found);
  return found;
}

/** @param answer null where it is not shown */
export function usePressed(answer: FitAnswer | null, units: Units): Pressed | null {
  const cut = useSession((session) => session.cut);
  return useMemo(() => {
    const wall = answer && pressedOf(answer, units, cut);
    return answer && wall && { answer, wall };
  }, [answer, units, cut]);
}
