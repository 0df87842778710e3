import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createJobStore, STEPS_KEPT } from '../../src/store/job.ts';
import { benchJob, retitled } from './benchJob.ts';

const titled = (store: ReturnType<typeof createJobStore>) => store.getState().job?.title;

describe('undo and redo', () => {
  test('step back and forth through the very same jobs', () => {
    const store = createJobStore();
    const first = benchJob('a');
    store.getState().put(first);
    store.getState().edit(retitled('one'));
    const one = store.getState().job;
    store.getState().edit(retitled('two'));
    store.getState().undo();
    expect(store.getState().job).toBe(one);
    store.getState().undo();
    expect(store.getState().job).toBe(first);
    store.getState().undo();
    expect(store.getState().job).toBe(first);
    store.getState().redo();
    expect(store.getState().job).toBe(one);
  });

  test('an edit that changes nothing leaves no step and keeps what can be redone', () => {
    const store = createJobStore();
    store.getState().put(benchJob('a'));
    store.getState().edit(retitled('one'));
    store.getState().undo();
    store.getState().edit((job) => job);
    expect(store.getState().earlier).toHaveLength(0);
    store.getState().redo();
    expect(titled(store)).toBe('one');
  });

  test('edits under one mark are one step; a step between them parts them', () => {
    const store = createJobStore();
    store.getState().put(benchJob('a', 'start'));
    for (const title of ['1', '2', '3']) store.getState().edit(retitled(title), 'slider');
    store.getState().edit(retitled('typed'));
    for (const title of ['4', '5']) store.getState().edit(retitled(title), 'slider');
    store.getState().undo();
    expect(titled(store)).toBe('typed');
    store.getState().undo();
    expect(titled(store)).toBe('3');
    store.getState().undo();
    expect(titled(store)).toBe('start');
  });

  test('after an undo, a marked edit starts a new step', () => {
    const store = createJobStore();
    store.getState().put(benchJob('a', 'start'));
    store.getState().edit(retitled('1'), 'slider');
    store.getState().edit(retitled('other'));
    store.getState().undo();
    store.getState().edit(retitled('2'), 'slider');
    store.getState().undo();
    expect(titled(store)).toBe('1');
  });

  test('another job on the bench starts with a clean history', () => {
    const store = createJobStore();
    store.getState().put(benchJob('a'));
    store.getState().edit(retitled('one'));
    const other = benchJob('b');
    store.getState().put(other);
    store.getState().undo();
    expect(store.getState().job).toBe(other);
  });

  test('history keeps the newest steps only', () => {
    const store = createJobStore();
    store.getState().put(benchJob('a', 'start'));
    for (let i = 1; i <= STEPS_KEPT + 20; i += 1) store.getState().edit(retitled(`${i}`));
    for (let i = 0; i < STEPS_KEPT + 20; i += 1) store.getState().undo();
    expect(titled(store)).toBe('20');
  });

  test('nothing can be edited before a job is there', () => {
    const store = createJobStore();
    store.getState().edit(retitled('x'));
    store.getState().redo();
    expect(store.getState().job).toBeNull();
  });

  test('for any run of edits, undos and redos the bench shows what a list and a finger would', () => {
    const moves = fc.array(fc.constantFrom('edit', 'undo', 'redo'), { maxLength: 60 });
    fc.assert(
      fc.property(moves, (run) => {
        const store = createJobStore();
        store.getState().put(benchJob('a', '0'));
        let list = ['0'];
        let finger = 0;
        run.forEach((move, i) => {
          if (move === 'edit') {
            store.getState().edit(retitled(`e${i}`));
            list = [...list.slice(0, finger + 1), `e${i}`];
            finger += 1;
          } else if (move === 'undo') {
            store.getState().undo();
            finger = Math.max(0, finger - 1);
          } else {
            store.getState().redo();
            finger = Math.min(list.length - 1, finger + 1);
          }
          expect(titled(store)).toBe(list[finger]);
        });
      }),
    );
  });
});
