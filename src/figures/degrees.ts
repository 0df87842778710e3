/** Temperatures as a shop reads them: inch jobs in °F, millimetre jobs in °C, the other beside it in sentences. */
import { degreesOf } from '../job/heatFacts.ts';
import type { Units } from '../job/schema.ts';
import { inDegrees } from '../job/temperature.ts';

/** `545 °F (285 °C)`. */
export function degrees(celsius: number, units: Units): string {
  const other = units === 'in' ? 'mm' : 'in';
  return `${degreesBare(celsius, units)} ${degreesName(units)} (${degreesBare(celsius, other)} ${degreesName(other)})`;
}

/** `545`; an en dash where it is not known. */
export function degreesBare(celsius: number, units: Units): string {
  if (!Number.isFinite(celsius)) return '–';
  const whole = Math.round(inDegrees(celsius, degreesOf(units)));
  return whole < 0 ? `−${-whole}` : `${whole}`;
}

export function degreesName(units: Units): string {
  return `°${degreesOf(units)}`;
}

/** A difference: `25 °F (14 °C)`. */
export function degreesApart(celsius: number, units: Units): string {
  const [c, f] = [`${Math.round(celsius)} °C`, `${Math.round(celsius * 1.8)} °F`];
  return units === 'in' ? `${f} (${c})` : `${c} (${f})`;
}
