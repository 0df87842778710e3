/** The plan of the pin on the bench, and sees to it that it is worked out; null while it is not there. */
import { useEffect } from 'react';
import type { PinPlan } from '../evaluate/pinTypes.ts';
import { answerFor, type Matter } from './aside.ts';
import { usePinPlan, wantPinPlan } from './pinPlan.ts';
import { useEvaluation } from './useEvaluation.ts';
import { useShop } from './useShop.ts';

export function usePlanOfPin({ job, bore, survey }: Matter): PinPlan | null {
  const settled = useEvaluation((state) => state.settled && state.of === job);
  const shop = useShop((state) => state.shop);
  useEffect(() => {
    if (settled && bore.kind === 'pin') wantPinPlan({ job, bore, survey });
  }, [settled, job, bore, survey, shop]);
  return answerFor(usePinPlan(), bore, survey);
}
