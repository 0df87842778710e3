/** Deviations as the map writes them. */
import { MAP_UNIT, type Units } from './steps.ts';

/**
 * A signed figure in units of the map (`−3.5`), to one decimal where its give-or-take allows it. What rounds to
 * nothing has no sign; NaN is ''.
 *
 * @param deviation per side, mm, negative stands proud; `give` its give-or-take, mm
 */
export function signedText(deviation: number, give: number, units: Units): string {
  if (Number.isNaN(deviation)) return '';
  const unit = MAP_UNIT[units];
  const text = (Math.abs(deviation) / unit).toFixed(give / unit > 1 ? 0 : 1);
  if (Number(text) === 0) return text;
  return `${deviation < 0 ? '−' : '+'}${text}`;
}
