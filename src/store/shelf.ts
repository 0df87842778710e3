/** The shelf in this browser: IndexedDB, each write on the disk before it counts as done. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { KeptEntry, KeptJob, Shelf } from './keep.ts';

interface Boards extends DBSchema {
  /** The whole job, as text. */
  jobs: { key: string; value: KeptJob };
  /** Titles alone, so that a list does not read every job. */
  entries: { key: string; value: KeptEntry };
}
const STRICT = { durability: 'strict' } as const;

export function browserShelf(name = 'roundhand'): Shelf {
  let opened: Promise<IDBPDatabase<Boards>> | null = null;
  // Opened late and again after a failure: a private window may refuse once and a full disk may be emptied.
  const open = () => {
    opened ??= openDB<Boards>(name, 1, {
      upgrade(db) {
        db.createObjectStore('jobs', { keyPath: 'id' });
        db.createObjectStore('entries', { keyPath: 'id' });
      },
      // A newer version of the page in another tab must not wait for this one.
      blocking(_current, _blocked, event) {
        opened = null;
        (event.target as IDBDatabase).close();
      },
      terminated() {
        opened = null;
      },
    }).catch((fault) => {
      opened = null;
      throw fault;
    });
    return opened;
  };
  return {
    list: async () => (await open()).getAll('entries'),
    read: async (id) => (await open()).get('jobs', id),
    async write(job) {
      const { id, title, changed } = job;
      const transaction = (await open()).transaction(['jobs', 'entries'], 'readwrite', STRICT);
      await Promise.all([
        transaction.objectStore('jobs').put(job),
        transaction.objectStore('entries').put({ id, title, changed }),
        transaction.done,
      ]);
    },
    async remove(id) {
      const transaction = (await open()).transaction(['jobs', 'entries'], 'readwrite', STRICT);
      await Promise.all([
        transaction.objectStore('jobs').delete(id),
        transaction.objectStore('entries').delete(id),
        transaction.done,
      ]);
    },
  };
}
