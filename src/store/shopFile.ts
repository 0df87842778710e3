/** The shop document as a file: for another device, or for the command line. */
import { fileSave } from 'browser-fs-access';
import { openShop, saveShop } from '../job/openShop.ts';
import type { Shop } from '../job/shop.ts';
import { NO_SHOP } from '../job/shopGauges.ts';
import { sentence } from './attempt.ts';
import { say } from './page.ts';
import { shopStore } from './shop.ts';
import { unlessLeft } from './unlessLeft.ts';

export async function saveShopFile(shop: Shop): Promise<void> {
  const blob = new Blob([saveShop(shop)], { type: 'application/json' });
  await fileSave(blob, {
    id: 'roundhand',
    description: 'Roundhand shop document',
    fileName: 'shop.roundhand-shop.json',
    extensions: ['.json'],
  }).catch(unlessLeft);
}

/** What such a file begins with. */
const HEAD = /^\uFEFF?\s*\{\s*"format"\s*:\s*"roundhand-shop"/;

export function isShopText(text: string): boolean {
  return HEAD.test(text.slice(0, 200));
}

/** Puts a shop document in place of the device's, which can be put back. */
export function openShopText(text: string, name: string): void {
  const opened = openShop(text, name);
  if (!opened.ok) {
    say({ tone: 'fault', text: sentence(opened.why) });
    return;
  }
  changeShop(() => opened.shop, `What is at hand is now as ${name} says.`);
}

/** Changes the shop and says so, with the way back. */
export function changeShop(edit: (shop: Shop | null) => Shop, text: string): void {
  const { shop, change } = shopStore.getState();
  change(edit);
  const act = () => {
    say(null);
    change(() => shop ?? NO_SHOP);
  };
  say({
    tone: 'said',
    text,
    actions: [{ label: 'put back what was at hand before', act }],
  });
}
