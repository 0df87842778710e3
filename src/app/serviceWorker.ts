/*
 * Keeps the whole program on the device, so that it opens in a shop without a network. The build
 * puts one line in front of this file with the two constants below (see vite.config.ts).
 */
declare const KEPT_VERSION: string;
/** Addresses relative to the worker's scope; `./` is the page itself. */
declare const KEPT_FILES: readonly string[];

const worker = self as unknown as ServiceWorkerGlobalScope;
const PREFIX = 'roundhand-';
const CACHE = PREFIX + KEPT_VERSION;

async function keepAll(): Promise<void> {
  const { scope } = worker.registration;
  try {
    const cache = await caches.open(CACHE);
    // 'reload' goes past the browser's own cache, which may hold files of the last version.
    await cache.addAll(
      KEPT_FILES.map((file) => new Request(new URL(file, scope), { cache: 'reload' })),
    );
  } catch (error) {
    // Half a version is worse than the last whole one, which goes on serving.
    await caches.delete(CACHE);
    throw error;
  }
  await worker.skipWaiting();
}

/**
 * The version before this one stays: a page that is open while the new one arrives still asks for
 * its own chunks, whose names hold their hashes.
 */
async function dropOldVersions(): Promise<void> {
  const others = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  // The server may vary by Origin; what is kept is our own whoever asks.
  const kept = await cache.match(request, { ignoreVary: true });
  if (kept) return kept;
  const fallback =
    request.mode === 'navigate'
      ? await cache.match(worker.registration.scope, { ignoreVary: true })
      : await caches.match(request, { ignoreVary: true });
  return fallback ?? fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(dropOldVersions()));
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return;
  event.respondWith(answer(request));
});

export {};
