/** One line for each part of the fit that tells of the whole bore or the whole job. */
import type { FitAnswer } from '../evaluate/fit.ts';
import type { OnePin } from '../evaluate/onePin.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatLength } from '../job/units.ts';
import type { PartLine } from './fitLines.ts';
import { metalFaults } from './metalWords.ts';
import { onePinMissing } from './onePinWords.ts';
import type { Step } from './orderStep.ts';
import { sideGapMissing } from './sideGapWords.ts';

export function onePinLine(found: OnePin, units: Units): PartLine {
  const { largest, pin, holes } = found;
  const across = (mm: number) => formatAcross(mm, units, units === 'in' ? 4 : 2);
  const off = holes.some((one) => one.off?.over === true);
  const wants = onePinMissing(found).length > 0;
  if (Number.isNaN(largest)) return { says: 'no straight pin is known to pass', calls: true };
  const room = largest - pin;
  const passes = Number.isNaN(room)
    ? ''
    : room > 0
      ? `; the pin passes with ${across(room)} of room`
      : `; the pin is ${across(-room)} too thick`;
  return {
    says: `largest straight pin ${across(largest)}${passes}${off ? '; a bore is off the line' : ''}`,
    calls: off || wants || !(room > 0),
  };
}

export function sideGapLine({ side }: Pick<FitAnswer, 'side'>, units: Units): PartLine {
  const { after, facts, shims } = side;
  const { least, most } = facts;
  const length = (mm: number) => formatLength(mm, units, units === 'in' ? 3 : 2);
  if (Number.isNaN(after.least)) {
    // Of a joint whose sides nobody asks about nothing is wanted.
    const begun = facts.between.length > 0 || facts.width.length > 0 || facts.faults.length > 0;
    return { says: 'not measured', calls: begun && sideGapMissing(side).length > 0 };
  }
  const range =
    after.greatest - after.least > 0.005
      ? `${length(after.least)} to ${length(after.greatest)}`
      : length(after.least);
  const wide = after.greatest > most.mm;
  const tight = !(after.least >= least.mm);
  const verdict = tight
    ? `at least ${length(least.mm)} is wanted`
    : wide
      ? `at most ${length(most.mm)} is wanted${shims === null ? '' : ': face shims'}`
      : 'as wanted';
  return { says: `${range} after the work: ${verdict}`, calls: tight || wide };
}

export function orderLine(steps: readonly Step[], done: readonly string[]): PartLine {
  const ticked = steps.filter(({ key }) => done.includes(key)).length;
  return { says: `${ticked} of ${steps.length} steps done`, calls: false };
}

export function metalsLine({ bushings, metals }: Pick<FitAnswer, 'bushings' | 'metals'>): PartLine {
  const [first] = bushings;
  const used = first && [first.press.boss.material.name, first.press.bushing.material.name];
  return {
    says: used === undefined ? '' : `${used[1]} in ${used[0]}`,
    calls: metals.some((metal) => metalFaults(metal).length > 0),
  };
}
