import { describe, expect, test } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { type AwakeState, createAwake, REST_MINUTES } from '../../src/store/awake.ts';

/** A browser with one screen, a clock that is wound by hand, and a page that can go out of sight. */
function world(can: 'yes' | 'no' | 'refuses') {
  const store = createStore<{ state: AwakeState }>()(() => ({ state: 'off' }));
  let visible = true;
  let seen: () => void = () => undefined;
  let timer: { due: number; act: () => void } | null = null;
  let now = 0;
  const locks: { held: boolean; let: () => void }[] = [];
  const request = async () => {
    if (can === 'refuses') throw new Error('battery saver');
    let hear: () => void = () => undefined;
    const lock = {
      held: true,
      let() {
        lock.held = false;
        hear();
      },
    };
    locks.push(lock);
    return {
      release: async () => lock.let(),
      addEventListener: (_: 'release', hears: () => void) => {
        hear = hears;
      },
    };
  };
  const awake = createAwake(
    {
      request: can === 'no' ? undefined : request,
      visible: () => visible,
      onVisible: (hears) => {
        seen = hears;
      },
      after: (ms, act) => {
        const own = { due: now + ms, act };
        timer = own;
        return () => {
          if (timer === own) timer = null;
        };
      },
    },
    store,
  );
  return {
    awake,
    state: () => store.getState().state,
    held: () => locks.filter(({ held }) => held).length,
    asked: () => locks.length,
    async hide() {
      visible = false;
      for (const lock of locks) if (lock.held) lock.let();
    },
    async show() {
      visible = true;
      seen();
      await Promise.resolve();
      await Promise.resolve();
    },
    async wind(minutes: number) {
      now += minutes * 60_000;
      if (timer !== null && timer.due <= now) timer.act();
      await Promise.resolve();
      await Promise.resolve();
    },
  };
}
const turn = async () => {
  await Promise.resolve();
  await Promise.resolve();
};

describe('the screen', () => {
  test('is kept on from the first key, with one lock however many keys follow', async () => {
    const { awake, state, held, asked } = world('yes');
    awake.touch();
    awake.touch();
    await turn();
    awake.touch();
    await turn();
    expect([state(), held(), asked()]).toEqual(['on', 1, 1]);
  });
  test('goes some minutes after the last key, not after the first', async () => {
    const { awake, state, held, wind } = world('yes');
    awake.touch();
    await turn();
    await wind(REST_MINUTES - 1);
    awake.touch();
    await wind(REST_MINUTES - 1);
    expect([state(), held()]).toEqual(['on', 1]);
    await wind(1);
    expect([state(), held()]).toEqual(['off', 0]);
  });
  test('is asked for again when the page comes back to sight, and only while somebody types', async () => {
    const { awake, state, held, hide, show, wind } = world('yes');
    awake.touch();
    await turn();
    await hide();
    expect([state(), held()]).toEqual(['off', 0]);
    await show();
    expect([state(), held()]).toEqual(['on', 1]);
    await hide();
    await wind(REST_MINUTES);
    await show();
    expect([state(), held()]).toEqual(['off', 0]);
  });
  test('a lock that comes after nobody wants it any more is let go at once', async () => {
    const { awake, state, held } = world('yes');
    awake.touch();
    awake.rest();
    await turn();
    expect([state(), held()]).toEqual(['off', 0]);
  });
  test('that cannot be kept on, or is refused, is said', async () => {
    const none = world('no');
    none.awake.touch();
    expect(none.state()).toBe('cannot');
    const refuses = world('refuses');
    refuses.awake.touch();
    await turn();
    expect(refuses.state()).toBe('refused');
  });
});
