/** One wear pattern: its pictures, causes and remedy, what looks alike, and how every gauge would read it. */
import { useMemo, useState } from 'react';
import type { GalleryEntry } from '../../figures/gallery.ts';
import { formatAcross, formatDepth, formatPerSide } from '../../job/units.ts';
import { MADE_PATTERNS, type MadePattern, type Scale } from '../../practice/patterns.ts';
import { leaveGallery, openGallery } from '../../store/gallery.ts';
import { Choice } from '../parts/Choice.tsx';
import { Words } from '../parts/Words.tsx';
import { GaugeTables } from './GaugeTables.tsx';
import { Pictures } from './Pictures.tsx';
import type { Held } from './useHeld.ts';

export interface EntryProps {
  readonly entry: GalleryEntry;
  readonly held: Held;
  /** Names of the entries on either side; null at an end. */
  readonly before: string | null;
  readonly next: string | null;
  /** `3 of 18`. */
  readonly place: string;
}

type Size = 'own' | 'usual';
const SIZES: readonly { value: Size; text: string }[] = [
  { value: 'own', text: 'as much as this bore is worn' },
  { value: 'usual', text: 'as much as is usually met' },
];

export function Entry({ entry, held, before, next, place }: EntryProps) {
  const pattern = MADE_PATTERNS.find(({ name }) => name === entry.name)!;
  const [size, setSize] = useState<Size>('own');
  const own: Size = Number.isNaN(held.size) ? 'usual' : size;
  const scale = useMemo(
    (): Scale => ({
      radius: held.radius,
      length: held.length,
      size: own === 'own' && pattern.usual > 0 ? held.size : pattern.usual,
    }),
    [held, own, pattern],
  );
  return (
    <article className="gallery-entry" aria-labelledby="gallery-entry-head">
      <header>
        <Turn to={before} text="‹ before" />
        <span className="soft">{place}</span>
        <Turn to={next} text="next ›" />
        <button type="button" className="link-button gallery-all" onClick={toThumbs}>
          all of them
        </button>
        <button type="button" className="plain-button gallery-back" onClick={leaveGallery}>
          Back to the notebook
        </button>
      </header>
      <h3 id="gallery-entry-head">{entry.title}</h3>
      {pattern.usual > 0 && (
        <p className="facts">
          <MadeUp scale={scale} held={held} />{' '}
          {!Number.isNaN(held.size) && (
            <Choice
              label="How far worn"
              value={own}
              options={SIZES}
              onChoose={(chosen) => setSize(chosen)}
            />
          )}
        </p>
      )}
      <Pictures pattern={pattern} scale={scale} held={held} />
      <Says entry={entry} />
      <Gauges pattern={pattern} scale={scale} held={held} />
    </article>
  );
}

/** Where the page is narrow they stand below the entry. */
function toThumbs(): void {
  document.querySelector('.gallery-thumbs')?.scrollIntoView();
}

function Turn({ to, text }: { readonly to: string | null; readonly text: string }) {
  return (
    <button
      type="button"
      className="plain-button"
      disabled={to === null}
      onClick={() => to !== null && openGallery(to)}
    >
      {text}
    </button>
  );
}

function MadeUp({ scale, held: { units } }: { readonly scale: Scale; readonly held: Held }) {
  return (
    <>
      Made up: a bore of {formatAcross(2 * scale.radius, units)} when new,{' '}
      {formatDepth(scale.length, units)} deep, out by {formatPerSide(scale.size, units)} at most,
    </>
  );
}

function Says({ entry }: { readonly entry: GalleryEntry }) {
  const parts = [
    { head: 'Likely from', text: `${entry.causes.join('; ')}.` },
    { head: 'What to do', text: entry.remedy },
    { head: 'What looks alike, and what tells', text: entry.alike },
  ];
  return (
    <dl className="gallery-says">
      {parts.map(({ head, text }) => (
        <div key={head}>
          <dt>{head}</dt>
          <dd>
            <Words text={text} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface GaugesProps {
  readonly pattern: MadePattern;
  readonly scale: Scale;
  readonly held: Held;
}

function Gauges({ pattern, scale, held }: GaugesProps) {
  return (
    <>
      <h4>How its readings look</h4>
      <p className="soft">Without the scatter of any hand, and read without a slip.</p>
      <GaugeTables pattern={pattern} scale={scale} units={held.units} />
    </>
  );
}
