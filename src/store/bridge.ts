/** The page's one worker, joined to the job on the bench: each new job is asked about at once. */
import { type Asker, createAsker } from './evaluation.ts';
import type { JobStore } from './job.ts';
import { jobStore } from './job.ts';

function startWorker(asker: () => Asker): Worker {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }) => asker().hear(data);
  return worker;
}

/** Keeps `store`'s job evaluated from now on. */
function joinWorker(store: JobStore): Asker {
  let worker = startWorker(() => asker);
  const asker = createAsker((question) => worker.postMessage(question));
  const watch = () => {
    worker.onerror = (event) => {
      event.preventDefault();
      worker.terminate();
      worker = startWorker(() => asker);
      watch();
      asker.broke(`The working-out stopped: ${event.message || 'its code could not be loaded'}.`);
    };
  };
  watch();
  const { job } = store.getState();
  if (job !== null) asker.ask(job);
  store.subscribe((state, before) => {
    if (state.job !== null && state.job !== before.job) asker.ask(state.job);
  });
  return asker;
}

export const asker = joinWorker(jobStore);
