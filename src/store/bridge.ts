/** The page's one worker, joined to the job on the bench: each new job is asked about at once. */
import type { Job } from '../job/schema.ts';
import {
  type Aside,
  type AsideQuestion,
  type AsideReply,
  type Asides,
  type Asker,
  createAsker,
  type Reply,
} from './evaluation.ts';
import type { JobStore } from './job.ts';
import { jobStore } from './job.ts';
import { shopStore } from './shop.ts';

/** The newest question of each kind that is answered beside the evaluations, and who waits for the answer. */
const waiting = new Map<Aside, { number: number; hear(reply: AsideReply): void }>();
let worker: Worker;

function startWorker(asker: () => Asker): Worker {
  const started = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  started.onmessage = ({ data }: MessageEvent<Reply | AsideReply>) => {
    if (data.kind !== 'aside') {
      asker().hear(data);
      return;
    }
    const asked = waiting.get(data.aside);
    if (asked?.number === data.number) asked.hear(data);
  };
  return started;
}

/** Asks for what is worked out beside the evaluations; of several questions of a kind only the newest is answered. */
export function askAside<K extends Aside>(
  aside: K,
  job: Job,
  asked: Asides[K]['asked'],
  hear: (answer: Asides[K]['answer']) => void,
): void {
  const number = (waiting.get(aside)?.number ?? 0) + 1;
  waiting.set(aside, { number, hear: ({ answer }) => hear(answer as Asides[K]['answer']) });
  const { shop } = shopStore.getState();
  const question: AsideQuestion<K> = { number, job, shop, aside, asked };
  worker.postMessage(question);
}

/** Keeps `store`'s job evaluated from now on. */
function joinWorker(store: JobStore): Asker {
  worker = startWorker(() => asker);
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
  const ask = () => {
    const { job } = store.getState();
    if (job !== null) asker.ask(job, shopStore.getState().shop);
  };
  ask();
  store.subscribe((state, before) => {
    if (state.job !== before.job) ask();
  });
  shopStore.subscribe((state, before) => {
    if (state.shop !== before.shop) ask();
  });
  return asker;
}

export const asker = joinWorker(jobStore);
