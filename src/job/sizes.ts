/** Sizes that a job states, in millimetres. NaN: not stated, or stated in a way that cannot be understood. */
import type { Bushing, Feature, Gauge, Instrument, Reading } from './schema.ts';
import { lengthMm, readingNominal, readLength, type Understood } from './units.ts';

/** Mean of the places where the bushing's outside diameter was measured; `nominal` for over-and-under texts. */
export function bushingOutsideMm(bushing: Bushing, nominal?: number): number {
  const known = bushing.outside
    .map((typed) => lengthMm(typed, nominal))
    .filter((mm) => !Number.isNaN(mm));
  if (known.length === 0) return Number.NaN;
  return known.reduce((sum, mm) => sum + mm, 0) / known.length;
}

/** New size across: as stated, else the first bushing's outside diameter. */
export function nominalMm(feature: Feature): number {
  const stated = lengthMm(feature.nominal);
  if (!Number.isNaN(stated)) return stated;
  for (const bushing of feature.bushings) {
    const outside = bushingOutsideMm(bushing);
    if (!Number.isNaN(outside)) return outside;
  }
  return Number.NaN;
}

/** What a reading says, for the kind of its gauge; see `readLength`. */
export function readValue(reading: Reading, kind: Instrument, nominal: number): Understood {
  return readLength(reading.value, readingNominal(kind, nominal));
}

export function gaugeOf(gauges: readonly Gauge[], id: string): Gauge | undefined {
  return gauges.find((gauge) => gauge.id === id);
}
