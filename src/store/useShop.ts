/** What is at hand in the shop, for views. */
import { useStore } from 'zustand';
import { type ShopState, shopStore } from './shop.ts';

export function useShop<T>(select: (state: ShopState) => T): T {
  return useStore(shopStore, select);
}
