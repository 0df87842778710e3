/** What is laid over the drawing, and what could be, for this bore and survey. */
import { useMemo } from 'react';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { type Fit, fitOf } from '../../figures/fit.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { stageOfName } from '../../job/plan.ts';
import { useSession } from '../../store/session.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { type Possible, type Shown, shownOverlays } from './overlays.ts';

export interface Shows {
  readonly bore: BoreEvaluation;
  readonly survey: SurveyEvaluation;
  readonly piece: PieceFigure;
}

export function useShown({ bore, survey, piece }: Shows): {
  readonly shown: Shown;
  readonly possible: Possible;
  /** Bushing and pin, whether shown or not; null where no bushing is known. */
  readonly fit: Fit | null;
} {
  const section = useSession((session) => session.section);
  const overlays = useSession((session) => session.overlays);
  const story = useSession((session) => session.story);
  const joint = useEvaluation(({ evaluation }) => evaluation?.joint ?? null);
  const fit = useMemo(() => (joint === null ? null : fitOf(bore, joint)), [bore, joint]);
  return useMemo(() => {
    const possible = possibleOf(piece, fit, survey);
    const fitted = stageOfName(survey.name, true) === 'fitted';
    return { shown: shownOverlays({ overlays, section, story }, possible, fitted), possible, fit };
  }, [piece, fit, survey, overlays, section, story]);
}

function possibleOf(piece: PieceFigure, fit: Fit | null, survey: SurveyEvaluation): Possible {
  const wanted = piece.about === 'target';
  return {
    readings: piece.marks.length > 0,
    target: wanted,
    'metal-off': wanted,
    'first-pass': wanted,
    low: wanted,
    zones: piece.zones.length > 0,
    circles: (survey.plugs?.sections.length ?? 0) > 0,
    bushing: fit !== null,
  };
}
