/** What is kept on this device, for views. */
import { useStore } from 'zustand';
import type { KeepState } from './keep.ts';
import { keeper } from './kept.ts';

export function useKept<T>(select: (state: KeepState) => T): T {
  return useStore(keeper.store, select);
}
