/** What is on the bench when the page opens: the last place, else the last job, else the first demo. */
import { demos } from './demos.ts';
import { openDemo, openKept } from './files.ts';
import { jobStore } from './job.ts';
import { keeper } from './kept.ts';
import { usePage } from './page.ts';
import { keptPlace } from './place.ts';

export async function startBench(): Promise<void> {
  const place = keptPlace();
  const [first] = demos;
  // A first visit opens it: it is fetched while the device is asked what it keeps.
  if (place === null) void first?.text().catch(() => undefined);
  await keeper.begin();
  if (place !== null && (await openKept(place.job, place.session))) return;
  for (const { id } of keeper.store.getState().jobs) {
    if (await openKept(id)) return;
  }
  if (first !== undefined) await openDemo(first);
  if (jobStore.getState().job === null) usePage.getState().change({ newJob: true });
}
