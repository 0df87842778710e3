/** Pressures, forces and torques as a shop writes them: to two digits that count, as none of them is known better. */
import type { Units } from '../job/schema.ts';

/** MPa in a pound a square inch. */
const PSI = 0.006894757;
/** N in a pound of force, and in the ton that presses are sold by: 2000 lb, or 1000 kg. */
const POUND = 4.4482216;
const TON = { in: 2000 * POUND, mm: 9806.65 } as const;
/** N mm in a pound-foot. */
const POUND_FOOT = POUND * 304.8;

export function pressureUnit(units: Units): string {
  return units === 'in' ? 'psi' : 'MPa';
}

/** MPa in one of that unit. */
export function mpaPerUnit(units: Units): number {
  return units === 'in' ? PSI : 1;
}

/** `27 MPa`, `3900 psi`. */
export function pressureText(mpa: number, units: Units): string {
  return `${pressureBare(mpa, units)} ${pressureUnit(units)}`;
}

/** The number of that alone. */
export function pressureBare(mpa: number, units: Units): string {
  return twoDigits(mpa / mpaPerUnit(units));
}

/** `90 kN`, `20000 lb`. */
export function forceText(newton: number, units: Units): string {
  return units === 'in' ? `${twoDigits(newton / POUND)} lb` : `${twoDigits(newton / 1000)} kN`;
}

/** As presses are sold by: `9.2 t`, `10 tons of 2000 lb`. */
export function pressSize(newton: number, units: Units): string {
  const tons = twoDigits(newton / TON[units]);
  return units === 'in' ? `${tons} tons of 2000 lb` : `${tons} t`;
}

/** `5000 N m`, `3700 lb ft`. */
export function torqueText(newtonMm: number, units: Units): string {
  return units === 'in'
    ? `${twoDigits(newtonMm / POUND_FOOT)} lb ft`
    : `${twoDigits(newtonMm / 1000)} N m`;
}

/** With a real minus sign; NaN: an en dash. */
function twoDigits(value: number): string {
  if (Number.isNaN(value)) return '–';
  if (!Number.isFinite(value)) return 'no end';
  if (value === 0) return '0';
  const decimals = 1 - Math.floor(Math.log10(Math.abs(value)));
  const whole = Number(value.toPrecision(2));
  return whole.toFixed(Math.min(4, Math.max(0, decimals))).replace('-', '−');
}
