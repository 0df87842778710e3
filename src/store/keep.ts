/**
 * Jobs kept on the device as they are typed. Every edit is written at once; while one write is under way
 * only the newest state waits behind it. Where the store stands (IndexedDB, a test's own) is the shelf's
 * business.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Job } from '../job/schema.ts';
import type { JobStore } from './job.ts';
import type { Session } from './session.ts';

/** A kept job, as the list shows it. */
export interface KeptEntry {
  readonly id: string;
  readonly title: string;
  /** Milliseconds since 1970 of the last change. */
  readonly changed: number;
}
export interface KeptJob extends KeptEntry {
  /** The job as the file would hold it. */
  readonly text: string;
}
/** Where the person was. */
export interface KeptPlace {
  readonly job: string;
  readonly session: Session;
}

export interface Shelf {
  list(): Promise<readonly KeptEntry[]>;
  read(id: string): Promise<KeptJob | undefined>;
  write(job: KeptJob): Promise<void>;
  remove(id: string): Promise<void>;
  readPlace(): Promise<KeptPlace | undefined>;
  writePlace(place: KeptPlace): Promise<void>;
}

export interface KeepState {
  /** Newest first. */
  readonly jobs: readonly KeptEntry[];
  /** Everything typed so far is on the device. */
  readonly safe: boolean;
  /** Why the device does not keep the job, in one sentence; null while it does. */
  readonly refused: string | null;
  /** False where the browser may clear its storage by itself; null: not asked yet. */
  readonly lasting: boolean | null;
}
export type KeepStore = StoreApi<KeepState>;

export interface Keeper {
  readonly store: KeepStore;
  read(id: string): Promise<KeptJob | undefined>;
  readPlace(): Promise<KeptPlace | undefined>;
  /** Takes a job off the device and hands it back, so that it can be put back. */
  remove(id: string): Promise<KeptJob | undefined>;
  putBack(job: KeptJob): Promise<void>;
  /** Writes the place now. */
  writePlace(place: KeptPlace): Promise<void>;
  /** Looks again at what is on the device. */
  refresh(): Promise<void>;
  /** Resolves when nothing waits to be written. */
  idle(): Promise<void>;
}

export function createKeeper(
  shelf: Shelf,
  bench: JobStore,
  saveJob: (job: Job) => string,
  now: () => number = Date.now,
): Keeper {
  const store = createStore<KeepState>()(() => ({
    jobs: [],
    safe: true,
    refused: null,
    lasting: null,
  }));
  const refuse = (fault: unknown) =>
    store.setState({ safe: false, refused: refusalSentence(fault) });
  const note = ({ id, title, changed }: KeptEntry) => {
    const others = store.getState().jobs.filter((job) => job.id !== id);
    store.setState({ jobs: [{ id, title, changed }, ...others] });
  };

  let writing: Promise<void> | null = null;
  let waiting: Job | null = null;
  const writeAll = async () => {
    while (waiting !== null) {
      const job = waiting;
      waiting = null;
      const kept = { id: job.id, title: job.title, changed: now(), text: saveJob(job) };
      await shelf.write(kept);
      note(kept);
    }
    store.setState({ safe: true, refused: null });
  };
  const write = (job: Job) => {
    waiting = job;
    store.setState({ safe: false });
    writing ??= writeAll()
      .catch(refuse)
      .finally(() => {
        writing = null;
      });
  };
  bench.subscribe((state, before) => {
    if (state.job !== null && state.job !== before.job) write(state.job);
  });

  const guarded = async <T>(act: () => Promise<T>): Promise<T | undefined> => {
    try {
      return await act();
    } catch (fault) {
      refuse(fault);
      return undefined;
    }
  };
  const refresh = async () => {
    const jobs = await guarded(() => shelf.list());
    if (jobs !== undefined)
      store.setState({ jobs: [...jobs].sort((a, b) => b.changed - a.changed) });
  };
  return {
    store,
    refresh,
    read: (id) => guarded(() => shelf.read(id)),
    readPlace: () => guarded(() => shelf.readPlace()),
    async remove(id) {
      const kept = await guarded(() => shelf.read(id));
      await guarded(() => shelf.remove(id));
      await refresh();
      return kept;
    },
    async putBack(job) {
      await guarded(() => shelf.write(job));
      await refresh();
    },
    async writePlace(place) {
      await guarded(() => shelf.writePlace(place));
    },
    async idle() {
      while (writing !== null) await writing;
    },
  };
}

function refusalSentence(fault: unknown): string {
  const name = fault instanceof Error ? fault.name : '';
  const because =
    name === 'QuotaExceededError' ? 'its storage is full' : 'the browser does not allow it here';
  return `This device does not keep the job: ${because}. Save it to a file before you close the page.`;
}
