/** The large keypad for fingers and gloves: docked at the foot of the page while the table is being filled. */
import { useEffect, useMemo } from 'react';
import type { Bench } from '../../store/bench.ts';
import { usePage } from '../../store/page.ts';
import {
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
import { useTable } from '../../store/useTable.ts';
import { Icon } from '../parts/Icon.tsx';
import { Echo } from './Echo.tsx';
import { EchoDoubt } from './EchoDoubt.tsx';
import { newestDoubt, useDoubts } from './useDoubts.ts';

const DIGITS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;

export function Keypad() {
  const open = usePage((page) => page.keypad);
  return open ? <OpenKeypad /> : null;
}

/** The decimal mark of the person's own language; both are understood. */
const decimalMark = () => (new Intl.NumberFormat().format(1.5).includes(',') ? ',' : '.');

function OpenKeypad() {
  const laid = useTable();
  const bench = useBench();
  useRoomForKeypad();
  const point = useMemo(decimalMark, []);
  if (laid === null || bench === null) return null;
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
      <Echo laid={laid} />
      <KeypadDoubt bench={bench} />
      <div className="keypad-keys">
        {DIGITS.map((digit) => (
          <Key key={digit} place={`d${digit}`} label={digit} onPress={() => typeKey(digit)} />
        ))}
        <Key place="point" label={point} onPress={() => typeKey(point)} />
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
function KeypadDoubt({ bench }: { readonly bench: Bench }) {
  const doubt = newestDoubt(useDoubts(bench));
  return doubt && <EchoDoubt bench={bench} doubt={doubt} />;
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
  useEffect(() => {
    // The cell that brought the keypad up must not lie under it, nor where the drawing was before it folded.
    const frame = requestAnimationFrame(() => {
      const cell = document.activeElement;
      if (cell?.matches('[data-cell]') === true) {
        cell.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' });
      }
    });
    return () => cancelAnimationFrame(frame);
  }, []);
}
