/** What a word of the trade means, beside the word: a picture and a sentence or two. Escape or a tap elsewhere closes it. */
import { useEffect, useLayoutEffect, useRef } from 'react';
import { TermPicture } from '../../drawings/terms/TermPicture.tsx';
import type { TermId } from '../../figures/termNames.ts';
import { TERMS } from '../../figures/terms.ts';
import { Icon } from '../parts/Icon.tsx';
import './terms.css';

export interface TermCardProps {
  readonly term: TermId;
  /** The word that was asked about; the focus goes back to it. */
  readonly word: HTMLElement;
  /** What the card is placed in: it takes no room of the page's own. */
  readonly room: React.RefObject<HTMLElement | null>;
  onClose(): void;
}

const WIDTH = 300;
const GAP = 6;

export function TermCard({ term, word, room, onClose }: TermCardProps) {
  const card = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (card.current !== null && room.current !== null) {
      placeUnder(card.current, word, room.current);
      card.current.focus({ preventScroll: true });
      card.current.scrollIntoView({ block: 'nearest' });
    }
    word.setAttribute('aria-expanded', 'true');
    return () => word.removeAttribute('aria-expanded');
  }, [word, room]);
  useCloseElsewhere(card, word, onClose);
  const back = () => {
    word.focus({ preventScroll: true });
    onClose();
  };
  const { name, says } = TERMS[term];
  return (
    <div
      ref={card}
      className="term-card"
      role="dialog"
      aria-labelledby="term-name"
      aria-describedby="term-says"
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.key === 'Escape') {
          event.stopPropagation();
          back();
        }
        // Going on from the card is going on from its word: the focus is there before the key moves it.
        const leaves = event.key === 'Tab' && (event.shiftKey || event.target !== card.current);
        if (leaves) back();
      }}
    >
      <h4 id="term-name">{name}</h4>
      <TermPicture term={term} />
      <p id="term-says">{says}</p>
      <button type="button" className="notice-close" aria-label="Put this away" onClick={back}>
        <Icon name="close" />
      </button>
    </div>
  );
}

/** Under the end of the word, within the room; nothing else moves. */
function placeUnder(card: HTMLElement, word: HTMLElement, room: HTMLElement): void {
  const around = room.getBoundingClientRect();
  const at = [...word.getClientRects()].at(-1) ?? word.getBoundingClientRect();
  const width = Math.min(WIDTH, around.width);
  const left = Math.max(0, Math.min(at.left - around.left - 16, around.width - width));
  card.style.left = `${left}px`;
  card.style.top = `${at.bottom - around.top + GAP}px`;
  card.style.width = `${width}px`;
}

/** A tap elsewhere means something else: the focus goes where it went. */
function useCloseElsewhere(
  card: React.RefObject<HTMLElement | null>,
  word: HTMLElement,
  onClose: () => void,
): void {
  useEffect(() => {
    const outside = ({ target }: Event) => {
      if (!(target instanceof Node)) return;
      if (card.current?.contains(target) !== true && !word.contains(target)) onClose();
    };
    document.addEventListener('pointerdown', outside);
    return () => document.removeEventListener('pointerdown', outside);
  }, [card, word, onClose]);
}
