/** The whole screen where the browser lends it; the page beneath cannot be reached meanwhile. */
import { useEffect, useRef } from 'react';

/** @param onLeave called when the browser itself ends it, as its own Escape does */
export function useFullScreen(onLeave: () => void): void {
  const leave = useRef(onLeave);
  leave.current = onLeave;
  useEffect(() => {
    const root = document.documentElement;
    const beneath = document.getElementById('page');
    // Where the keys were goes dumb with the page beneath, and is gone back to.
    const before = document.activeElement;
    let lent = false;
    let over = false;
    const changed = () => {
      if (document.fullscreenElement !== null) lent = true;
      else if (lent && !over) leave.current();
    };
    document.addEventListener('fullscreenchange', changed);
    if (beneath !== null) beneath.inert = true;
    // Refused or not there at all: the story fills the window instead.
    root.requestFullscreen?.().catch(() => undefined);
    return () => {
      over = true;
      document.removeEventListener('fullscreenchange', changed);
      if (beneath !== null) beneath.inert = false;
      if (before instanceof HTMLElement) before.focus();
      if (document.fullscreenElement !== null)
        void document.exitFullscreen().catch(() => undefined);
    };
  }, []);
}
