/**
 * Of the words of the trade in each section only the first is marked, or the page would be all dots. Which one is
 * first, only the finished page knows: it is marked there, after the words have been written.
 */

const MARKED = { role: 'button', tabindex: '0', 'aria-haspopup': 'dialog', 'data-marked': 'true' };

/** Within these a tap already does something else. */
const TAKEN = 'button, a, label, summary';

/** Marks the first of each term in every section, and takes the mark off all others. */
export function markFirsts(sections: Iterable<Element>): void {
  for (const section of sections) {
    const seen = new Set<string>();
    for (const word of section.querySelectorAll<HTMLElement>('[data-term]')) {
      const term = word.dataset.term ?? '';
      const first = !seen.has(term) && word.closest(TAKEN) === null;
      if (first) seen.add(term);
      if (first !== (word.dataset.marked === 'true')) mark(word, first);
    }
  }
}

function mark(word: HTMLElement, first: boolean): void {
  for (const [name, value] of Object.entries(MARKED)) {
    if (first) word.setAttribute(name, value);
    else word.removeAttribute(name);
  }
}

/** The marked word that an event came from; null: none. */
export function markedWord(target: EventTarget | null): HTMLElement | null {
  return target instanceof Element ? target.closest<HTMLElement>('[data-marked="true"]') : null;
}
