/** Keeps where the person is, so that a reload or a crash comes back to it. */
import { jobStore } from './job.ts';
import { FIRST_LOOK, type Session, sessionNow, useSession } from './session.ts';
import { browserSlate } from './slate.ts';

const PLACE = 'roundhand-place';
/** A camera that is being turned changes many times a second. */
const REST_MS = 100;

export interface KeptPlace {
  readonly job: string;
  readonly session: Session;
}

export function keptPlace(): KeptPlace | null {
  try {
    const kept = JSON.parse(browserSlate.get(PLACE) ?? 'null') as KeptPlace | null;
    if (typeof kept?.job !== 'string' || typeof kept.session !== 'object') return null;
    // A place written by another version of the page may lack what this one looks at.
    return { job: kept.job, session: { ...FIRST_LOOK, ...kept.session } };
  } catch {
    return null;
  }
}

/** Writes the place from now on: a moment after each change, and at once when the page goes. */
export function keepPlace(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = () => {
    clearTimeout(timer);
    timer = undefined;
    const { job } = jobStore.getState();
    if (job === null) return;
    browserSlate.set(PLACE, JSON.stringify({ job: job.id, session: sessionNow() }));
  };
  useSession.subscribe(() => {
    timer ??= setTimeout(write, REST_MS);
  });
  jobStore.subscribe((state, before) => {
    if (state.job?.id !== before.job?.id) write();
  });
  addEventListener('pagehide', write);
  document.addEventListener('visibilitychange', write);
  write();
}
