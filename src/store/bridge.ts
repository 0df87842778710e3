/** The page's one worker, joined to the job on the bench: each new job is asked about at once. */
import type { Job } from '../job/schema.ts';
import {
  type Aside,
  type AsideQuestion,
  type AsideReply,
  type Asides,
  type Asker,
  createAsker,
  type Question,
  type Reply,
} from './evaluation.ts';
import type { JobStore } from './job.ts';
import { jobStore } from './job.ts';
import { shopStore } from './shop.ts';

/** The newest question of each kind that is answered beside the evaluations, and who waits for the answer. */
const waiting = new Map<Aside, { number: number; hear(reply: AsideReply): void }>();
/** Null until the page shows its first job: starting it would hold that up. */
let worker: Worker | null = null;
/** What is asked before the worker is there, in order. */
const queue: (Question | AsideQuestion)[] = [];
/** A page in the background paints nothing: its worker starts after so long, ms. */
const UNPAINTED_MS = 500;

function post(question: Question | AsideQuestion): void {
  if (worker === null) queue.push(question);
  else worker.postMessage(question);
}

function startWorker(asker: Asker): void {
  const started = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  started.onmessage = ({ data }: MessageEvent<Reply | AsideReply>) => {
    if (data.kind !== 'aside') {
      asker.hear(data);
      return;
    }
    const asked = waiting.get(data.aside);
    if (asked?.number === data.number) asked.hear(data);
  };
  started.onerror = (event) => {
    event.preventDefault();
    started.terminate();
    startWorker(asker);
    asker.broke(`The working-out stopped: ${event.message || 'its code could not be loaded'}.`);
  };
  worker = started;
  for (const question of queue.splice(0)) started.postMessage(question);
}

/** Runs `act` once, when what stands on the page now has been painted. */
function oncePainted(act: () => void): void {
  let done = false;
  const once = () => {
    if (!done) act();
    done = true;
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, UNPAINTED_MS);
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
  post(question);
}

/** Keeps `store`'s job evaluated from now on. */
function joinWorker(store: JobStore): Asker {
  const asker = createAsker(post);
  let begun = false;
  const ask = () => {
    const { job } = store.getState();
    if (job === null) return;
    asker.ask(job, shopStore.getState().shop);
    if (!begun) oncePainted(() => startWorker(asker));
    begun = true;
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
