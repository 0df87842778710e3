/** The worker: evaluates the newest job it was sent, quickly at first, then to the end. */
import { evaluateOther } from '../evaluate/otherReading.ts';
import { tradeOffOf } from '../evaluate/tradeOff.ts';
import { type Evaluation, evaluate, type Memory } from '../evaluate.ts';
import type {
  OtherQuestion,
  OtherReply,
  Question,
  Reply,
  SizesQuestion,
  SizesReply,
} from './evaluation.ts';

const memory: Memory = new Map();
let newest = 0;

self.onmessage = ({ data }: MessageEvent<Question | OtherQuestion | SizesQuestion>) => {
  if ('asked' in data) {
    self.postMessage(otherReply(data));
    return;
  }
  if ('sizesOf' in data) {
    self.postMessage(sizesReply(data));
    return;
  }
  newest = data.number;
  const quick = reply(data, 'quick');
  self.postMessage(quick);
  if (quick.kind === 'failed') return;
  // A turn of the clock lets a newer question in; nobody waits for the end of an older one.
  setTimeout(() => {
    if (data.number !== newest) return;
    const end = reply(data, 'settled');
    self.postMessage(unchanged(quick, end) ? { number: data.number, kind: 'stands' } : end);
  });
};

/** What cannot be worked out is not shown; the survey itself says why where it cannot be either. */
function otherReply({ number, job, shop, asked }: OtherQuestion): OtherReply {
  try {
    return { number, kind: 'other', survey: evaluateOther(job, asked, memory, shop) };
  } catch {
    return { number, kind: 'other', survey: null };
  }
}

/** The chart of sizes is left out where they cannot be worked out; nothing of the plan hangs on it. */
function sizesReply({ number, job, shop, sizesOf }: SizesQuestion): SizesReply {
  try {
    return { number, kind: 'sizes', sizes: tradeOffOf(job, sizesOf, memory, shop) };
  } catch {
    return { number, kind: 'sizes', sizes: null };
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
