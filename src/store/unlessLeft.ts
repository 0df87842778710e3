/** What to do when the device's own file chooser ends without a file. */
import { say } from './page.ts';

/** A chooser that was closed without choosing is no fault. */
export function unlessLeft(fault: unknown): undefined {
  if (fault instanceof Error && fault.name === 'AbortError') return undefined;
  const why = fault instanceof Error ? fault.message : String(fault);
  say({ tone: 'fault', text: `The file could not be opened or saved: ${why}` });
  return undefined;
}
