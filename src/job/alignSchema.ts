/** What the saved job says of how bores on one pin stand to each other: readings taken from a straight bar through all. */
import * as v from 'valibot';
import { Face, MOST, Typed, text } from './typed.ts';

/**
 * How a bore's wall was read from the bar: feelers between bar and wall, or an indicator that rides on the bar and is
 * swept round, whose figure is larger, or smaller, where the wall is farther from the bar.
 */
export const BarBy = v.picklist(['feelers', 'larger-farther', 'smaller-farther']);
export type BarBy = v.InferOutput<typeof BarBy>;

/** At the mouth of one face of a bore, at one clock position as seen at that face. */
export const BarReading = v.strictObject({ face: Face, clock: text(MOST.clock), value: Typed });
export type BarReading = v.InferOutput<typeof BarReading>;
