/** Says at once, at the top of the notebook, that metal is gone past the target, and what is still possible. */
import { useEffect } from 'react';
import type { Past } from '../../bore/worked.ts';
import { pastWords } from '../../figures/workedWords.ts';
import { notePast } from '../../store/pastNotice.ts';
import type { Worked } from './worked.ts';

/** @param past null: the wall is nowhere past it */
export function usePastNotice({ bore, survey, boreSeen, job }: Worked, past: Past | null): void {
  useEffect(() => {
    const words = past === null ? null : pastWords(past, boreSeen.facts, job.units);
    notePast(`${bore.id} ${survey.id}`, words);
  }, [past, bore.id, survey.id, boreSeen, job.units]);
}
