/** Follows the scrolling notebook: which section is being read, how far down; and comes back to it. */
import { useEffect, useLayoutEffect, useRef } from 'react';
import { type SectionName, useSession } from '../store/session.ts';
import { SECTIONS } from './sections.ts';

/** A section is being read once its head is above this share of what the drawing leaves of the window. */
const READING_LINE = 0.4;
const REST_MS = 150;

/**
 * @param ready true once the notebook has its full height: figures make it longer, and only then can it be
 * scrolled back to where it was
 */
export function useNotebookPlace(ready: boolean): void {
  const look = useSession((session) => session.look);
  const back = useRef(useSession.getState().scroll);

  useLayoutEffect(() => {
    // A page that opens at its top is there already; to ask would lay the whole of it out once more.
    if (back.current > 0) scrollTo({ top: back.current, behavior: 'instant' });
  }, [ready]);

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const rest = () => {
      timer = undefined;
      // Until the figures are there the page is too short for the place, and must not forget it.
      if (ready) look({ scroll: Math.round(scrollY) });
    };
    const onScroll = () => {
      const section = sectionInView();
      if (section !== useSession.getState().section && ready) look({ section });
      timer ??= setTimeout(rest, REST_MS);
    };
    // On a slow machine the page may go before a scroll is told: ahead of the writing of the place, see store/place.
    addEventListener('pagehide', rest, { capture: true });
    addEventListener('scroll', onScroll, { passive: true });
    return () => {
      removeEventListener('pagehide', rest, { capture: true });
      removeEventListener('scroll', onScroll);
      clearTimeout(timer);
    };
  }, [look, ready]);
}

function sectionInView(): SectionName {
  const shade = Number.parseFloat(getComputedStyle(document.documentElement).scrollPaddingTop) || 0;
  const line = shade + (innerHeight - shade) * READING_LINE;
  const atEnd = scrollY + innerHeight >= document.documentElement.scrollHeight - 2;
  let found: SectionName = 'measure';
  for (const { name } of SECTIONS) {
    const top = document.getElementById(name)?.getBoundingClientRect().top;
    if (top === undefined) continue;
    if (top < line || (atEnd && scrollY > 0)) found = name;
  }
  return found;
}
