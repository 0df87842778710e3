/** Readings in doubt, under the table: what is likely, and two ways to answer. Nothing is changed unasked. */
import { useEffect, useRef } from 'react';
import type { Doubt } from '../../figures/checkWords.ts';
import type { Bench } from '../../store/bench.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { Words } from '../parts/Words.tsx';
import { answersTo } from './answers.ts';
import { keypadWanted } from './keypadWanted.ts';

export interface DoubtsProps {
  readonly bench: Bench;
  readonly doubts: readonly Doubt[];
  /** The one that keys answer; null where they answer none. */
  readonly newest: Doubt | null;
}

export function Doubts({ bench, doubts, newest }: DoubtsProps) {
  const keyboard = useSession((session) => !keypadWanted(session.keypad));
  const room = useRef<HTMLDivElement>(null);
  const answered = useRef(false);
  useEffect(() => {
    // The line that was answered has gone and taken the focus with it: on to the next one, or to where it stood.
    if (!answered.current || document.activeElement !== document.body) return;
    answered.current = false;
    const next = room.current?.querySelector('button') ?? room.current;
    next?.focus({ preventScroll: true });
  }, [doubts.length]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only notes that an answer was given inside
    // biome-ignore lint/a11y/useKeyWithClickEvents: a key on a button inside is a click too
    <div
      ref={room}
      tabIndex={-1}
      className="doubts-room"
      onClick={() => {
        answered.current = true;
      }}
    >
      {doubts.length > 0 && (
        <ul className="doubts" aria-label="Readings in doubt">
          {doubts.map((doubt) => (
            <DoubtLine
              // Figures in its text may still settle: it stays the same line, and keeps the focus.
              key={`${doubt.rows.join(' ')} ${doubt.rows.length > 1 ? doubt.brief : ''}`}
              bench={bench}
              doubt={doubt}
              keys={doubt === newest && keyboard}
            />
          ))}
        </ul>
      )}
    </div>
  );
}

interface DoubtLineProps {
  readonly bench: Bench;
  readonly doubt: Doubt;
  /** Its buttons name the keys that do the same from within a cell. */
  readonly keys: boolean;
}

function DoubtLine({ bench, doubt, keys }: DoubtLineProps) {
  const { rows, place, text, suggested } = doubt;
  const edit = useJob((state) => state.edit);
  const { use, leaveOut } = answersTo(doubt, bench);
  return (
    <li>
      <span className="doubt-mark" aria-hidden="true">
        ?
      </span>
      <div>
        <p>
          <Words text={text} />
        </p>
        <p className="doubt-answers">
          {use !== null && (
            <button
              type="button"
              className="plain-button"
              aria-label={`use ${suggested} for ${place}`}
              aria-keyshortcuts={keys ? 'u' : undefined}
              onClick={() => edit(use)}
            >
              use {suggested}
              {keys && <kbd>U</kbd>}
            </button>
          )}
          <button
            type="button"
            className="plain-button"
            aria-label={`${rows.length === 1 ? 'leave it out' : 'leave them out'}: ${place}`}
            aria-keyshortcuts={keys ? 'x' : undefined}
            onClick={() => edit(leaveOut)}
          >
            {rows.length === 1 ? 'leave it out' : 'leave them out'}
            {keys && <kbd>X</kbd>}
          </button>
        </p>
      </div>
    </li>
  );
}
