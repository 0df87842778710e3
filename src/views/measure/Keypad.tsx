/** The large keypad for fingers and gloves: docked at the foot of the page while the table is being filled. */
import { useEffect } from 'react';
import { type Doubt, sayDoubts } from '../../figures/checkWords.ts';
import { cellBefore, inside } from '../../store/entry.ts';
import { usePage } from '../../store/page.ts';
import { type Cell, useSession } from '../../store/session.ts';
import type { Laid } from '../../store/tables.ts';
import {
  cellText,
  commit,
  enter,
  goBack,
  rubOut,
  skip,
  turnSign,
  typeAgain,
  typeKey,
} from '../../store/typing.ts';
import { useBench } from '../../store/useBench.ts';
import { useJob } from '../../store/useJob.ts';
import { useTable } from '../../store/useTable.ts';
import { Icon } from '../parts/Icon.tsx';
import { Words } from '../parts/Words.tsx';
import { answersTo } from './answers.ts';

const DIGITS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;

export function Keypad() {
  const open = usePage((page) => page.keypad);
  return open ? <OpenKeypad /> : null;
}

function OpenKeypad() {
  const laid = useTable();
  const draft = useSession((session) => session.draft);
  const cell = useSession((session) => session.cell);
  const order = useSession((session) => session.order);
  useRoomForKeypad();
  if (laid === null) return null;
  const here = inside(cell, laid.size);
  const before = cellBefore(here, order, laid.size);
  const value = draft ?? cellText(laid, here);
  return (
    // A press must not take the focus out of the cell that is being filled.
    // biome-ignore lint/a11y/useSemanticElements: a group of keys, not of fields
    <div
      className="keypad"
      role="group"
      aria-label="Keypad"
      onPointerDown={keepFocus}
      onMouseDown={keepFocus}
    >
      <div className="keypad-echo">
        <p>
          <b>
            <Words text={placeText(laid, here)} />
          </b>
          {before !== null && (
            <span className="keypad-last">
              before: <Words text={placeText(laid, before)} /> ·{' '}
              {cellText(laid, before) || 'skipped'}
            </span>
          )}
        </p>
        <output className="keypad-value" aria-label="Typed so far" data-typing={draft !== null}>
          {value}
        </output>
      </div>
      <KeypadDoubt />
      <div className="keypad-keys">
        {DIGITS.map((digit) => (
          <Key key={digit} place={`d${digit}`} label={digit} onPress={() => typeKey(digit)} />
        ))}
        <Key place="point" label="." onPress={() => typeKey('.')} />
        <Key place="d0" label="0" onPress={() => typeKey('0')} />
        <Key place="sign" label="+/−" onPress={turnSign} />
        <Key place="rub" label="rub out" icon="rubout" onPress={rubOut} />
        <Key place="skip" label="skip" onPress={skip} />
        <Key place="back" label="back" onPress={goBack} />
        <Key place="next" label="next" main onPress={enter} />
      </div>
      <div className="keypad-foot">
        <button type="button" className="link-button" onClick={typeAgain}>
          measured again here
        </button>
        <button type="button" className="link-button" onClick={leave}>
          done
        </button>
      </div>
    </div>
  );
}

/** The table's doubts are out of sight while the keypad is up: the newest reading's is said here. */
function KeypadDoubt() {
  const bench = useBench();
  const edit = useJob((state) => state.edit);
  const doubts = bench?.surveySeen == null ? [] : sayDoubts(bench.surveySeen, bench.job.units);
  const newest = doubts.reduce<Doubt | null>(
    (last, one) => (last === null || Math.max(...one.rows) > Math.max(...last.rows) ? one : last),
    null,
  );
  if (bench === null || newest === null) return null;
  const { use, leaveOut } = answersTo(newest, bench);
  return (
    <div className="keypad-doubt" role="status">
      <p>
        <b>In doubt:</b> <Words text={newest.place} />, {newest.brief}
      </p>
      <button type="button" className="plain-button" onClick={() => edit(use ?? leaveOut)}>
        {use === null ? 'leave it out' : `use ${newest.suggested}`}
      </button>
    </div>
  );
}

function placeText({ table }: Laid, { row, column }: Cell): string {
  return `${table.clocks[column]?.text ?? ''} at ${table.rows[row]?.depthText ?? ''} deep`;
}

/** Enters what was typed and puts the keypad away. */
function leave(): void {
  commit();
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  usePage.getState().change({ keypad: false });
}

/** Fingers press a key; the focus stays where the reading goes. */
function keepFocus(event: { preventDefault(): void }): void {
  event.preventDefault();
}

interface KeyProps {
  readonly place: string;
  readonly label: string;
  readonly icon?: 'rubout';
  readonly main?: boolean;
  onPress(): void;
}

function Key({ place, label, icon, main = false, onPress }: KeyProps) {
  return (
    <button
      type="button"
      className="key"
      data-main={main}
      style={{ gridArea: place }}
      aria-label={icon === undefined ? undefined : label}
      onClick={onPress}
    >
      {icon === undefined ? label : <Icon name={icon} />}
    </button>
  );
}

/** On a narrow page the drawing folds away while the keypad is up, and comes back after. */
function useRoomForKeypad(): void {
  useEffect(() => {
    const { drawingHidden, change } = usePage.getState();
    if (drawingHidden || !matchMedia('(max-width: 900px)').matches) return;
    change({ drawingHidden: true });
    return () => change({ drawingHidden: false });
  }, []);
}
