/** The next reading, as data. Millimetres and radians, frame and signs as in types.ts. */
import type { Instrument } from '../job/schema.ts';
import type { Grid } from './types.ts';

/** One reading more, or one whole set-up more, and what it would do to the map. */
export interface NextReading {
  readonly gauge: string;
  readonly name: string;
  readonly instrument: Instrument;
  /** Every clock position at every depth: one of each for a single reading. */
  readonly clocks: readonly number[];
  readonly depths: readonly number[];
  /** Mean standard deviation over the map before and after, per side, mm. */
  readonly before: number;
  readonly after: number;
}

/** What the map is: which frame its give-or-take is counted in, and which of its places count. */
export interface MapAsked {
  readonly grid: Grid;
  /** Free: shift and lean of the target cost nothing. */
  readonly frame: 'free' | 'kept';
  /** 1 where the place counts, anything else where it does not; as long as a field. */
  readonly counts: Uint8Array;
}
