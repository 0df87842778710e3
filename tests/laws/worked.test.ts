/** Once a bore has been worked, its size is no sign of wear: constructed readings. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { newJob, setCell, setDimension } from '../../src/job/edits.ts';
import type { Survey } from '../../src/job/schema.ts';

/** Round and straight, 0.010 in over its size when new: six times the IT8 tolerance of ISO 286-1 for 2.5 in. */
function large(stage: Survey['stage']) {
  const start = newJob({
    units: 'in',
    gauge: 'telescoping',
    length: '3',
    bushingOutside: '2.512',
    depths: ['0.25', '1.5', '2.75'],
  });
  const read = [0, 1, 2].reduce(
    (job, depth) =>
      [0, 1, 2, 3].reduce(
        (one, clock) => setCell(one, 'f1', 's1', { depth, clock, values: '2.5100' }),
        job,
      ),
    setDimension(start, 'f1', 'nominal', { text: '2.5', unit: 'in' }),
  );
  const features = read.features.map((one) => ({
    ...one,
    surveys: one.surveys.map((survey) => ({ ...survey, stage })),
  }));
  return evaluate({ ...read, features }).bores[0]!.surveys[0]!.patterns;
}

describe('a bore that is round and straight but large', () => {
  it('is told to have worn as it was found', () => {
    expect(large('as-found')!.named.map(({ name }) => name)).toEqual(['round-but-big']);
  });

  it.each(['pass', 'after-squeezing', 'after-build-up', 'fitted'] as const)(
    'is not, measured at %s',
    (stage) => {
      expect(large(stage)!.named).toEqual([]);
    },
  );
});
