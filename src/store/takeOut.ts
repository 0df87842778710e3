/** Taking something out of the job with one tap: it is said what went, and one tap more puts it back. */
import { jobStore } from './job.ts';
import { say, usePage } from './page.ts';

/**
 * Says what was just taken out by the newest edit, with the way back. Once the job is changed again the way back is
 * the Undo of the bar, which says by its place that it takes back the newest edit first: the offer is withdrawn then.
 *
 * @param after what to look at once it is back
 */
export function tellTakenOut(text: string, after?: () => void): void {
  const { job } = jobStore.getState();
  const act = () => {
    say(null);
    jobStore.getState().undo();
    after?.();
  };
  say({ tone: 'said', text, actions: [{ label: 'put it back', act }] });
  const { notice } = usePage.getState();
  const stop = jobStore.subscribe((now) => {
    if (now.job === job) return;
    stop();
    if (usePage.getState().notice === notice) say(null);
  });
}
