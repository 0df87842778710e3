/**
 * Readings of a comparator: typed as what the needle shows, over or under the size at which it was zeroed.
 *
 * A gauge that reads across and states `zeroedAt` is one. Its needle may turn clockwise where the hole is smaller, as
 * many dial bore gauges' do: then what it shows is taken off.
 */
import type { Gauge, Typed } from './schema.ts';
import { figureUnit, lengthMm, readingNominal, readLength, type Understood } from './units.ts';

/** No comparator's needle travels farther than this, mm: a figure beyond it is a size. */
const MOST_TRAVEL = 5;
/** A figure so near the zeroed size, as a share of it, and written as finely as sizes are, is a size. */
const NEAR_ZERO = 0.05;
const DECIMALS = { in: 3, thou: Number.POSITIVE_INFINITY, mm: 2 } as const;

type Reads = Pick<Gauge, 'kind' | 'zeroedAt' | 'needle'>;

/** True where the gauge's readings are what its needle shows. */
export function isComparator({ kind, zeroedAt }: Reads): boolean {
  const across = kind === 'two-point' || kind === 'three-leg';
  return across && zeroedAt !== undefined && zeroedAt.text.trim() !== '';
}

/**
 * What was typed for a gauge, in millimetres as `Sighting.value`.
 *
 * @param nominal new size across, mm, that signed readings of other gauges are over or under of; NaN: not known
 */
export function readGauge(typed: Typed, gauge: Reads, nominal: number): Understood {
  if (!isComparator(gauge)) return readLength(typed, readingNominal(gauge.kind, nominal));
  const zeroed = lengthMm(gauge.zeroedAt);
  if (!(zeroed > 0)) {
    return {
      ok: false,
      why: 'the size at which its gauge was zeroed cannot be read: give that size',
    };
  }
  const way = gauge.needle === 'smaller' ? -1 : 1;
  return readLength(asNeedle(typed, zeroed), zeroed, way);
}

/** The text with the sign that a needle's figure has; a full size stays unsigned. */
export function needleText(typed: Typed, gauge: Reads): Typed {
  return isComparator(gauge) ? asNeedle(typed, lengthMm(gauge.zeroedAt)) : typed;
}

function asNeedle(typed: Typed, zeroed: number): Typed {
  const text = typed.text.trim();
  const signed: Typed = { ...typed, text: `+${text}` };
  // What has a sign already is no number with another before it.
  const unit = figureUnit(signed);
  if (unit === null) return typed;
  const shown = readLength(signed, 0);
  const size = lengthMm(typed);
  const decimals = /[.,](\d*)/.exec(text)?.[1]?.length ?? 0;
  const asSize = Math.abs(size - zeroed) < NEAR_ZERO * zeroed;
  const written = decimals >= DECIMALS[typed.unit] || /\//.test(text);
  const tooFar = !(shown.ok && shown.mm <= MOST_TRAVEL);
  return tooFar || (asSize && written) ? typed : signed;
}

/** How far the needle had moved at the end, back on the size at which it was zeroed, mm as the hole would seem; NaN: no check. */
export function zeroMoved(gauge: Reads, shown: Typed | undefined): number {
  if (shown === undefined || !isComparator(gauge)) return Number.NaN;
  return lengthMm(shown, 0) * (gauge.needle === 'smaller' ? -1 : 1);
}
