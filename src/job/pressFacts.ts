/** What a job says of pressing a bushing in; the usual figure where nothing is said. */
import type { Known } from './facts.ts';
import { numberOf, type Stated } from './mendingFacts.ts';
import type { Feature } from './schema.ts';
import { lengthMm } from './units.ts';

export interface PressFacts {
  /** What pressing flattens of the two rough walls, across. */
  readonly loss: Known;
  /** Friction in the seat: what it holds with goes by the low one, what it is pressed with by the high one. */
  readonly frictionLow: Stated;
  readonly frictionHigh: Stated;
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
  return {
    loss: loss >= 0 ? { mm: loss, from: 'typed' } : { mm: 0, from: 'default' },
    frictionLow: swapped ? high : low,
    frictionHigh: swapped ? low : high,
  };
}

function friction(text: string | undefined, usual: string): Stated {
  const value = numberOf(text);
  return value > 0 && value <= 1
    ? { value, from: 'typed' }
    : { value: Number(usual), from: 'default' };
}
