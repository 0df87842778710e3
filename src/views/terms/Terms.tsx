/** Words of the trade that explain themselves on a tap, with a small picture, where they stand. One at a time. */
import {
  type KeyboardEvent,
  lazy,
  type MouseEvent,
  type ReactNode,
  Suspense,
  useCallback,
  useEffect,
  useRef,
  useState,
} from 'react';
import { TERM_IDS, type TermId } from '../../figures/termNames.ts';
import { markedWord, markFirsts } from './marks.ts';

const TermCard = lazy(async () => {
  const { TermCard } = await import('./TermCard.tsx');
  return { default: TermCard };
});

/** Words come in bursts, as an answer is drawn. */
const REST_MS = 120;

interface Asked {
  readonly term: TermId;
  readonly word: HTMLElement;
}

export function Terms({ children }: { readonly children: ReactNode }) {
  const room = useRef<HTMLDivElement>(null);
  const [asked, setAsked] = useState<Asked | null>(null);
  useMarks(room);
  const close = useCallback(() => setAsked(null), []);
  const ask = (target: EventTarget | null): boolean => {
    const word = markedWord(target);
    const term = TERM_IDS.find((id) => id === word?.dataset.term);
    if (word === null || term === undefined) return false;
    setAsked(asked?.word === word ? null : { term, word });
    return true;
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: hears the words inside, each a button by its own attributes
    <div
      className="terms-room"
      ref={room}
      onClick={({ target }: MouseEvent) => ask(target)}
      onKeyDown={(event: KeyboardEvent) => {
        const press = event.key === 'Enter' || event.key === ' ';
        if (press && ask(event.target)) event.preventDefault();
      }}
    >
      {children}
      {asked !== null && (
        <Suspense fallback={null}>
          <TermCard key={asked.term} {...asked} room={room} onClose={close} />
        </Suspense>
      )}
    </div>
  );
}

/** Keeps the marks right as the words change. */
function useMarks(room: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const here = room.current;
    if (here === null) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const mark = () => {
      timer = undefined;
      markFirsts(here.querySelectorAll('section[data-section]'));
    };
    const watcher = new MutationObserver(() => {
      timer ??= setTimeout(mark, REST_MS);
    });
    watcher.observe(here, { childList: true, subtree: true, attributeFilter: ['data-term'] });
    mark();
    return () => {
      watcher.disconnect();
      clearTimeout(timer);
    };
  }, [room]);
}
