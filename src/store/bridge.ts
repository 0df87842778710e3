/** The page's one worker, joined to the job on the bench: each new job is asked about at once. */
import type { OtherAsked } from '../evaluate/otherReading.ts';
import type { TradeOff, TradeOffOf } from '../evaluate/tradeOff.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Job } from '../job/schema.ts';
import {
  type Asker,
  createAsker,
  type OtherReply,
  type Reply,
  type SizesReply,
} from './evaluation.ts';
import type { JobStore } from './job.ts';
import { jobStore } from './job.ts';
import { shopStore } from './shop.ts';

type HearOther = (survey: SurveyEvaluation | null) => void;
type HearSizes = (sizes: TradeOff | null) => void;

/** The newest questions about another side and about other sizes, and who waits for the answers. */
let other: { number: number; hear: HearOther } = { number: 0, hear: () => undefined };
let sizes: { number: number; hear: HearSizes } = { number: 0, hear: () => undefined };
let worker: Worker;

function startWorker(asker: () => Asker): Worker {
  const started = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  started.onmessage = ({ data }: MessageEvent<Reply | OtherReply | SizesReply>) => {
    if (data.kind === 'other') {
      if (data.number === other.number) other.hear(data.survey);
    } else if (data.kind === 'sizes') {
      if (data.number === sizes.number) sizes.hear(data.sizes);
    } else asker().hear(data);
  };
  return started;
}

/** Asks how a survey would look with another side worn; of several questions only the newest is answered. */
export function askWorker(job: Job, asked: OtherAsked, hear: HearOther): void {
  other = { number: other.number + 1, hear };
  worker.postMessage({ number: other.number, job, shop: shopStore.getState().shop, asked });
}

/** Asks what other sizes of target would cost and leave; of several questions only the newest is answered. */
export function askSizes(job: Job, sizesOf: TradeOffOf, hear: HearSizes): void {
  sizes = { number: sizes.number + 1, hear };
  worker.postMessage({ number: sizes.number, job, shop: shopStore.getState().shop, sizesOf });
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
