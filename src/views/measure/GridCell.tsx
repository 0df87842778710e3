/** One cell: what stands in it, or what is being typed into it; and on which side of the target it lies. */
import {
  type ClipboardEvent,
  type CSSProperties,
  type KeyboardEvent,
  type MouseEvent,
  memo,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { useShallow } from 'zustand/react/shallow';
import { inside, type TableSize } from '../../store/entry.ts';
import { usePage } from '../../store/page.ts';
import { type Place, useSession } from '../../store/session.ts';
import { commit, enter, goBack, goBeside, paste, type } from '../../store/typing.ts';
import type { CellMark, Lean } from './cellMarks.ts';
import { keypadWanted } from './keypadWanted.ts';

export interface GridCellProps {
  readonly row: number;
  readonly column: number;
  readonly size: TableSize;
  readonly label: string;
  readonly text: string;
  readonly place: Place;
  readonly mark: CellMark;
  /** The cursor of the drawing and the map is here. */
  readonly near: boolean;
  /** Here the next reading is wanted. */
  readonly next: boolean;
}

const SIGNS: Readonly<Record<Lean, string>> = { high: '−', low: '+', right: '', unknown: '' };
const SAID: Readonly<Record<Lean, string>> = {
  high: ', stands proud of the target',
  low: ', short of metal',
  right: '',
  unknown: '',
};

export const GridCell = memo(
  function GridCell({ row, column, size, label, text, place, mark, near, next }: GridCellProps) {
    // One question for a cell, and not three: there are many, and all stand on the page before it can be used.
    const { active, draft, unasked } = useSession(
      useShallow(({ cell, draft, keypad }) => {
        const at = inside(cell, size);
        const active = at.row === row && at.column === column;
        return { active, draft: active ? draft : null, unasked: !keypadWanted(keypad) };
      }),
    );
    const { look } = useSession.getState();
    const input = useRef<HTMLInputElement>(null);
    const [focused, setFocused] = useState(false);
    const onFocus = () => {
      // A draft of another cell may still wait where a reload came between.
      if (!active) commit();
      look({ cell: { row, column }, cursor: place });
      setFocused(true);
      if (!unasked) usePage.getState().change({ keypad: true });
    };
    // After the whole text stands in the cell, so that typing replaces all of it.
    useLayoutEffect(() => {
      if (focused && useSession.getState().draft === null) input.current?.select();
    }, [focused]);
    const [first = '', ...repeats] = text.split('; ');
    const whole = focused || draft !== null;
    return (
      <td
        data-near={near}
        data-next={next}
        data-lean={mark.lean}
        data-fault={mark.fault}
        data-suspect={mark.suspect}
        data-left-out={mark.leftOut}
        style={{ '--letters': (draft ?? text).length } as CSSProperties}
      >
        <span className="cell-sign" aria-hidden="true">
          {mark.fault || mark.suspect ? '?' : SIGNS[mark.lean]}
        </span>
        <input
          type="text"
          data-cell={`${row}-${column}`}
          data-typing={draft !== null}
          tabIndex={active ? 0 : -1}
          inputMode={unasked ? 'text' : 'none'}
          enterKeyHint="next"
          autoComplete="off"
          spellCheck={false}
          aria-label={`${label}${repeats.length > 0 ? `, ${repeats.length + 1} readings` : ''}${mark.leftOut ? ', left out' : SAID[mark.lean]}${mark.suspect ? ', in doubt' : ''}${next ? ', wanted next' : ''}`}
          aria-invalid={mark.fault}
          ref={input}
          value={draft ?? (whole ? text : first)}
          onChange={(event) => {
            look({ cell: { row, column } });
            type(event.target.value);
          }}
          onFocus={onFocus}
          onMouseDown={selectWhole}
          onBlur={() => {
            setFocused(false);
            commit();
          }}
          onKeyDown={onKeyDown}
          onPaste={onPaste}
        />
        {repeats.length > 0 && !whole && (
          <span className="cell-count" aria-hidden="true">
            ×{repeats.length + 1}
          </span>
        )}
      </td>
    );
  },
  (a, b) =>
    a.text === b.text &&
    a.label === b.label &&
    a.near === b.near &&
    a.next === b.next &&
    a.size.rows === b.size.rows &&
    a.size.columns === b.size.columns &&
    a.place.z === b.place.z &&
    sameMark(a.mark, b.mark),
);

function sameMark(a: CellMark, b: CellMark): boolean {
  return (
    a.lean === b.lean && a.fault === b.fault && a.suspect === b.suspect && a.leftOut === b.leftOut
  );
}

/** The first press takes the whole reading, so that typing replaces it; the next one sets the caret. */
function selectWhole(event: MouseEvent<HTMLInputElement>): void {
  if (document.activeElement === event.currentTarget) return;
  event.preventDefault();
  event.currentTarget.focus({ preventScroll: true });
  event.currentTarget.select();
}

function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
  const move = MOVES[event.key];
  if (move !== undefined && leaves(event, move)) {
    event.preventDefault();
    goBeside(move[0], move[1]);
    return;
  }
  if (event.key === 'Enter') {
    event.preventDefault();
    if (event.shiftKey) goBack();
    else enter();
  }
  if (event.key === 'Escape') useSession.getState().look({ draft: null });
}

/** Rows down and columns to the right. */
const MOVES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Up and down always leave the cell; left and right only where there is no text left to walk through. */
function leaves(
  { currentTarget: input, shiftKey, ctrlKey, metaKey }: KeyboardEvent<HTMLInputElement>,
  [down, right]: readonly [number, number],
): boolean {
  if (shiftKey || ctrlKey || metaKey) return false;
  if (down !== 0) return true;
  const from = input.selectionStart ?? 0;
  const to = input.selectionEnd ?? 0;
  const whole = from === 0 && to === input.value.length;
  return whole || (from === to && (right < 0 ? from === 0 : to === input.value.length));
}

function onPaste(event: ClipboardEvent<HTMLInputElement>): void {
  if (paste(event.clipboardData.getData('text/plain'))) event.preventDefault();
}
