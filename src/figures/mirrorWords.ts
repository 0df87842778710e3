/** Does the pin mirror the hole, in words. */
import type { Evaluation } from '../evaluate.ts';
import { nearPair } from './nearClock.ts';

type Mirror = Evaluation['joint']['mirrors'][number];

const MEASURE =
  'read it across at the six clock pairs at three depths where it ran, and once at its unworn end.';

export function mirrorWords(one: Mirror): string {
  const { why, verdict, holeTheta, pinTheta } = one;
  const hole = `“${one.hole}”`;
  const lines = `${hole} is longest along ${nearPair(holeTheta)} and the pin thinnest along ${nearPair(pinTheta)}`;
  switch (why) {
    case 'one-side':
      return `The pin mirrors the hole: ${lines}. So wears a pin that is held fast.`;
    case 'turned':
      return `The pin goes with the hole: ${hole} is worn along ${nearPair(holeTheta)} and the pin all round. So wears a pin that turns.`;
    case 'all-round':
      return verdict === 'agrees'
        ? `The pin goes with the hole: both are worn all round. So wears a pin that turns.`
        : `Neither ${hole} nor the pin is out of round above its give-or-take: there is nothing to mirror.`;
    case 'mirrored':
      return `The pin does not mirror the hole: ${lines}, each the other as seen in a looking-glass. Was one of them read from the other face? Check the witness marks.`;
    case 'crossed':
      return `The pin does not mirror the hole: ${lines}. Check the marks of 12 o’clock on both, and whether the pin had turned or was renewed.`;
    case 'pin-unworn':
      return `The pin does not mirror the hole: ${hole} is worn along ${nearPair(holeTheta)} and the pin is not worn. It was renewed, or is much harder.`;
    case 'hole-unworn':
      return `The hole does not mirror the pin: the pin is thinnest along ${nearPair(pinTheta)}, and ${hole} is round. Did the pin run in another hole, or was the bushing renewed?`;
    case 'no-new-size':
      return `Whether the pin mirrors ${hole} cannot be told: its new size is not given, and no unworn end stands out. Give one, or read the other.`;
    case 'no-pin':
      return `Whether the pin mirrors ${hole} is not measured: add the pin from the menu, and ${MEASURE}`;
    case 'pin-list':
      return `Whether the pin mirrors ${hole} is not measured: its sizes are typed without clock positions. Add the pin from the menu, and ${MEASURE}`;
  }
}
