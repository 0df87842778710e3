/** How a bushing slips in and how long one has, in few words. */
import type { Clock } from '../evaluate/fit/clock.ts';
import type { Heat } from '../evaluate/fit/heat.ts';
import type { Units } from '../job/schema.ts';
import { enoughTime, timeSaid } from './clockWords.ts';
import { degrees } from './degrees.ts';
import { slipAgainst, UNSEEN } from './slipAgainst.ts';
import { COLD_NAMES } from './slipWords.ts';
import { HAND_WARM } from './temperColours.ts';
import { written } from './written.ts';

export interface SlipShort {
  /**
   * `waits`: the way takes heat, and its questions are open. `over`: it takes boss or bushing past what that may have.
   * `short`: what is chosen does not open enough.
   */
  readonly is: 'untold' | 'waits' | 'over' | 'short' | 'enough';
  /** What must be won, across: `0.0040 in across`. */
  readonly must: string;
  /** `bushing from a freezer and the boss at 299 °F (148 °C)`; '' unless it may be told. */
  readonly by: string;
  /** How much of it stays open, across; '' where nothing does. */
  readonly lacks: string;
  /** Why it is `over`, in a sentence; '' where it is not. */
  readonly over: string;
}

/** @param open whether steps with heat may be told */
export function slipShort(heat: Heat, units: Units, open: boolean): SlipShort {
  const { press, room, chosen, fault, facts } = heat;
  const { across } = written(units, Number.NaN);
  const untold: SlipShort = { is: 'untold', must: '', by: '', lacks: '', over: '' };
  if (fault !== null || chosen === null || Number.isNaN(chosen.least)) return untold;
  const must = across(press + room);
  if (chosen.off > HAND_WARM && !open) return { ...untold, is: 'waits', must };
  const boss =
    chosen.off > facts.shop.value + 0.5
      ? `boss at ${degrees(chosen.off, units)}`
      : 'boss not heated';
  const against = slipAgainst(heat, units);
  const over = against.boss ?? against.bushing ?? '';
  const enough = chosen.least >= room - UNSEEN;
  return {
    is: over !== '' ? 'over' : enough ? 'enough' : 'short',
    must,
    by: `bushing ${COLD_NAMES[chosen.row.cold]} and the ${boss}`,
    lacks: enough ? '' : across(room - chosen.least),
    over,
  };
}

/** `About 7 seconds from touching until it grips, 5 at the worst; to be home takes 8: not enough.` */
export function secondsShort(clock: Clock): string {
  const verdict = {
    always: 'enough even at the worst',
    usually: 'enough as usual, and not at the worst',
    never: 'not enough',
  }[enoughTime(clock)];
  return `About ${timeSaid(clock.usual.seconds).replace(/^about /, '')} from touching until it grips, ${timeSaid(clock.soonest.seconds)} at the worst; to be home takes ${clock.needs} seconds: ${verdict}.`;
}
