/** What must be said before all of a bushing's fit can be told: a sentence for the report, the field to go to on the page. */
import type { BushingFit } from '../evaluate/fit.ts';
import { HAND_WARM } from './temperColours.ts';

/** Sizes and answers that are typed on the page. */
export type FitWant = 'outside' | 'inside' | 'boss' | 'pin' | 'cold' | 'questions';

export const WANT_NAMES: Readonly<Record<FitWant, string>> = {
  outside: 'the bushing’s outside diameter',
  inside: 'the bushing’s inside diameter',
  boss: 'the outside diameter of the boss',
  pin: 'the sizes of the pin',
  cold: 'how cold the bushing is',
  questions: 'the questions about heat',
};

/** @param open whether steps with heat may be told */
export function fitWants({ seated, running, heat }: BushingFit, open: boolean): FitWant[] {
  const { outside, inside, boss } = seated;
  const wants: FitWant[] = [];
  if (!(outside > 0)) wants.push('outside');
  // What is not given and what cannot be are both typed in the same field.
  if (!(inside > 0 && !(inside >= outside))) wants.push('inside');
  if (!(boss.outside > 0 && !(boss.outside <= outside))) wants.push('boss');
  if (running.pin === null) wants.push('pin');
  const { facts, chosen, fault } = heat;
  if (facts.cold === 'own' && Number.isNaN(facts.own)) wants.push('cold');
  if (!open && fault === null && chosen !== null && chosen.off > HAND_WARM) wants.push('questions');
  return wants;
}

/** `Still wanted: the bushing’s inside diameter; the sizes of the pin.`; none where all is there. */
export function wantWords(wants: readonly FitWant[]): string[] {
  return wants.length === 0
    ? []
    : [`Still wanted: ${wants.map((want) => WANT_NAMES[want]).join('; ')}.`];
}
