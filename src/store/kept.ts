/** This page's keeper: the bench's jobs in this browser's storage. */
import { saveJob } from '../job/parse.ts';
import { jobStore } from './job.ts';
import { createKeeper } from './keep.ts';
import { browserShelf } from './shelf.ts';
import { browserSlate } from './slate.ts';

export const keeper = createKeeper({
  shelf: browserShelf(),
  slate: browserSlate,
  bench: jobStore,
  saveJob,
  now: Date.now,
});

addEventListener('pagehide', keeper.settle);
document.addEventListener('visibilitychange', keeper.settle);

/** Asks the browser once, at the first edit, not to clear what it keeps; it may say no. */
const stop = jobStore.subscribe((state) => {
  if (state.earlier.length === 0 || typeof navigator.storage?.persist !== 'function') return;
  stop();
  void navigator.storage
    .persist()
    .then((lasting) => keeper.store.setState({ lasting }))
    .catch(() => keeper.store.setState({ lasting: false }));
});
