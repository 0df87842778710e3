/** Says at once, at the top of the notebook, that metal is gone past the target, and what is still possible. */
import { useEffect } from 'react';
import type { Past } from '../../bore/worked.ts';
import { pastWords } from '../../figures/workedWords.ts';
import { type Notice, say, usePage } from '../../store/page.ts';
import type { Worked } from './worked.ts';

/** What was said last, and where: said once, not again with every further reading. */
let last: { readonly at: string; readonly notice: Notice } | null = null;

/** @param past null: the wall is nowhere past it; the message goes, if it still stands */
export function usePastNotice({ bore, survey, boreSeen, job }: Worked, past: Past | null): void {
  useEffect(() => {
    const at = `${bore.id} ${survey.id}`;
    if (past === null || last?.at !== at) {
      if (last !== null && usePage.getState().notice === last.notice) say(null);
      last = null;
    }
    if (past === null || last !== null) return;
    const { head, ways } = pastWords(past, boreSeen.facts, job.units);
    last = {
      at,
      notice: { tone: 'said', text: `${head} What is still possible:`, more: ways },
    };
    say(last.notice);
  }, [past, bore.id, survey.id, boreSeen, job.units]);
}
