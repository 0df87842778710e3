/** Keeps where the person is, so that a reload or a crash comes back to it. */
import { jobStore } from './job.ts';
import { keeper } from './kept.ts';
import { sessionNow, useSession } from './session.ts';

/** A camera that is being turned changes many times a second; the place is written when it rests. */
const REST_MS = 250;

export function keepPlace(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = () => {
    clearTimeout(timer);
    timer = undefined;
    const { job } = jobStore.getState();
    if (job !== null) void keeper.writePlace({ job: job.id, session: sessionNow() });
  };
  const soon = () => {
    timer ??= setTimeout(write, REST_MS);
  };
  useSession.subscribe(soon);
  jobStore.subscribe((state, before) => {
    if (state.job?.id !== before.job?.id) write();
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden' && timer !== undefined) write();
  });
  write();
}
