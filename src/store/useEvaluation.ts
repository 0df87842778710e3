/** What the job on the bench comes to, for views. */
import { useStore } from 'zustand';
import { asker } from './bridge.ts';
import type { EvaluationState } from './evaluation.ts';

export function useEvaluation<T>(select: (state: EvaluationState) => T): T {
  return useStore(asker.store, select);
}
