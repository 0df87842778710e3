/** The reading that was entered last, to be shown large and called out. */
import { create } from 'zustand';

export interface AcceptedReading {
  /** The bore and the survey that it belongs to. */
  readonly bore: string;
  readonly survey: string;
  /** Heads of its column and row. */
  readonly clock: string;
  readonly depth: string;
  /** As it now stands in the cell; '' where it was emptied. */
  readonly text: string;
  /** Readings of the survey that it made, by id. */
  readonly ids: readonly string[];
  /** Counts entries, so that the same figure entered again is another one. */
  readonly number: number;
}

export const useAccepted = create<{ last: AcceptedReading | null }>()(() => ({ last: null }));

let entered = 0;

export function accept(reading: Omit<AcceptedReading, 'number'>): void {
  entered += 1;
  useAccepted.setState({ last: { ...reading, number: entered } });
}
