/** The slate in this browser: local storage, which is there in the same turn and outlives the page. */
import type { Slate } from './keep.ts';

export const browserSlate: Slate = {
  get(key) {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  },
  set(key, text) {
    try {
      localStorage.setItem(key, text);
    } catch {
      // Forbidden or full. An older text must not be taken for this one.
      this.wipe(key);
    }
  },
  wipe(key) {
    try {
      localStorage.removeItem(key);
    } catch {
      // Forbidden: then nothing stands there either.
    }
  },
};
