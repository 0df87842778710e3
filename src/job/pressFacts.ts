/** What a job says of pressing a bushing in; the usual figure where nothing is said. */
import type { Known } from './facts.ts';
import { lengthFault } from './lengthFault.ts';
import { numberOf, type Stated } from './mendingFacts.ts';
import type { Feature, Typed } from './schema.ts';
import { lengthMm } from './units.ts';

export interface PressFacts {
  /** What pressing flattens of the two rough walls, across. */
  readonly loss: Known;
  /** Friction in the seat: what it holds with goes by the low one, what it is pressed with by the high one. */
  readonly frictionLow: Stated;
  readonly frictionHigh: Stated;
  /** What was typed and cannot be: one sentence each. */
  readonly wrong: readonly string[];
}

/**
 * Steel pressed into steel: 0.05 to 0.10 oiled, 0.10 to 0.15 dry (published notes on press fits). The whole range, as
 * nobody knows how dry a seat is.
 */
export const USUAL_FRICTION = { low: '0.05', high: '0.15' } as const;

export function pressFacts({ decisions: { fit = {} } }: Feature): PressFacts {
  const loss = lengthMm(fit.roughnessLoss);
  const low = friction(fit.frictionLow, USUAL_FRICTION.low);
  const high = friction(fit.frictionHigh, USUAL_FRICTION.high);
  const swapped = low.value > high.value;
  const faults = [
    frictionFault(fit.frictionLow, USUAL_FRICTION.low),
    frictionFault(fit.frictionHigh, USUAL_FRICTION.high),
    lengthFault(fit.roughnessLoss, 'none', NO_LOSS),
  ];
  const wrong = faults.flatMap((fault) => (fault === null ? [] : [`${fault}.`]));
  if (swapped) {
    wrong.push('The least friction is more than the greatest: they are taken the other way round.');
  }
  return {
    loss: loss >= 0 ? { mm: loss, from: 'typed' } : { mm: 0, from: 'default' },
    frictionLow: swapped ? high : low,
    frictionHigh: swapped ? low : high,
    wrong,
  };
}

const NO_LOSS: Typed = { text: '0', unit: 'mm' };

function friction(text: string | undefined, usual: string): Stated {
  const value = numberOf(text);
  return value > 0 && value <= 1
    ? { value, from: 'typed' }
    : { value: Number(usual), from: 'default' };
}

/** What is wrong with it as typed, as a sentence's beginning; null: nothing. */
export function frictionFault(text: string | undefined, usual: string): string | null {
  if (text === undefined || friction(text, usual).from === 'typed') return null;
  return `“${text}” is no friction, which is above 0 and no more than 1; ${usual} counts until then`;
}
