/** Where nobody has pointed yet, the drawing points at what it has most to say of. */
import { useEffect } from 'react';
import type { SurveyEvaluation } from '../../evaluate.ts';
import { tellingPlace } from '../../figures/tellingPlace.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';

/** Bores that were pointed at in this visit: a cursor that is put away stays away. */
const seen = new Set<string>();

export function useFirstCursor(bore: string, survey: SurveyEvaluation): void {
  const job = useJob((state) => state.job?.id);
  useEffect(() => {
    const key = `${job} ${bore}`;
    if (seen.has(key)) return;
    const place = tellingPlace(survey);
    if (place === null) return;
    seen.add(key);
    const { cursor, look } = useSession.getState();
    // A place of another bore may lie deeper than this one goes.
    const outside = cursor !== null && cursor.z > (survey.surface?.grid.z.at(-1) ?? 0);
    if (cursor === null || outside) look({ cursor: place });
  }, [job, bore, survey]);
}
