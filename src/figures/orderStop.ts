/** Why the work of fitting a bushing is not begun: where the fit is unsafe or cannot be, the order of work ends there. */
import type { BushingFit } from '../evaluate/fit.ts';
import type { Units } from '../job/schema.ts';
import { beyond } from './beyondYield.ts';
import { looseWords } from './seatWords.ts';
import { gravest, slipAgainst } from './slipAgainst.ts';
import { faultWords } from './slipWords.ts';
import { HAND_WARM } from './temperColours.ts';
import { written } from './written.ts';

/** One sentence or two; null: the work may go on. */
export function orderStop(one: BushingFit, units: Units): string | null {
  const { press, heat, running } = one;
  const { free } = running;
  if (heat.fault === 'loose') {
    return 'It slips in, and nothing holds it: do not go on before the press fit above is right.';
  }
  if (looseWords(press, units) !== null) {
    return 'On the whole nothing presses on it, so that nothing holds it: do not go on before the press fit above is right.';
  }
  if (free !== null && !(free.tightest > 0)) {
    return `Do not put it in yet: by their sizes the pin is ${written(units, Number.NaN).across(-free.tightest)} larger than the bushing’s bore even before that goes in. Measure both anew; then the bushing’s bore is opened to the pin, or another bushing or pin is needed.`;
  }
  const past = beyond(press);
  if (past !== null) {
    return `Do not put it in like this: at its tightest place the press fit is more than ${past} can bear. Take a smaller press fit first.`;
  }
  const against = slipStop(one, units);
  return (
    against &&
    `Warm and chill nothing yet. ${against} ${
      press.holds !== null && press.holds.high.force > 0
        ? 'Choose another way under “Heat and cold”; with the bushing as it lies in the shop and the boss not heated, it is pressed in cold.'
        : 'Choose another way under “Heat and cold”.'
    }`
  );
}

/** Only where something is warmed or chilled: pressed in cold, nothing need be won. */
function slipStop({ heat }: BushingFit, units: Units): string | null {
  const { fault, chosen } = heat;
  if (fault !== null && fault !== 'no-size') return faultWords(fault, heat, units);
  if (chosen === null) return null;
  const pressed = chosen.off <= HAND_WARM && chosen.row.cold === 'as-it-is';
  return pressed ? null : gravest(slipAgainst(heat, units));
}
