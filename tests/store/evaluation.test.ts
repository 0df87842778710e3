import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../src/evaluate.ts';
import { createAsker, type Question } from '../../src/store/evaluation.ts';
import { benchJob } from './benchJob.ts';

function bench() {
  const asked: Question[] = [];
  const asker = createAsker((question) => asked.push(question));
  return { asked, asker, state: () => asker.store.getState() };
}
const anEvaluation = (): Evaluation => ({
  units: 'in',
  bores: [],
  parts: [],
  joint: { parts: [], fresh: [], plays: [], walls: [], mirrors: [], unread: [] },
});
const answer = (question: Question | undefined, kind: 'quick' | 'settled' = 'settled') => ({
  number: question?.number ?? -1,
  kind,
  evaluation: anEvaluation(),
});

describe('newest edit wins', () => {
  test('while one question is out, only the newest of those that come is asked next', () => {
    const { asked, asker, state } = bench();
    const [a, b, c, d] = ['a', 'b', 'c', 'd'].map((id) => benchJob(id));
    for (const job of [a, b, c, d]) asker.ask(job!);
    expect(asked.map(({ job }) => job.id)).toEqual(['a']);
    asker.hear(answer(asked[0]));
    expect(asked.map(({ job }) => job.id)).toEqual(['a', 'd']);
    expect(state().of).toBe(a);
    expect(state().settled).toBe(false);
    asker.hear(answer(asked[1]));
    expect(state().of).toBe(d);
    expect(state().settled).toBe(true);
    expect(asked).toHaveLength(2);
  });

  test('a late reply to an older question changes nothing', () => {
    const { asked, asker, state } = bench();
    asker.ask(benchJob('a'));
    asker.hear(answer(asked[0]));
    const b = benchJob('b');
    asker.ask(b);
    asker.hear(answer(asked[1]));
    const shown = state().evaluation;
    asker.hear(answer(asked[0]));
    expect(state().evaluation).toBe(shown);
    expect(state().of).toBe(b);
  });

  test('back to the job that is out, with nothing else waiting, asks nothing twice', () => {
    const { asked, asker, state } = bench();
    const a = benchJob('a');
    asker.ask(a);
    asker.ask(a);
    asker.hear(answer(asked[0]));
    expect(asked).toHaveLength(1);
    expect(state().settled).toBe(true);
  });

  test('a first quick answer is shown and the settled one replaces it', () => {
    const { asked, asker, state } = bench();
    asker.ask(benchJob('a'));
    asker.hear(answer(asked[0], 'quick'));
    const quick = state().evaluation;
    expect(quick).not.toBeNull();
    expect(state().settled).toBe(false);
    asker.hear(answer(asked[0]));
    expect(state().evaluation).not.toBe(quick);
    expect(state().settled).toBe(true);
  });

  test('a quick answer that stands is not shown twice', () => {
    const { asked, asker, state } = bench();
    asker.ask(benchJob('a'));
    asker.hear(answer(asked[0], 'quick'));
    const quick = state().evaluation;
    asker.hear({ number: asked[0]!.number, kind: 'stands' });
    expect(state().evaluation).toBe(quick);
    expect(state().settled).toBe(true);
  });

  test('a newer job is asked right after the quick answer, and the older settled one is not shown', () => {
    const { asked, asker, state } = bench();
    asker.ask(benchJob('a'));
    asker.ask(benchJob('b'));
    asker.hear(answer(asked[0], 'quick'));
    expect(asked.map(({ job }) => job.id)).toEqual(['a', 'b']);
    const quick = state().evaluation;
    asker.hear(answer(asked[0]));
    expect(state().evaluation).toBe(quick);
    expect(state().settled).toBe(false);
    asker.hear(answer(asked[1]));
    expect(state().of?.id).toBe('b');
    expect(state().settled).toBe(true);
  });
});

describe('when it fails', () => {
  test('the last good answer stays, the reason is told, and the next job is asked', () => {
    const { asked, asker, state } = bench();
    asker.ask(benchJob('a'));
    asker.hear(answer(asked[0]));
    const good = state().evaluation;
    asker.ask(benchJob('b'));
    asker.ask(benchJob('c'));
    asker.hear({ number: asked[1]!.number, kind: 'failed', why: 'no size' });
    expect(state().evaluation).toBe(good);
    expect(state().failed).toBe('no size');
    expect(asked.at(-1)?.job.id).toBe('c');
    asker.hear(answer(asked[2]));
    expect(state().failed).toBeNull();
  });

  test('a broken worker does not stop the newest job from being asked', () => {
    const { asked, asker, state } = bench();
    asker.ask(benchJob('a'));
    asker.ask(benchJob('b'));
    asker.broke('out of memory');
    expect(state().failed).toBe('out of memory');
    expect(asked.at(-1)?.job.id).toBe('b');
    asker.hear(answer(asked[0]));
    expect(state().evaluation).toBeNull();
    asker.hear(answer(asked[1]));
    expect(state().of?.id).toBe('b');
  });
});
