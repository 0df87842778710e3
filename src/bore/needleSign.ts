/**
 * Does a swept needle turn the way that was said? With its sign turned, an oval is swept a quarter turn off: whichever
 * way explains all readings together the better is the likelier one.
 */
import { type Design, design } from './design.ts';
import { condition } from './posterior.ts';
import type { Smoothness } from './types.ts';

/**
 * Twice the difference of the logarithms of how likely the readings are with either sign, beyond which the evidence is
 * very strong (Kass and Raftery, Journal of the American Statistical Association 90, 1995: 10). Nothing is fitted to
 * tell the signs apart, so the two are compared as they stand.
 */
const VERY_STRONG = 10;

/**
 * Set-ups, by place, whose readings fit the others of the survey so much better with the needle the other way. None
 * where the other readings show no oval to compare with: then both signs explain them about equally.
 *
 * @param s how smooth and oval the bore was found; the gauges are taken to repeat as stated, since a wrong sign passes
 *   for noise
 */
export function needlesTurned(d: Design, s: Smoothness, nominalRadius: number): number[] {
  const swept = new Set(
    d.sightings.filter(({ instrument }) => instrument === 'sweep').map(({ setup }) => setup),
  );
  if (swept.size === 0 || d.sightings.every(({ instrument }) => instrument === 'sweep')) return [];
  const plain = { ...s, noise: 1 };
  const asSaid = condition(d, plain, nominalRadius)?.surprise ?? Number.NaN;
  return [...swept].filter((place) => {
    const setups = d.setups.map((setup, k) =>
      k === place ? { ...setup, sign: setup.sign === 1 ? (-1 as const) : (1 as const) } : setup,
    );
    const other = design(d.sightings, setups, d.length, d.wornSide);
    const turned = condition(other, plain, nominalRadius)?.surprise ?? Number.NaN;
    return 2 * (asSaid - turned) > VERY_STRONG;
  });
}
