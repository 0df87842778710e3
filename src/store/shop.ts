/**
 * The shop document of this device: one for all jobs, on the slate. It is read anew before each change, so that what
 * another tab put there meanwhile stays; a text there that is none of ours is set aside before anything is written
 * over it. No React; `useShop` is for views.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { openShop, saveShop } from '../job/openShop.ts';
import type { Shop } from '../job/shop.ts';
import { sentence } from './attempt.ts';
import type { Slate } from './keep.ts';
import { browserSlate } from './slate.ts';

export const SHOP_KEY = 'roundhand-shop';
/** Where a text goes that could not be read. */
export const SHOP_ASIDE_KEY = 'roundhand-shop-aside';

export interface ShopState {
  /** Null: nothing was ever said of the shop. */
  readonly shop: Shop | null;
  /** Why what is kept could not be read, or is not kept, in one sentence; null where all is well. */
  readonly fault: string | null;
  /** The document, or null, to what it is to be. */
  change(edit: (shop: Shop | null) => Shop): void;
}

export function createShopStore(slate: Slate): StoreApi<ShopState> {
  return createStore<ShopState>()((set, get) => ({
    ...read(slate),
    change(edit) {
      // What the device would not keep stands on the page alone.
      const { shop } = get().fault === NOT_KEPT ? get() : read(slate);
      const changed = edit(shop);
      set({ shop: changed, fault: write(slate, saveShop(changed)) ? null : NOT_KEPT });
    },
  }));
}

/** True where it is kept; else what stood there before stays. */
function write(slate: Slate, text: string): boolean {
  const before = slate.get(SHOP_KEY);
  if (before !== null && read(slate).fault !== null) {
    slate.set(SHOP_ASIDE_KEY, before);
    if (slate.get(SHOP_ASIDE_KEY) !== before) return false;
  }
  slate.set(SHOP_KEY, text);
  if (slate.get(SHOP_KEY) === text) return true;
  if (before !== null) slate.set(SHOP_KEY, before);
  return false;
}

const NOT_KEPT =
  'This device does not keep what is at hand: its storage is full or not allowed here. It counts until the page is closed.';

function read(slate: Slate): Pick<ShopState, 'shop' | 'fault'> {
  const text = slate.get(SHOP_KEY);
  if (text === null) return { shop: null, fault: null };
  const opened = openShop(text, 'What this device keeps of the shop');
  return opened.ok
    ? { shop: opened.shop, fault: null }
    : { shop: null, fault: sentence(opened.why) };
}

/** The shop of this page. */
export const shopStore = createShopStore(browserSlate);
