/**
 * Job in, evaluation out, never in the way of the page. A quick answer comes first and the settled one after
 * it; one question is out at a time, and of the jobs that came meanwhile only the newest is asked next, as
 * soon as the quick answer is there. What is shown is therefore never older than what was shown before. No
 * React and no Worker here; `bridge.ts` brings the worker.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { BuildUp } from '../evaluate/buildUp.ts';
import type { Centres } from '../evaluate/centres.ts';
import type { PlugGives } from '../evaluate/cylinderGives.ts';
import type { FitAnswer } from '../evaluate/fit.ts';
import type { OtherAsked } from '../evaluate/otherReading.ts';
import type { Passes } from '../evaluate/passes.ts';
import type { PinPlan } from '../evaluate/pinTypes.ts';
import type { SurveyOf } from '../evaluate/surveyOf.ts';
import type { TradeOff } from '../evaluate/tradeOff.ts';
import type { WaysEvaluation } from '../evaluate/ways.ts';
import type { Evaluation, SurveyEvaluation } from '../evaluate.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';

/** What is asked about: the job, with what is at hand in the shop; null: nobody has said. */
interface Matter {
  readonly job: Job;
  readonly shop: Shop | null;
}

export interface Question extends Matter {
  readonly number: number;
}

/** What is worked out beside the evaluation, only when it is wanted: what is asked, and the answer. Null: it cannot be. */
export interface Asides {
  /** One survey as it would be with another side worn. */
  readonly other: { readonly asked: OtherAsked; readonly answer: SurveyEvaluation | null };
  /** What other sizes of target would cost and leave. */
  readonly sizes: { readonly asked: SurveyOf; readonly answer: TradeOff | null };
  /** What squeezing, shimming and welding come to. */
  readonly buildUp: { readonly asked: SurveyOf; readonly answer: BuildUp | null };
  /** Press fit, heat and clearance of the bore's bushings. */
  readonly fit: { readonly asked: SurveyOf; readonly answer: FitAnswer | null };
  /** How well the cylinders through the whole depth are known. */
  readonly cylinders: { readonly asked: SurveyOf; readonly answer: PlugGives | null };
  /** The ways of mending. */
  readonly ways: { readonly asked: SurveyOf; readonly answer: WaysEvaluation | null };
  /** The plan of a pin. */
  readonly pin: { readonly asked: SurveyOf; readonly answer: PinPlan | null };
  /** What each rule for the centre costs. */
  readonly centres: { readonly asked: SurveyOf; readonly answer: Centres | null };
  /** The passes that take the metal off. */
  readonly passes: { readonly asked: SurveyOf; readonly answer: Passes | null };
}
export type Aside = keyof Asides;

/** Answered beside the evaluations, in no order with them. */
export interface AsideQuestion<K extends Aside = Aside> extends Question {
  readonly aside: K;
  readonly asked: Asides[K]['asked'];
}

export interface AsideReply<K extends Aside = Aside> {
  readonly number: number;
  readonly kind: 'aside';
  readonly aside: K;
  readonly answer: Asides[K]['answer'];
}

export type Reply =
  | { readonly number: number; readonly kind: 'quick' | 'settled'; readonly evaluation: Evaluation }
  /** The quick answer turned out to be the settled one. */
  | { readonly number: number; readonly kind: 'stands' }
  | { readonly number: number; readonly kind: 'failed'; readonly why: string };

export interface EvaluationState {
  readonly evaluation: Evaluation | null;
  /** The job that `evaluation` speaks of. */
  readonly of: Job | null;
  /** False while a newer or a better answer is on its way. */
  readonly settled: boolean;
  /** Why the newest job could not be worked out, in one sentence; null when it could. */
  readonly failed: string | null;
}

export type EvaluationStore = StoreApi<EvaluationState>;

export interface Asker {
  readonly store: EvaluationStore;
  /** Asks for this job's evaluation; forgets any other that has not been asked yet. */
  ask(job: Job, shop?: Shop | null): void;
  /** To be called with every reply. */
  hear(reply: Reply): void;
  /** To be called when the worker broke and another stands in its place. */
  broke(why: string): void;
}

export function createAsker(post: (question: Question) => void): Asker {
  const store = createStore<EvaluationState>()(() => ({
    evaluation: null,
    of: null,
    settled: false,
    failed: null,
  }));
  let number = 0;
  let out: Question | null = null;
  let waiting: Matter | null = null;

  const send = (matter: Matter) => {
    number += 1;
    out = { number, ...matter };
    post(out);
  };
  const next = () => {
    out = null;
    if (waiting === null) return;
    const matter = waiting;
    waiting = null;
    send(matter);
  };
  const fail = (why: string) => {
    store.setState({ failed: why, settled: waiting === null });
    next();
  };
  const publish = (evaluation: Evaluation, of: Job, settled: boolean) =>
    store.setState({ evaluation, of, settled: settled && waiting === null, failed: null });

  return {
    store,
    ask(job, shop = null) {
      if (out?.job === job && out.shop === shop && waiting === null) return;
      store.setState({ settled: false });
      if (out === null) send({ job, shop });
      else waiting = { job, shop };
    },
    hear(reply) {
      if (out === null || reply.number !== out.number) return;
      if (reply.kind === 'failed') {
        fail(reply.why);
        return;
      }
      if (reply.kind === 'stands') store.setState({ settled: waiting === null });
      else publish(reply.evaluation, out.job, reply.kind === 'settled');
      if (reply.kind !== 'quick' || waiting !== null) next();
    },
    broke: fail,
  };
}
