/** While a value is typed over, what is not known is kept instead of worked out again: it must be the very same. */
import { describe, expect, it } from 'vitest';
import { basins } from '../../src/bore/basins.ts';
import { design } from '../../src/bore/design.ts';
import { freeSpread } from '../../src/bore/frame.ts';
import { condition } from '../../src/bore/posterior.ts';
import { sections } from '../../src/bore/sections.ts';
import { gridSpread, makeGrid, wearSurface } from '../../src/bore/surface.ts';
import { designAgain } from '../../src/bore/valueFree.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { addReading, setReading } from '../../src/job/readingEdits.ts';
import type { Job } from '../../src/job/schema.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  clocks,
  depthsWithin,
  jobOf,
  lobe,
  measure,
  round,
  sum,
  typedIn,
} from '../fixtures/bores.ts';

const LENGTH = 50;
const WALL = sum(round(32.5), lobe(2, 0.075, 0.4));

function surveyed(): Job {
  const taken = measure(
    WALL,
    'two-point',
    clocks(6),
    depthsWithin(5, LENGTH),
    0.005,
    seededRandom(1),
  );
  const feature = { decisions: { target: typedIn('mm', 65.2, 3) } };
  return jobOf({ taken, length: LENGTH, nominal: 65, feature });
}

const only = (job: Job, memory: Memory, pace: 'quick' | 'settled') =>
  evaluate(job, memory, pace).bores[0]!.surveys[0]!;

/** All from nothing, with the smoothness of an answer. */
function fromNothing({ sightings, surface }: ReturnType<typeof only>) {
  const p = condition(design(sightings, [], LENGTH), surface!.smoothness, 32.5)!;
  const grid = makeGrid(LENGTH);
  const spread = gridSpread(p, grid);
  return {
    surface: wearSurface(p, grid, spread),
    free: freeSpread(p, grid, spread),
    sections: sections(p),
  };
}

describe('a quick answer', () => {
  it.each([
    [
      'a value typed over',
      (job: Job) => setReading(job, 'b', 's', 'r7', { value: typedIn('mm', 65.31, 3) }),
    ],
    [
      'a reading moved to another depth',
      (job: Job) => setReading(job, 'b', 's', 'r7', { depth: typedIn('mm', 20, 1) }),
    ],
    [
      'a reading said to be less sure',
      (job: Job) => setReading(job, 'b', 's', 'r7', { sd: typedIn('mm', 0.1, 1) }),
    ],
    ['a reading left out', (job: Job) => setReading(job, 'b', 's', 'r7', { leftOut: true })],
  ])('after %s is what it would be from nothing', (_, edit) => {
    const memory: Memory = new Map();
    const before = only(surveyed(), memory, 'settled');
    for (const again of [1, 2]) {
      const job = edit(surveyed());
      const quick = only(job, memory, 'quick');
      expect(quick.surface!.smoothness).toBe(before.surface!.smoothness);
      const wanted = fromNothing(quick);
      expect(quick.surface!.mean, `time ${again}`).toEqual(wanted.surface.mean);
      expect(quick.surface!.sd).toEqual(wanted.surface.sd);
      expect(quick.surface!.sdSeen).toEqual(wanted.surface.sdSeen);
      expect(quick.removal!.sd).toEqual(wanted.free);
      expect(quick.sections).toEqual(wanted.sections);
    }
  });

  it('after a value typed over keeps what is not known; after a reading more it does not', () => {
    const memory: Memory = new Map();
    const before = only(surveyed(), memory, 'settled');
    const typed = setReading(surveyed(), 'b', 's', 'r7', { value: typedIn('mm', 65.31, 3) });
    const quick = only(typed, memory, 'quick');
    expect(quick.surface!.sd).toBe(before.surface!.sd);
    expect(quick.surface!.mean).not.toEqual(before.surface!.mean);
    const { id: _, ...one } = typed.features[0]!.surveys[0]!.readings[0]!;
    const more = addReading(typed, 'b', 's', { ...one, depth: typedIn('mm', 44, 1) });
    const other = only(more, memory, 'quick');
    expect(other.surface!.sd).not.toEqual(before.surface!.sd);
  });
});

describe('the same design', () => {
  it('serves other values, and no other place, spread or length', () => {
    const { sightings } = only(surveyed(), new Map(), 'settled');
    const before = design(sightings, [], LENGTH);
    const valued = sightings.map((s) => ({ ...s, value: s.value + 0.01 }));
    const again = designAgain(before, valued, [], LENGTH, Number.NaN);
    expect(again.pressed).toBe(before.pressed);
    expect(again.sightings).toBe(valued);
    const others = [
      designAgain(null, sightings, [], LENGTH, Number.NaN),
      designAgain(before, sightings, [], LENGTH + 1, Number.NaN),
      designAgain(before, sightings, [], LENGTH, 1),
      designAgain(before, sightings.slice(1), [], LENGTH, Number.NaN),
      ...(['theta', 'z', 'sd'] as const).map((key) => {
        const moved = sightings.map((s, i) => (i === 3 ? { ...s, [key]: s[key] + 0.01 } : s));
        return designAgain(before, moved, [], LENGTH, Number.NaN);
      }),
    ];
    for (const other of others) expect(other.pressed).not.toBe(before.pressed);
  });
});

describe('hills of equal height', () => {
  it('are taken in the order of their places', () => {
    const columns = 6;
    const field = Float64Array.of(3, 0, 2, 0, 3, 0, 1, 0, 2, 0, 1, 0);
    const { summits, label } = basins(field, columns, 0.5, () => 1);
    expect(summits).toEqual([0, 4, 2]);
    expect([...label]).toEqual([0, -1, 2, -1, 1, -1, 0, -1, 2, -1, 1, -1]);
  });
});
