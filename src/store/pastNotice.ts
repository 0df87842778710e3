/** At the top of the notebook, at once: metal is gone past the target, and what is still possible. No React. */
import { type Notice, say, usePage } from './page.ts';

/** What was said last, and of which survey: said once, not again after somebody has put it away. */
let last: { readonly at: string; readonly notice: Notice } | null = null;

const stands = () => last !== null && usePage.getState().notice === last.notice;

/**
 * @param at the survey, in words
 * @param words null: the wall is nowhere past the target there; the message goes, if it still stands
 */
export function notePast(
  at: string,
  words: { readonly head: string; readonly ways: readonly string[] } | null,
): void {
  if (words === null || last?.at !== at) {
    if (stands()) say(null);
    last = null;
  }
  if (words === null) return;
  const text = `${words.head} What is still possible:`;
  if (last !== null && (!stands() || last.notice.text === text)) return;
  // Figures that have changed since are put right where the message still stands.
  last = { at, notice: { tone: 'said', text, more: words.ways } };
  say(last.notice);
}
