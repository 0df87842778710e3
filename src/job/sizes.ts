/** Sizes that a job states, in millimetres. NaN: not stated, or stated in a way that cannot be understood. */
import { readGauge } from './comparator.ts';
import type { Bushing, Feature, Gauge, Reading } from './schema.ts';
import { lengthMm, type Understood } from './units.ts';

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

/** What a reading says, for its gauge; one that is not in the list is taken to read across. See `readGauge`. */
export function readValue(
  reading: Pick<Reading, 'value'>,
  gauge: Gauge | undefined,
  nominal: number,
): Understood {
  return readGauge(reading.value, gauge ?? { kind: 'two-point' }, nominal);
}

export function gaugeOf(gauges: readonly Gauge[], id: string): Gauge | undefined {
  return gauges.find((gauge) => gauge.id === id);
}
