/** What is laid over the drawing, and what could be, for this bore and survey. */
import { useMemo } from 'react';
import type { FitAnswer } from '../../evaluate/fit.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { type Fit, fitOf } from '../../figures/fit.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { pressedWhy } from '../../figures/pressedWhy.ts';
import { type Overlay, useSession } from '../../store/session.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useFitOf } from '../../store/useFitOf.ts';
import { useJob } from '../../store/useJob.ts';
import { OVERLAYS, type Possible, type Shown, shownOverlays } from './overlays.ts';

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
  /** What the contact pressure that is shown was worked out of; null where it is not shown, or not there yet. */
  readonly pressed: FitAnswer | null;
  /** The fit is wanted for that. */
  readonly asksFit: boolean;
} {
  const section = useSession((session) => session.section);
  const overlays = useSession((session) => session.overlays);
  const story = useSession((session) => session.story);
  const joint = useEvaluation(({ evaluation }) => evaluation?.joint ?? null);
  // The wall that is drawn is then the bushing's own.
  const inside = survey.stage === 'fitted' && bore.kind === 'bore';
  const fit = useMemo(
    () => (joint === null || inside ? null : fitOf(bore, joint)),
    [bore, joint, inside],
  );
  const job = useJob((state) => state.job?.id);
  const units = useJob((state) => state.job?.units ?? 'in');
  const itself = bore.surveys.includes(survey);
  const asked = useMemo(() => ({ overlays, section, story }), [overlays, section, story]);
  // It is asked for where it would be shown if it were there.
  const could = itself && survey.target !== null;
  const asksFit = could && shownOverlays(asked, EVERYTHING).pressure;
  const answer = useFitOf({ job, bore: bore.id, survey: survey.id }, asksFit);
  return useMemo(() => {
    const why = pressedWhy({ survey, itself }, answer, units);
    const possible = possibleOf(piece, fit, survey, why === null);
    const shown = shownOverlays(asked, possible);
    return { shown, possible, fit, pressed: shown.pressure ? answer : null, asksFit };
  }, [piece, fit, survey, itself, answer, units, asked, asksFit]);
}

const EVERYTHING: Possible = Object.fromEntries(
  OVERLAYS.map(({ overlay }) => [overlay, true]),
) as Record<Overlay, boolean>;

function possibleOf(
  piece: PieceFigure,
  fit: Fit | null,
  survey: SurveyEvaluation,
  pressure: boolean,
): Possible {
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
    pressure,
  };
}
