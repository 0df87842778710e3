/**
 * Jobs kept on the device as they are typed. Every edit goes onto the slate before anything else happens, then
 * onto the shelf; while one write to the shelf is under way only the newest state waits behind it. The slate
 * is quick and holds one job; the shelf takes a moment, holds all, and is on the disk when it says so. What
 * stands on the slate at the next start did not reach the shelf: it is put there first.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Job } from '../job/schema.ts';
import type { JobStore } from './job.ts';

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
export interface Shelf {
  list(): Promise<readonly KeptEntry[]>;
  read(id: string): Promise<KeptJob | undefined>;
  write(job: KeptJob): Promise<void>;
  remove(id: string): Promise<void>;
}

/** A few texts, written and read within the same turn; a slate that cannot be written to forgets. */
export interface Slate {
  get(key: string): string | null;
  set(key: string, text: string): void;
  wipe(key: string): void;
}
const UNWRITTEN = 'roundhand-unwritten';

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
  /** Takes a job off the device and hands it back, so that it can be put back. */
  remove(id: string): Promise<KeptJob | undefined>;
  putBack(job: KeptJob): Promise<void>;
  /** To be called at the start: brings what a crash left unwritten onto the shelf, and lists what is there. */
  begin(): Promise<void>;
  /** Writes what waits for a rest before it has come: the page may be going. */
  settle(): void;
  /** Resolves when nothing waits to be written. */
  idle(): Promise<void>;
}

export interface KeeperTools {
  readonly shelf: Shelf;
  readonly slate: Slate;
  readonly bench: JobStore;
  saveJob(job: Job): string;
  now(): number;
}

/** A handle that has not moved for so long rests, ms. */
const HANDLE_RESTS_MS = 100;
/** A job just put on the bench, in which nothing is typed yet, leaves the page so long to draw it first, ms. */
const OPENED_RESTS_MS = 1000;

export function createKeeper({ shelf, slate, bench, saveJob, now }: KeeperTools): Keeper {
  const store = createStore<KeepState>()(() => ({
    jobs: [],
    safe: true,
    refused: null,
    lasting: null,
  }));
  const refuse = (fault: unknown) =>
    store.setState({ safe: false, refused: refusalSentence(fault) });
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
    if (jobs !== undefined) {
      store.setState({ jobs: [...jobs].sort((a, b) => b.changed - a.changed) });
    }
  };
  const writer = createWriter(shelf, slate, store, refuse);
  const writeNow = (job: Job) =>
    writer.write({ id: job.id, title: job.title, changed: now(), text: saveJob(job) });
  // What is typed is written at once; where a handle passes by, only the place where it rests; a job just opened, soon.
  let passing: { readonly job: Job; readonly timer: ReturnType<typeof setTimeout> } | null = null;
  const settle = () => {
    if (passing === null) return;
    const { job, timer } = passing;
    clearTimeout(timer);
    passing = null;
    writeNow(job);
  };
  bench.subscribe(({ job, mark }, before) => {
    if (job === null || job === before.job) return;
    if (passing !== null && passing.job.id !== job.id) settle();
    if (passing !== null) clearTimeout(passing.timer);
    passing = null;
    const opened = job.id !== before.job?.id;
    if (mark === null && !opened) writeNow(job);
    else passing = { job, timer: setTimeout(settle, opened ? OPENED_RESTS_MS : HANDLE_RESTS_MS) };
  });
  return {
    store,
    settle,
    async idle() {
      settle();
      await writer.idle();
    },
    read: (id) => guarded(() => shelf.read(id)),
    async begin() {
      const left = unwritten(slate);
      if (left !== null) {
        writer.write(left);
        await writer.idle();
      }
      await refresh();
    },
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
  };
}

/** Slate at once, shelf one write at a time. */
function createWriter(
  shelf: Shelf,
  slate: Slate,
  store: KeepStore,
  refuse: (fault: unknown) => void,
) {
  let writing: Promise<void> | null = null;
  let waiting: KeptJob | null = null;
  const writeAll = async () => {
    while (waiting !== null) {
      const job = waiting;
      waiting = null;
      await shelf.write(job);
      const { id, title, changed } = job;
      const others = store.getState().jobs.filter((one) => one.id !== id);
      store.setState({ jobs: [{ id, title, changed }, ...others] });
    }
    slate.wipe(UNWRITTEN);
    store.setState({ safe: true, refused: null });
  };
  return {
    write(job: KeptJob) {
      slate.set(UNWRITTEN, JSON.stringify(job));
      waiting = job;
      store.setState({ safe: false });
      writing ??= writeAll()
        .catch(refuse)
        .finally(() => {
          writing = null;
        });
    },
    async idle() {
      while (writing !== null) await writing;
    },
  };
}

function unwritten(slate: Slate): KeptJob | null {
  try {
    const left: unknown = JSON.parse(slate.get(UNWRITTEN) ?? 'null');
    const whole =
      typeof left === 'object' &&
      left !== null &&
      ['id', 'title', 'text', 'changed'].every((key) => key in left);
    return whole ? (left as KeptJob) : null;
  } catch {
    return null; // cut off in the middle: the shelf has what was there before
  }
}

function refusalSentence(fault: unknown): string {
  const name = fault instanceof Error ? fault.name : '';
  const because =
    name === 'QuotaExceededError' ? 'its storage is full' : 'the browser does not allow it here';
  return `This device does not keep the job: ${because}. Save it to a file before you close the page.`;
}
