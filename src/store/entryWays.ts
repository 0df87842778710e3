/** How this person likes to type readings: kept on the device, for every job. */
import { create } from 'zustand';
import { browserSlate } from './slate.ts';

const WAYS_KEY = 'roundhand-entry';

export interface Ways {
  /** Readings are called back, and the next place. */
  readonly spoken: boolean;
  /** Only the last digits are typed, see `job/lastDigits.ts`. */
  readonly lastDigits: boolean;
  /** The screen stays on while readings are typed. */
  readonly awake: boolean;
}

const USUAL: Ways = { spoken: false, lastDigits: false, awake: true };

function kept(): Ways {
  try {
    const found = JSON.parse(browserSlate.get(WAYS_KEY) ?? '{}') as Partial<Ways> | null;
    const is = (key: keyof Ways) => (typeof found?.[key] === 'boolean' ? found[key] : USUAL[key]);
    return { spoken: is('spoken'), lastDigits: is('lastDigits'), awake: is('awake') };
  } catch {
    return USUAL;
  }
}

export interface EntryWays extends Ways {
  set(change: Partial<Ways>): void;
}

export const useEntryWays = create<EntryWays>()((set, get) => ({
  ...kept(),
  set(change) {
    set(change);
    const { spoken, lastDigits, awake } = get();
    browserSlate.set(WAYS_KEY, JSON.stringify({ spoken, lastDigits, awake }));
  },
}));
