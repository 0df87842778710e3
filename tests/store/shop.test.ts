import { describe, expect, test } from 'vitest';
import { saveShop } from '../../src/job/openShop.ts';
import type { Shop } from '../../src/job/shop.ts';
import { withKind } from '../../src/job/shopGauges.ts';
import type { Slate } from '../../src/store/keep.ts';
import { createShopStore, SHOP_ASIDE_KEY, SHOP_KEY } from '../../src/store/shop.ts';
import { benchJob } from './benchJob.ts';

/** A slate in memory; `full` texts are not taken, and what stood there is forgotten, as in a browser. */
function memorySlate() {
  const texts = new Map<string, string>();
  const state = { full: (_text: string) => false };
  const slate: Slate = {
    get: (key) => texts.get(key) ?? null,
    set: (key, text) => void (state.full(text) ? texts.delete(key) : texts.set(key, text)),
    wipe: (key) => void texts.delete(key),
  };
  return { slate, texts, state };
}

const job = benchJob('a');
const types = (shop: Shop | null) => shop?.gauges?.map(({ type }) => type);
const tick = (type: 'dial-bore' | 'caliper' | 'indicator', at: boolean) => (shop: Shop | null) =>
  withKind(shop, job, type, at);

describe('the shop document on the device', () => {
  test('nothing is kept until somebody says something', () => {
    const { slate, texts } = memorySlate();
    expect(createShopStore(slate).getState()).toMatchObject({ shop: null, fault: null });
    expect(texts.size).toBe(0);
  });

  test('what was said is there at the next start, with what was taken for granted before', () => {
    const { slate } = memorySlate();
    createShopStore(slate).getState().change(tick('dial-bore', true));
    const { shop, fault } = createShopStore(slate).getState();
    expect(types(shop)).toEqual(['telescoping', 'indicator', 'dial-bore']);
    expect(fault).toBeNull();
  });

  test('a change keeps what another tab said, and all else that the document holds', () => {
    const { slate, texts } = memorySlate();
    const [one, other] = [createShopStore(slate), createShopStore(slate)];
    one.getState().change(tick('dial-bore', true));
    const stock = [{ id: 'k', name: 'Shim', thickness: { text: '0.1', unit: 'mm' as const } }];
    texts.set(SHOP_KEY, saveShop({ ...one.getState().shop!, stock }));
    other.getState().change(tick('caliper', true));
    const { shop } = createShopStore(slate).getState();
    expect(types(shop)).toEqual(['telescoping', 'indicator', 'dial-bore', 'caliper']);
    expect(shop?.stock).toEqual(stock);
  });

  test('all taken away is none at hand, not nothing said', () => {
    const { slate } = memorySlate();
    const { change } = createShopStore(slate).getState();
    change(tick('indicator', false));
    change((shop) => withKind(shop, job, 'telescoping', false));
    expect(types(createShopStore(slate).getState().shop)).toEqual([]);
  });

  test('a text that cannot be read is told in a sentence, and set aside before anything is written over it', () => {
    const { slate, texts } = memorySlate();
    const newer = '{ "format": "roundhand-shop", "version": 7 }';
    texts.set(SHOP_KEY, newer);
    const store = createShopStore(slate);
    expect(store.getState().shop).toBeNull();
    expect(store.getState().fault).toMatch(
      /^What this device keeps of the shop: .*newer Roundhand.*\.$/,
    );
    store.getState().change(tick('caliper', true));
    expect(texts.get(SHOP_ASIDE_KEY)).toBe(newer);
    expect(store.getState().fault).toBeNull();
    expect(types(createShopStore(slate).getState().shop)).toContain('caliper');
  });

  test('a full device: what was kept before stays, what was said counts on the page, and it is told', () => {
    const { slate, state } = memorySlate();
    const store = createShopStore(slate);
    store.getState().change(tick('dial-bore', true));
    state.full = (text) => text.includes('caliper');
    store.getState().change(tick('caliper', true));
    store.getState().change(tick('indicator', false));
    expect(types(store.getState().shop)).toEqual(['telescoping', 'dial-bore', 'caliper']);
    expect(store.getState().fault).toMatch(/does not keep/);
    expect(types(createShopStore(slate).getState().shop)).toEqual([
      'telescoping',
      'indicator',
      'dial-bore',
    ]);
  });
});
