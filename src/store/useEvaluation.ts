/** What the job on the bench comes to, for views. */
import { useDeferredValue } from 'react';
import { useStore } from 'zustand';
import { asker } from './bridge.ts';
import type { EvaluationState } from './evaluation.ts';

export function useEvaluation<T>(select: (state: EvaluationState) => T): T {
  return useStore(asker.store, select);
}

/** The same, drawn in between key presses, see `useUnhurriedBench`. */
export function useUnhurriedEvaluation<T>(select: (state: EvaluationState) => T): T {
  return useDeferredValue(useEvaluation(select));
}
