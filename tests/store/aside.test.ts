/** What is worked out of one survey beside the evaluation: when it is asked for, and which answers are kept. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { Job } from '../../src/job/schema.ts';
import { smallJob } from '../job/jobs.ts';

/** Stands for the worker: what it was asked, and who waits for it. */
const out = vi.hoisted(() => ({ asked: [] as { kind: string; hear(answer: unknown): void }[] }));
const failing = createStore<{ failed: string | null }>()(() => ({ failed: null }));
vi.mock('../../src/store/bridge.ts', () => ({
  askAside: (kind: string, _job: unknown, _asked: unknown, hear: (answer: unknown) => void) =>
    out.asked.push({ kind, hear }),
  get asker() {
    return { store: failing };
  },
}));

const { answerFor, asideStore } = await import('../../src/store/aside.ts');
const { jobStore } = await import('../../src/store/job.ts');
const { shopStore } = await import('../../src/store/shop.ts');

const of = (job: Job) => ({ job, bore: job.features[0]!, survey: job.features[0]!.surveys[0]! });
const answer = { any: 'answer' } as never;

describe('what is asked beside the evaluation', () => {
  const job = smallJob();
  let store: ReturnType<typeof asideStore<'passes', { pass: number }>>;
  beforeEach(() => {
    jobStore.setState({ job });
    store = asideStore('passes', { more: { pass: 0 }, byShop: true });
    out.asked.length = 0;
  });
  const got = () => answerFor(store.use.getState(), of(job).bore, of(job).survey);

  it('is asked once, and again when the job changes', () => {
    store.want(of(job));
    store.want(of(job));
    expect(out.asked).toHaveLength(1);
    out.asked[0]!.hear(answer);
    expect(got()).toBe(answer);
    store.want(of(job));
    expect(out.asked).toHaveLength(1);
    store.want(of({ ...job }));
    expect(out.asked).toHaveLength(2);
    // The older answer stays in sight until the newer one is there.
    expect(got()).toBe(answer);
  });

  it('is asked again when the shop changes, where that has a part in it', () => {
    const alone = asideStore('cylinders', { more: {}, byShop: false });
    for (const one of [store, alone]) one.want(of(job));
    shopStore.setState({ shop: { gauges: [] } as never });
    for (const one of [store, alone]) one.want(of(job));
    shopStore.setState({ shop: null });
    expect(out.asked.map(({ kind }) => kind)).toEqual(['passes', 'cylinders', 'passes']);
  });

  it('of another job nothing stays, and an answer that is late is not taken for one of it', () => {
    store.want(of(job));
    out.asked[0]!.hear(answer);
    store.want(of({ ...job }));
    jobStore.setState({ job: { ...job, id: 'another' } });
    expect(got()).toBeNull();
    out.asked[1]!.hear(answer);
    expect(got()).toBeNull();
  });

  it('is asked anew after the worker broke', () => {
    store.want(of(job));
    failing.setState({ failed: 'It stopped.' });
    failing.setState({ failed: null });
    store.want(of(job));
    expect(out.asked).toHaveLength(2);
  });

  it('may stand for more than the very same: what else it holds is kept', () => {
    const wide = asideStore('sizes', { more: { kept: 1 }, byShop: false, stands: () => true });
    wide.want(of(job));
    out.asked[0]!.hear(answer);
    wide.want(of({ ...job }));
    expect(out.asked).toHaveLength(1);
    expect(wide.use.getState()).toMatchObject({ shown: answer, kept: 1 });
  });
});
