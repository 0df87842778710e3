/**
 * The story for the person who pays: its figures are those of the evaluation and of its report, and what is not known is said to be so. Cases are constructed; the weights and thicknesses of everyday things are
 * common knowledge.
 */
import { describe, expect, it } from 'vitest';
import { reportText } from '../../src/cli/reportText.ts';
import { type BoreEvaluation, evaluate, type Memory } from '../../src/evaluate.ts';
import { inClips, inSheets } from '../../src/figures/everyday.ts';
import { type Story, storyOf } from '../../src/figures/story.ts';
import { addSurvey, setBushingOutside, setDecision, setStage } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { demoJobs } from '../../src/practice/demos.ts';

const told = (story: Story) =>
  story.steps.map(({ say, more }) => [say, ...more].join(' ')).join(' ');

/** Jobs that differ in what was decided alone share what was worked out of their readings. */
const memories = new Map<string, Memory>();

function seenOf(job: Job) {
  const memory = memories.get(job.id) ?? new Map();
  memories.set(job.id, memory);
  return evaluate(job, memory);
}

function storyFrom(job: Job, at = 0): { story: Story; bore: BoreEvaluation } {
  const seen = seenOf(job);
  const bore = seen.bores[at]!;
  const feature = job.features.find(({ id }) => id === bore.id)!;
  return { story: storyOf(job, feature, bore, seen.joint), bore };
}

const demo = (file: string) => demoJobs().find((one) => one.file.startsWith(file))!.job;

describe.each(demoJobs())('$file', ({ job }) => {
  const seen = seenOf(job);
  const stories = seen.bores.map((bore) => ({
    bore,
    story: storyOf(job, job.features.find(({ id }) => id === bore.id)!, bore, seen.joint),
  }));

  it('tells four steps, each with a sentence and a drawing, and no number that is none', () => {
    for (const { story } of stories) {
      expect(story.steps.map(({ step }) => step)).toEqual(['new', 'worn', 'work', 'done']);
      for (const { say, picture } of story.steps) {
        expect(say).toMatch(/^[A-Z].*\.$/);
        expect(picture?.hole.every(([x, y]) => Number.isFinite(x + y))).toBe(true);
      }
      expect(`${told(story)} ${story.basis.join(' ')}`).not.toMatch(/NaN|undefined|Infinity|null/);
    }
  });

  it('weighs the metal as the report does', () => {
    const report = reportText(job, seen).replace(/\s+/g, ' ');
    for (const { story, bore } of stories) {
      const grams = /likely (\S+) g/i.exec(told(story))?.[1];
      expect(grams, bore.name).toBeDefined();
      expect(report).toContain(`likely ${grams} g`);
    }
  });

  it('says the share of the seat that was worked out, to the digits of its doubt', () => {
    for (const { story, bore } of stories) {
      const { seen: last } = story.chapters.after ?? story.chapters.work!;
      const { likely, least, most } = last.seating!.hand!;
      const done = story.steps[3]!;
      const text = [done.say, ...done.more].join(' ');
      const said = Number(/about (\d+) % of its seat/.exec(text)?.[1] ?? 100) / 100;
      // Rounded to its doubt: half of the way from least to most, or half of one per cent.
      const half = Math.max((most - least) / 2, 0.005);
      expect(Math.abs(said - likely), bore.name).toBeLessThanOrEqual(half + 1e-9);
      expect(/ % of its seat|all, or as good as all, of its seat/.test(text)).toBe(true);
    }
  });

  it('names the largest fault that the readings show, with its figure', () => {
    for (const { story, bore } of stories) {
      const { seen: worn } = story.chapters.worn!;
      const round = Math.max(...worn.sections.map(({ outOfRound }) => outOfRound));
      const others = worn.patterns.named
        .filter(({ name }) => /taper|bell|barrel|waist|step|three-lobed/.test(name))
        .map(({ amount }) => amount);
      const largest = Math.max(round, ...others);
      const figure = Number(/(\d+\.\d+) (?:in|mm)/.exec(story.steps[1]!.say)![1]);
      const mm = job.units === 'in' ? figure * 25.4 : figure;
      // Written to the digits of its give-or-take: within half of the last of them.
      const last = /\d+\.(\d+) (?:in|mm)/.exec(story.steps[1]!.say)![1]!.length;
      const half = 0.5 * 10 ** -last * (job.units === 'in' ? 25.4 : 1);
      expect(Math.abs(mm - largest), bore.name).toBeLessThanOrEqual(half + 1e-9);
    }
  });
});

