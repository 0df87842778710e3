/** Undo and redo from the keyboard; and a digit typed at nothing in particular goes into the table. */
import { useEffect } from 'react';
import { jobStore } from '../store/job.ts';

/** What a gauge that types, or a hand in a hurry, begins a reading with. */
const BEGINS_READING = /^[0-9.,+−-]$/;

export function useShortcuts(): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey) return;
      if (event.ctrlKey || event.metaKey) undoKey(event);
      else if (event.target === document.body && BEGINS_READING.test(event.key)) {
        // The focus moves before the key is typed, so the digit lands in the cell.
        document.querySelector<HTMLInputElement>('.readings input[tabindex="0"]')?.focus();
      }
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, []);
}

function undoKey(event: KeyboardEvent): void {
  const key = event.key.toLowerCase();
  if (key !== 'z' && key !== 'y') return;
  // A text being typed has its own undo, until it is entered.
  const { target } = event;
  if (target instanceof HTMLInputElement && target.dataset.typing === 'true') return;
  event.preventDefault();
  const { undo, redo } = jobStore.getState();
  if (key === 'y' || event.shiftKey) redo();
  else undo();
}
