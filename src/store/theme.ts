/** Light, dark, sunlight, or as the system has it; kept in this browser alone, not with any job. */
import { create } from 'zustand';

const THEME_KEY = 'roundhand-theme';
export type Shown = 'light' | 'dark' | 'sunlight';
export type Wanted = Shown | 'system';

export interface ThemeState {
  readonly wanted: Wanted;
  readonly shown: Shown;
  choose(wanted: Wanted): void;
}

const darkSystem =
  typeof matchMedia === 'function' ? matchMedia('(prefers-color-scheme: dark)') : null;

function shownFor(wanted: Wanted): Shown {
  if (wanted !== 'system') return wanted;
  return darkSystem?.matches === true ? 'dark' : 'light';
}

function kept(): Wanted {
  try {
    const text = localStorage.getItem(THEME_KEY);
    return text === 'light' || text === 'dark' || text === 'sunlight' ? text : 'system';
  } catch {
    return 'system'; // no storage in this browser
  }
}

export const useTheme = create<ThemeState>()((set) => {
  const wanted = kept();
  return {
    wanted,
    shown: shownFor(wanted),
    choose(next) {
      try {
        localStorage.setItem(THEME_KEY, next);
      } catch {
        // No storage in this browser: the choice lasts as long as the page.
      }
      set({ wanted: next, shown: shownFor(next) });
    },
  };
});

/** Keeps the page's own mark in step with the theme, and the theme with the system. */
export function followTheme(root: HTMLElement): void {
  const bar = document.querySelector('meta[name="theme-color"]');
  const show = () => {
    root.dataset.theme = useTheme.getState().shown;
    // The browser's own bar continues the page.
    bar?.setAttribute('content', getComputedStyle(root).getPropertyValue('--paper').trim());
  };
  show();
  useTheme.subscribe(show);
  darkSystem?.addEventListener('change', () => {
    useTheme.setState(({ wanted }) => ({ shown: shownFor(wanted) }));
  });
}