describe('the stages that were read', () => {
  it('done is told as measured where the bore was read when fitted, as planned before', () => {
    const whole = demo('slipway');
    expect(storyFrom(whole).story.steps[3]!.say).toContain('Done, and measured:');
    expect(told(storyFrom(whole).story)).toContain('read as “Fitted” with the bushing in');
    expect(told(storyFrom(whole).story)).not.toContain('of play in its bushing now');
    const [heel] = whole.features;
    const cut = (count: number): Job => ({
      ...whole,
      features: [{ ...heel!, surveys: heel!.surveys.slice(0, count) }],
    });
    expect(storyFrom(cut(3)).story.steps[3]!.say).toContain('So far, measured after “Pass 1”');
    expect(storyFrom(cut(2)).story.steps[3]!.say).toContain('Done, as planned:');
    expect(storyFrom(cut(2)).story.steps[2]!.say).toContain('has been closed with heat');
    // As found only, and the heat still to come: nothing is promised of the fit.
    const first = storyFrom(cut(1)).story;
    expect(first.steps[2]!.say).toContain('close the hole a little with heat, then');
    expect(first.steps[3]!.say).toContain('how well shows when it is measured after the heat');
    // Drawn as it is meant: a true round.
    const { hole, round } = first.steps[3]!.picture!;
    for (const [x, y] of hole) expect(Math.hypot(x, y)).toBeCloseTo(round, 9);
  });

  it('two surveys as found: the later one tells how it is worn', () => {
    const { story } = storyFrom(demo('quarry'));
    expect(story.chapters.worn?.seen.name).toBe('As found, six pairs');
    expect(story.steps[1]!.say).toContain('1:30–7:30');
  });

  it('a stage without readings tells nothing', () => {
    const job = addSurvey(demo('elevator'), 'f1', 'fitted');
    expect(storyFrom(job).story.chapters.after).toBeNull();
  });

  it('only readings after a pass: they are what is told of', () => {
    const job = setStage(demo('elevator'), 'f1', 's1', 'pass');
    const { chapters, steps } = storyFrom(job).story;
    expect(chapters.worn).toBe(chapters.after);
    expect(chapters.work).toBeNull();
    expect(steps[2]!.say).toBe('What is to be done shows once it is measured.');
  });
});

describe('what is not known is said', () => {
  it('no bushing: no work and no fit are promised, and the wear is still told', () => {
    let job = demo('quarry');
    job = setBushingOutside(job, 'f1', 'b1', 0, { text: '', unit: 'mm' });
    const { steps } = storyFrom(job).story;
    expect(steps[1]!.say).toContain('worn out of round');
    expect(steps[2]!.say).toContain('shows once the new bushing is measured');
    expect(steps[3]!.say).toContain('shows once it is measured');
    expect(steps[2]!.picture).toBeNull();
  });

  it('no readings: neither wear nor work', () => {
    const job = demo('quarry');
    const [feature] = job.features;
    const bare: Job = {
      ...job,
      features: [
        { ...feature!, surveys: feature!.surveys.map((one) => ({ ...one, readings: [] })) },
      ],
    };
    const { steps, basis } = storyFrom(bare).story;
    expect(steps[1]!.say).toBe('How it is worn is not measured yet.');
    expect(steps[0]!.say).toContain('80.00 mm across');
    expect(steps[0]!.picture).not.toBeNull();
    expect(steps[3]!.picture).toBeNull();
    expect(basis).toEqual([]);
  });

  it('no size when new: the size of the bushing is said to stand for it', () => {
    const job = demo('quarry');
    const { nominal: _, ...feature } = job.features[0]!;
    const { steps } = storyFrom({ ...job, features: [feature] }).story;
    expect(steps[0]!.more.join(' ')).toContain('80.060 mm across, is taken for it');
  });

  it('the pin’s room is told from the bushing as bought, and from none where a size is missing', () => {
    // 1.5060 in less the largest pin of 1.4996 in is 0.0064; less the press fit of 0.002 it is 0.0044.
    const whole = demo('slipway');
    const [heel] = whole.features;
    const unfitted = { ...whole, features: [{ ...heel!, surveys: heel!.surveys.slice(0, 4) }] };
    expect(told(storyFrom(unfitted).story)).toContain('0.0044 to 0.0064 in across');
    expect(told(storyFrom(demo('orchard-boom')).story)).toContain('is not written down');
  });

  it('two bushings in one bore are both told of, the smaller by its size', () => {
    const { story } = storyFrom(demo('orchard-lift'), 1);
    expect(story.steps[2]!.say).toContain('both bushings press in, the smaller 45.050 mm across');
  });

  it('left as it is where that was decided', () => {
    const job = setDecision(demo('elevator'), 'f1', { way: 'leave' });
    const { steps } = storyFrom(job).story;
    expect(steps[2]!.say).toContain('We leave the metal as it is');
    expect(steps[3]!.say).toContain('stays as it is now');
    expect(steps[2]!.picture).toBeNull();
    expect(steps[3]!.picture).toMatchObject({ bushing: null, hole: steps[1]!.picture!.hole });
  });
});

describe('everyday things', () => {
  it('a sheet of office paper is about 0.1 mm', () => {
    expect(inSheets(0.012 * 25.4, 'in')).toBe(
      'About three sheets of paper laid together: a sheet of office paper is about 0.004 in thick.',
    );
    expect(inSheets(0.1, 'mm')).toContain('About one sheet of paper');
    expect(inSheets(0.05, 'mm')).toContain('About half a sheet');
    expect(inSheets(0.02, 'mm')).toContain('Far less than a sheet');
    expect(inSheets(0, 'mm')).toBe('');
    expect(inSheets(5, 'mm')).toBe('');
    expect(inSheets(Number.NaN, 'mm')).toBe('');
  });

  it('a small paper clip weighs about 1 g', () => {
    expect(inClips(3.3)).toBe('That is about the weight of three small paper clips.');
    expect(inClips(0.4)).toContain('less than a small paper clip');
    expect(inClips(12.2)).toContain('12 small paper clips');
    expect(inClips(0)).toBe('');
    expect(inClips(300)).toBe('');
  });
});
