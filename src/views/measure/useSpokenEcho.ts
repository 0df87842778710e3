/** Calls back what was entered and the next place, and “check” where a reading is in doubt; only where that is wanted. */
import { useEffect, useRef } from 'react';
import type { Doubt } from '../../figures/checkWords.ts';
import { type Spot, sayAccepted, sayDoubt } from '../../figures/spoken.ts';
import { useAccepted } from '../../store/accepted.ts';
import { useEntryWays } from '../../store/entryWays.ts';
import { type Laid, tableNow } from '../../store/tables.ts';
import { currentCell } from '../../store/typing.ts';
import { voice } from '../../store/voice.ts';

export function useSpokenEcho(laid: Laid, doubt: Doubt | null): void {
  const spoken = useEntryWays((ways) => ways.spoken);
  useEffect(() => {
    if (!spoken) return;
    const stop = useAccepted.subscribe(({ last }) => {
      // Entered first, gone on after: what is next is known when this turn is over.
      if (last !== null)
        queueMicrotask(() => voice.say(sayAccepted(last.text, last, nextSpot(last))));
    });
    return () => {
      stop();
      voice.hush();
    };
  }, [spoken]);
  const spot = doubt === null ? null : spotOf(laid, doubt.rows[0] ?? -1);
  const key = spot === null ? '' : `${spot.clock} ${spot.depth} ${doubt?.brief}`;
  const told = useRef(key);
  useEffect(() => {
    if (spoken && spot !== null && key !== told.current) voice.say(sayDoubt(spot));
    told.current = key;
  });
}

/** Where the next reading goes; null where that is where the last one went. */
function nextSpot(last: Spot): Spot | null {
  const laid = tableNow();
  if (laid === null) return null;
  const { row, column } = currentCell(laid);
  const next = {
    clock: laid.table.clocks[column]?.text ?? '',
    depth: laid.table.rows[row]?.depthText ?? '',
  };
  return next.clock === last.clock && next.depth === last.depth ? null : next;
}

/** The cell that shows a row of the survey's readings. */
function spotOf({ table }: Laid, row: number): Spot | null {
  for (const { cells, depthText } of table.rows) {
    const column = cells.findIndex(({ readings }) => readings.some((one) => one.row === row));
    if (column >= 0) return { clock: table.clocks[column]?.text ?? '', depth: depthText };
  }
  return null;
}
