/**
 * How much longer or shorter metal is at a temperature than at 20 °C: by temperature, not by one coefficient.
 *
 * Above 20 °C the mean coefficient from 20 °C grows in a straight line. Below, the length follows the heat that the
 * metal holds (Grüneisen's rule, with Debye's energy), so that it shrinks less and less as it gets colder; one figure a
 * family sets how soon, chosen so that the published shrinkage from 293 to 80 K comes out.
 */

/** Metals of one family expand alike but for a factor. */
export type Family = 'steel' | 'stainless' | 'copper' | 'aluminium';

export interface Expands {
  readonly family: Family;
  /** Per kelvin, as tables give it at room temperature. */
  readonly perKelvin: number;
}

interface Curve {
  /** Coefficient at 20 °C, as a share of what tables give at room temperature. */
  readonly atRoom: number;
  /** Growth of the mean coefficient from 20 °C, per kelvin, as a share of the one at 20 °C. */
  readonly growth: number;
  /** Debye's temperature of the curve, K: found from the shrinkage that stands beside it. */
  readonly debye: number;
}

/**
 * Shrinkage from 293 to 80 K: NOAO SDN0013.02 (1075 steel 0.187 %, 303 stainless 0.282 %, naval brass 0.382 %, 6061
 * aluminium 0.393 %), with 11.5, 17.2, 20.5 and 23.6e-6 per kelvin at room temperature (Callister, appendix B). Hot:
 * steel between C40E of EN 10132-3 and EN 1993-1-2, 3.4.1.1; stainless EN 1993-1-2, annex C; aluminium EN 1999-1-2, 3.3.1.
 * Tabled figures of brass and bronze are means up to 200 or 300 °C already: no growth. Iron is taken like steel.
 */
const CURVES: Readonly<Record<Family, Curve>> = {
  steel: { atRoom: 1, growth: 4.7e-4, debye: 500.58 },
  stainless: { atRoom: 0.936, growth: 2.97e-4, debye: 404.62 },
  copper: { atRoom: 1, growth: 0, debye: 321.11 },
  aluminium: { atRoom: 0.97, growth: 4.37e-4, debye: 430.79 },
};

/** °C: the curves say nothing outside. The coldest bath in use boils at −195.8 °C. */
const COLDEST = -200;
export const HOTTEST = 600;
const ROOM = 20;
const KELVIN = 273.15;

/**
 * Length at a temperature less length at 20 °C, as a share of that at 20 °C; negative is shorter.
 *
 * @returns NaN outside −200 to 600 °C
 */
export function strainAt({ family, perKelvin }: Expands, celsius: number): number {
  if (!(celsius >= COLDEST && celsius <= HOTTEST)) return Number.NaN;
  const table = tableOf(family);
  const at = celsius - COLDEST;
  const i = Math.min(Math.floor(at), table.length - 2);
  return perKelvin * (table[i]! + (at - i) * (table[i + 1]! - table[i]!));
}

/**
 * The temperature at which a length has changed by this share of itself.
 *
 * @returns NaN where that lies outside −200 to 600 °C
 */
export function celsiusAt(metal: Expands, strain: number): number {
  if (!(strain >= strainAt(metal, COLDEST) && strain <= strainAt(metal, HOTTEST))) {
    return Number.NaN;
  }
  let [cold, hot] = [COLDEST, HOTTEST];
  // Halved until doubles tell no more.
  for (let i = 0; i < 60; i++) {
    const middle = (cold + hot) / 2;
    if (strainAt(metal, middle) < strain) cold = middle;
    else hot = middle;
  }
  return (cold + hot) / 2;
}

const tables = new Map<Family, Float64Array>();

/** Strain over the tabled coefficient, K, at every degree: looked up many thousand times while two rings even out. */
function tableOf(family: Family): Float64Array {
  const kept = tables.get(family);
  if (kept) return kept;
  const { atRoom, growth, debye } = CURVES[family];
  const holds = (celsius: number) => debyeHeat(celsius + KELVIN, debye);
  const perDegree = (holds(ROOM + 0.5) - holds(ROOM - 0.5)) / atRoom;
  const table = Float64Array.from({ length: HOTTEST - COLDEST + 1 }, (_, i) => {
    const over = i + COLDEST - ROOM;
    return over >= 0
      ? atRoom * over * (1 + growth * over)
      : (holds(i + COLDEST) - holds(ROOM)) / perDegree;
  });
  tables.set(family, table);
  return table;
}

/** Debye's energy over 3 R: what a solid holds at a temperature, K. */
function debyeHeat(kelvin: number, debye: number): number {
  const top = debye / kelvin;
  const steps = 40;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const x = (top * i) / steps;
    // Simpson's weights; x³ / (e^x − 1) goes to nought as x².
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * (x > 0 ? x ** 3 / Math.expm1(x) : 0);
  }
  return (kelvin * sum) / steps / top ** 2;
}
