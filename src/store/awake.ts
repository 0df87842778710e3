/**
 * Keeps the screen on while readings are typed: asked for at the first key, again when the page comes back to sight,
 * and let go some minutes after the last key. No React; views read `useAwake`.
 */
import { create, type StoreApi } from 'zustand';
import { useEntryWays } from './entryWays.ts';

/** `off`: nobody types. `cannot`: this browser has no such thing. `refused`: it has, and said no (battery saver). */
export type AwakeState = 'off' | 'on' | 'cannot' | 'refused';

/** Long enough for the next reading to be taken, short enough that a page left alone goes dark. */
export const REST_MINUTES = 5;

interface Lock {
  release(): Promise<void>;
  addEventListener(kind: 'release', hear: () => void): void;
}

/** What of the browser is used; a test has its own. */
export interface AwakeWorld {
  /** Undefined where the browser cannot. */
  readonly request: (() => Promise<Lock>) | undefined;
  visible(): boolean;
  onVisible(hear: () => void): void;
  after(ms: number, act: () => void): () => void;
}

export interface Awake {
  /** Somebody types. */
  touch(): void;
  /** Lets the screen go. */
  rest(): void;
}

export function createAwake(
  world: AwakeWorld,
  store: Pick<StoreApi<{ state: AwakeState }>, 'setState'>,
): Awake {
  let lock: Lock | null = null;
  let wanted = false;
  let asking = false;
  let stopClock: (() => void) | null = null;
  const show = (state: AwakeState) => store.setState({ state });

  const ask = async () => {
    if (world.request === undefined || asking || lock !== null || !world.visible()) return;
    asking = true;
    try {
      const got = await world.request();
      // The browser itself lets go when the page goes out of sight.
      got.addEventListener('release', () => {
        if (lock !== got) return;
        lock = null;
        show('off');
      });
      if (wanted) {
        lock = got;
        show('on');
      } else void got.release();
    } catch {
      show('refused');
    }
    asking = false;
  };
  const rest = () => {
    wanted = false;
    stopClock?.();
    stopClock = null;
    const held = lock;
    lock = null;
    show(world.request === undefined ? 'cannot' : 'off');
    void held?.release().catch(() => undefined);
  };
  world.onVisible(() => {
    if (wanted) void ask();
  });
  if (world.request === undefined) show('cannot');
  return {
    touch() {
      if (world.request === undefined) return;
      wanted = true;
      stopClock?.();
      stopClock = world.after(REST_MINUTES * 60_000, rest);
      void ask();
    },
    rest,
  };
}

export const useAwake = create<{ state: AwakeState }>()(() => ({ state: 'off' }));

const lockable = typeof navigator === 'object' && navigator.wakeLock !== undefined;

/** This page's. */
export const awake = createAwake(
  {
    request: lockable ? () => navigator.wakeLock.request('screen') : undefined,
    visible: () => document.visibilityState === 'visible',
    onVisible: (hear) => {
      if (typeof document === 'undefined') return;
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') hear();
      });
    },
    after: (ms, act) => {
      const timer = setTimeout(act, ms);
      return () => clearTimeout(timer);
    },
  },
  useAwake,
);

useEntryWays.subscribe((ways) => {
  if (!ways.awake) awake.rest();
});
