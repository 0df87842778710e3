/** The worker: evaluates the newest job it was sent, quickly at first, then to the end. */
import { buildUpOf } from '../evaluate/buildUp.ts';
import { centresOf } from '../evaluate/centres.ts';
import { cylinderGives } from '../evaluate/cylinderGives.ts';
import { fitAsked } from '../evaluate/fit.ts';
import { evaluateOther } from '../evaluate/otherReading.ts';
import { passesOf } from '../evaluate/passes.ts';
import { pinPlanOf } from '../evaluate/pinPlan.ts';
import { tradeOffOf } from '../evaluate/tradeOff.ts';
import { waysAsked } from '../evaluate/ways.ts';
import { type Evaluation, evaluate, type Memory } from '../evaluate.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { buffersIn } from './buffersIn.ts';
import type { Aside, AsideQuestion, AsideReply, Asides, Question, Reply } from './evaluation.ts';

const memory: Memory = new Map();
let newest = 0;

self.onmessage = ({ data }: MessageEvent<Question | AsideQuestion>) => {
  if ('aside' in data) {
    send(asideReply(data));
    return;
  }
  newest = data.number;
  const quick = reply(data, 'quick');
  send(quick);
  if (quick.kind === 'failed') return;
  // A turn of the clock lets a newer question in; nobody waits for the end of an older one.
  setTimeout(() => {
    if (data.number !== newest) return;
    const end = reply(data, 'settled');
    send(unchanged(quick, end) ? { number: data.number, kind: 'stands' } : end);
  });
};

/** Copied here, where nobody waits for it; the page is handed the copy's own memory. */
function send(answer: Reply | AsideReply): void {
  const copy = structuredClone(answer);
  self.postMessage(copy, { transfer: buffersIn(copy) });
}

type Work<K extends Aside> = (
  job: Job,
  asked: Asides[K]['asked'],
  memory: Memory,
  shop: Shop | null,
) => Asides[K]['answer'];

const WORK: { readonly [K in Aside]: Work<K> } = {
  other: evaluateOther,
  sizes: tradeOffOf,
  buildUp: buildUpOf,
  ways: waysAsked,
  centres: centresOf,
  cylinders: cylinderGives,
  fit: fitAsked,
  passes: passesOf,
  pin: pinPlanOf,
};

/** What cannot be worked out is left out; the survey itself says why where it cannot be either. */
function asideReply<K extends Aside>(question: AsideQuestion<K>): AsideReply<K> {
  const { number, job, shop, aside, asked } = question;
  try {
    return { number, kind: 'aside', aside, answer: WORK[aside](job, asked, memory, shop) };
  } catch {
    return { number, kind: 'aside', aside, answer: null };
  }
}

function reply({ number, job, shop }: Question, pace: 'quick' | 'settled'): Reply {
  try {
    return { number, kind: pace, evaluation: evaluate(job, memory, pace, shop) };
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    return { number, kind: 'failed', why: `These readings could not be worked out: ${why}.` };
  }
}

/** Every survey the very same as before: sending it once more would redraw it for nothing. */
function unchanged(a: Reply, b: Reply): boolean {
  if (!('evaluation' in a) || !('evaluation' in b)) return false;
  const surveys = ({ bores, parts }: Evaluation) =>
    [...bores, ...parts].flatMap(({ surveys }) => surveys);
  const before = surveys(a.evaluation);
  return surveys(b.evaluation).every((survey, at) => survey === before[at]);
}
