import { test as base, expect } from '@playwright/test';

/** The scene library's own words about a part of it that its React binding still uses. */
const ALLOWED = 'THREE.Clock: This module has been deprecated. Please use THREE.Timer instead.';

/**
 * Playwright's test on a page that is watched: at the end of every test nothing may have been
 * thrown or written to the console as an error or a warning, and no request, the service worker's
 * own among them, may have left the page's origin.
 */
export const test = base.extend<{ watched: undefined }>({
  watched: [
    async ({ context, baseURL }, use) => {
      const complaints: string[] = [];
      const strays: string[] = [];
      const origin = new URL(baseURL ?? '').origin;
      context.on('console', (message) => {
        if (!['error', 'warning', 'assert'].includes(message.type())) return;
        if (message.text() !== ALLOWED) complaints.push(message.text());
      });
      context.on('weberror', (event) => complaints.push(event.error().message));
      context.on('request', (request) => {
        const url = new URL(request.url());
        const onDevice = url.protocol === 'data:' || url.protocol === 'blob:';
        if (!onDevice && url.origin !== origin) strays.push(request.url());
      });
      await use(undefined);
      expect({ complaints, strays }).toEqual({ complaints: [], strays: [] });
    },
    { auto: true },
  ],
});

export { expect };
