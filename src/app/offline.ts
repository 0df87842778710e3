import { whenIdle } from '../views/parts/whenIdle.ts';

/** A page that never rests is kept all the same, ms. */
const LONGEST_WAIT_MS = 3000;

/**
 * Keeps the program on the device from the first visit on, so that it opens without a network.
 * Does nothing in development, nor where the browser has no service workers (a page that came over
 * plain http from another machine). A new version is fetched in the background and shows at the
 * next load.
 */
export function registerOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  // Once the page has loaded and rests, so that keeping files never slows the first view.
  const register = () => void whenIdle(LONGEST_WAIT_MS).then(keepOnDevice);
  if (document.readyState === 'complete') register();
  else window.addEventListener('load', register, { once: true });
}

async function keepOnDevice(): Promise<void> {
  try {
    await navigator.serviceWorker.register(`${import.meta.env.BASE_URL}sw.js`);
  } catch {
    // The visitor's settings forbid it, or the server is gone: the page works as before while the
    // network is there, and the next load tries again.
  }
}
