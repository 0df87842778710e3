/** The wear patterns of the trade, for the apprentice: each drawn, read by every gauge, explained, and held against the bore at hand. */
import { useEffect } from 'react';
import { GALLERY, QUESTIONS } from '../../figures/gallery.ts';
import { openGallery } from '../../store/gallery.ts';
import { Words } from '../parts/Words.tsx';
import { Entry } from './Entry.tsx';
import { Thumbs } from './Thumbs.tsx';
import { useHeld } from './useHeld.ts';
import './gallery.css';

const NARROW = '(max-width: 900px)';

/** @param name of the entry that is open; one that is not there opens the first */
export function Gallery({ name }: { readonly name: string }) {
  const held = useHeld();
  const at = Math.max(
    0,
    GALLERY.findIndex((one) => one.name === name),
  );
  const entry = GALLERY[at]!;
  useEffect(() => {
    // Where the entry stands above the list it would be out of sight.
    if (entry.name !== '' && matchMedia(NARROW).matches) scrollTo({ top: 0 });
  }, [entry.name]);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const typing =
        event.target instanceof Element && event.target.closest('input, select, textarea');
      if (typing || event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey)
        return;
      const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
      const next = GALLERY[at + by];
      if (by === 0 || next === undefined) return;
      event.preventDefault();
      openGallery(next.name);
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [at]);
  return (
    <main className="gallery">
      <div className="gallery-list">
        <h2>Wear patterns</h2>
        <p>Before any arithmetic, ask in this order:</p>
        <ol className="gallery-questions">
          {QUESTIONS.map((text) => (
            <li key={text}>
              <Words text={text} />
            </li>
          ))}
        </ol>
        <Thumbs open={entry.name} />
      </div>
      <Entry
        key={entry.name}
        entry={entry}
        held={held}
        before={GALLERY[at - 1]?.name ?? null}
        next={GALLERY[at + 1]?.name ?? null}
        place={`${at + 1} of ${GALLERY.length}`}
      />
    </main>
  );
}
