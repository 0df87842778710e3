import { describe, expect, test } from 'vitest';
import type { Job } from '../../src/job/schema.ts';
import { createJobStore } from '../../src/store/job.ts';
import { createKeeper, type KeptJob, type Shelf, type Slate } from '../../src/store/keep.ts';
import { benchJob, retitled } from './benchJob.ts';

/** A shelf in memory whose writes finish only when told to. */
function slowShelf() {
  const jobs = new Map<string, KeptJob>();
  const finish: (() => void)[] = [];
  const state = { writes: 0, fault: null as Error | null };
  const shelf: Shelf = {
    list: async () => [...jobs.values()].map(({ id, title, changed }) => ({ id, title, changed })),
    read: async (id) => jobs.get(id),
    async write(job) {
      state.writes += 1;
      if (state.fault !== null) throw state.fault;
      await new Promise<void>((resolve) => finish.push(resolve));
      jobs.set(job.id, job);
    },
    remove: async (id) => void jobs.delete(id),
  };
  return { shelf, jobs, state, finishOne: () => finish.shift()?.() };
}
const turns = () => new Promise((resolve) => setTimeout(resolve, 0));
function bench(texts = new Map<string, string>()) {
  const slow = slowShelf();
  const slate: Slate = {
    get: (key) => texts.get(key) ?? null,
    set: (key, text) => void texts.set(key, text),
    wipe: (key) => void texts.delete(key),
  };
  const store = createJobStore();
  let clock = 1000;
  const now = () => {
    clock += 1;
    return clock;
  };
  const keeper = createKeeper({
    shelf: slow.shelf,
    slate,
    bench: store,
    saveJob: JSON.stringify,
    now,
  });
  // A job just opened is written soon; here at once, as when the page goes.
  const put = (job: Job) => {
    store.getState().put(job);
    keeper.settle();
  };
  return { ...slow, store, keeper, texts, put };
}
const namedError = (name: string) => Object.assign(new Error(name), { name });

describe('keeping jobs', () => {
  test('every edit is written at once, the newest behind the one under way', async () => {
    const { store, keeper, jobs, state, finishOne, put } = bench();
    put(benchJob('a', 'start'));
    expect(state.writes).toBe(1);
    for (const title of ['1', '2', '3']) store.getState().edit(retitled(title));
    expect(keeper.store.getState().safe).toBe(false);
    finishOne();
    await turns();
    expect(state.writes).toBe(2);
    finishOne();
    await keeper.idle();
    expect(JSON.parse(jobs.get('a')!.text).title).toBe('3');
    expect(keeper.store.getState().safe).toBe(true);
    expect(state.writes).toBe(2);
  });

  test('where a handle passes by nothing is written; where it rests, or the page goes, it is', async () => {
    const { store, keeper, jobs, state, finishOne, put } = bench();
    put(benchJob('a', 'start'));
    finishOne();
    await keeper.idle();
    for (const title of ['1', '2', '3']) store.getState().edit(retitled(title), 'handle');
    expect(state.writes).toBe(1);
    keeper.settle();
    expect(state.writes).toBe(2);
    finishOne();
    await keeper.idle();
    expect(JSON.parse(jobs.get('a')!.text).title).toBe('3');
    store.getState().edit(retitled('4'), 'handle');
    await expect.poll(() => state.writes, { timeout: 20_000 }).toBe(3);
    finishOne();
    await keeper.idle();
    expect(JSON.parse(jobs.get('a')!.text).title).toBe('4');
    store.getState().edit(retitled('5'), 'handle');
    store.getState().edit(retitled('typed'));
    expect(state.writes).toBe(4);
  });

  test('a job just opened is written when the page is drawn, or goes; typed into, at once', async () => {
    const { store, keeper, state, finishOne } = bench();
    store.getState().put(benchJob('a', 'start'));
    expect(state.writes).toBe(0);
    keeper.settle();
    expect(state.writes).toBe(1);
    finishOne();
    await keeper.idle();
    store.getState().put(benchJob('b', 'start'));
    store.getState().edit(retitled('typed'));
    expect(state.writes).toBe(2);
  });

  test('an undo is kept like an edit', async () => {
    const { store, keeper, jobs, finishOne, put } = bench();
    put(benchJob('a', 'start'));
    store.getState().edit(retitled('wrong'));
    store.getState().undo();
    finishOne();
    await turns();
    finishOne();
    await keeper.idle();
    expect(jobs.get('a')?.title).toBe('start');
  });

  test('several jobs are listed, the last used first', async () => {
    const { keeper, finishOne, put } = bench();
    for (const id of ['a', 'b', 'a']) {
      put(benchJob(id));
      finishOne();
      await keeper.idle();
    }
    expect(keeper.store.getState().jobs.map(({ id }) => id)).toEqual(['a', 'b']);
    await keeper.begin();
    expect(keeper.store.getState().jobs.map(({ id }) => id)).toEqual(['a', 'b']);
  });

  test('a job taken off the device can be put back as it was', async () => {
    const { keeper, jobs, finishOne, put } = bench();
    put(benchJob('a'));
    finishOne();
    await keeper.idle();
    const before = jobs.get('a');
    const taken = await keeper.remove('a');
    expect(taken).toEqual(before);
    expect(keeper.store.getState().jobs).toEqual([]);
    const back = keeper.putBack(taken!);
    finishOne();
    await back;
    expect(jobs.get('a')).toEqual(before);
    expect(keeper.store.getState().jobs.map(({ id }) => id)).toEqual(['a']);
  });

  test('a full or forbidden device is told in a sentence, and the next good write clears it', async () => {
    const { store, keeper, state, finishOne, put } = bench();
    state.fault = namedError('QuotaExceededError');
    put(benchJob('a'));
    await keeper.idle();
    expect(keeper.store.getState().refused).toMatch(/storage is full.*Save it to a file/);
    expect(keeper.store.getState().safe).toBe(false);
    state.fault = namedError('SecurityError');
    store.getState().edit(retitled('1'));
    await keeper.idle();
    expect(keeper.store.getState().refused).toMatch(/does not allow it/);
    state.fault = null;
    store.getState().edit(retitled('2'));
    finishOne();
    await keeper.idle();
    expect(keeper.store.getState()).toMatchObject({ refused: null, safe: true });
  });

  test('what a crash cut off before it reached the shelf is there at the next start', async () => {
    const crashed = bench();
    crashed.put(benchJob('a', 'start'));
    crashed.store.getState().edit(retitled('just typed'));
    // No write has finished: the page is gone, and only its texts are left.
    const next = bench(crashed.texts);
    const begun = next.keeper.begin();
    next.finishOne();
    await begun;
    expect(next.jobs.get('a')?.title).toBe('just typed');
    expect(next.keeper.store.getState().jobs.map(({ title }) => title)).toEqual(['just typed']);
    expect(next.texts.size).toBe(0);
  });

  test('a text cut off in the middle does not stop the start', async () => {
    for (const text of ['{"id":"a","ti', 'null', '{"id":"a"}', '7']) {
      const { keeper, jobs, state } = bench(new Map([['roundhand-unwritten', text]]));
      await keeper.begin();
      expect(state.writes).toBe(0);
      expect(jobs.size).toBe(0);
    }
  });

  test('once everything is on the shelf nothing is left over', async () => {
    const { keeper, finishOne, texts, put } = bench();
    put(benchJob('a'));
    expect(texts.size).toBe(1);
    finishOne();
    await keeper.idle();
    expect(texts.size).toBe(0);
  });
});
