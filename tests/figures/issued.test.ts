/**
 * A pass given to the bench: frozen, and what the survey after it is held against; and a bore ground past its target.
 * Constructed of two surveys of a demo job, the one before a pass and the one after it.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Pass } from '../../src/bore/passTypes.ts';
import { passesOfSurvey } from '../../src/evaluate/passes.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { issuedOf, issuedWords } from '../../src/figures/issued.ts';
import { pastWords, workedWords } from '../../src/figures/workedWords.ts';
import { issuePass, setDimension } from '../../src/job/edits.ts';
import { openJob } from '../../src/job/parse.ts';
import { saveJob } from '../../src/job/save.ts';
import type { Job } from '../../src/job/schema.ts';

const FILE = new URL('../../demo-data/slipway-winch.roundhand.json', import.meta.url);

function demo(): Job {
  const opened = openJob(readFileSync(FILE, 'utf8'), 'demo');
  if (!opened.ok) throw new Error(opened.why);
  const [feature] = opened.job.features;
  const surveys = feature!.surveys.filter(({ name }) => /squeezing|Pass 1/.test(name));
  return { ...opened.job, features: [{ ...feature!, surveys, issued: [] }] };
}

const memory: Memory = new Map();

function looked(job: Job, at: number) {
  const [bore] = evaluate(job, memory).bores;
  const survey = bore!.surveys[at]!;
  return { bore: bore!, survey, passes: passesOfSurvey(job, bore!, survey, null)! };
}

function given(job: Job, more: Partial<Pass> = {}) {
  const { bore, survey, passes } = looked(job, 0);
  return issuedOf({
    pass: { ...passes.plan.passes[0]!, ...more },
    tool: passes.plan.tool,
    number: 1,
    survey,
    surface: survey.surface!,
    target: survey.target!,
    length: bore.facts.length.mm,
    units: job.units,
    when: '2026-11-28',
  });
}

describe('a pass given to the bench', () => {
  const job = demo();
  const [feature] = job.features;
  const issued = given(job);
  const frozen = issuePass(job, feature!.id, issued);

  it('is saved and opened again as it was', () => {
    const again = openJob(saveJob(frozen), 'saved');
    expect(again.ok && again.job.features[0]!.issued[0]).toMatchObject(issued);
    expect(issued.title).toMatch(/^Pass 1: \d/);
    expect(issued.words.length).toBeGreaterThan(0);
  });

  it('may name as many places to be felt first as a long bore has: the saved job is opened again', () => {
    const between = Array.from(
      { length: 60 },
      (_, i) => ({ theta: 0, z: 10 + i, halfway: 'depth', takes: 0.05 }) as const,
    );
    const many = given(job, { between });
    expect(Math.max(...many.words.map((text) => text.length))).toBeGreaterThan(400);
    expect(openJob(saveJob(issuePass(job, feature!.id, many)), 'saved').ok).toBe(true);
  });

  it('asks for what the plan asks, to a hundredth of a micrometre, and for nothing where nothing is ground', () => {
    const asked = looked(job, 0).passes.plan.passes[0]!.removal;
    const faults = issued.removal
      .flat()
      .filter((mm, k) => !(Math.abs(mm - (asked[k]! > 0 ? asked[k]! : 0)) <= 0.5e-5 + 1e-12));
    expect(faults).toEqual([]);
    expect(issued.removal.flat().some((mm) => mm > 0)).toBe(true);
  });

  it('is said to be the plan’s still, and not any more once the target is another', () => {
    expect(issuedWords(looked(job, 0).passes)).toEqual([]);
    expect(issuedWords(looked(frozen, 0).passes)).toEqual([
      `Given to the bench on 2026-11-28: ${issued.title}.`,
    ]);
    const larger = setDimension(frozen, feature!.id, 'target', {
      text: '2.0050',
      unit: 'in',
    });
    const { issued: now } = looked(larger, 0).passes;
    const { title, when, words } = issued;
    expect(now).toEqual({ title, when, words, same: false });
  });

  it('is what the survey after it is held against, whatever the plan says now', () => {
    const planned = looked(job, 1).passes.worked!;
    const twice = { ...issued, removal: issued.removal.map((row) => row.map((mm) => 2 * mm)) };
    const held = looked(issuePass(job, feature!.id, twice), 1).passes;
    expect(planned.given).toBeNull();
    expect(held.worked!.given).toBe('2026-11-28');
    held.worked!.off.places.forEach(({ asked }, i) => {
      // Twice the rounding of what is kept, at both ends.
      expect(Math.abs(asked - 2 * planned.off.places[i]!.asked)).toBeLessThan(2.1e-5);
    });
    // The metal that came is the same: half the share of twice as much, within what is known of it (1 standard deviation).
    const apart = Math.abs(2 * held.worked!.off.share - planned.off.share);
    expect(apart).toBeLessThan(planned.off.shareSd);
    expect(planned.off.shareSd).toBeLessThan(0.1);
    expect(workedWords(held, 'in')).toContain(
      'Held against the pass as it was given to the bench on 2026-11-28.',
    );
  });

  it('one given later from the same survey takes its place', () => {
    const again = issuePass(frozen, feature!.id, { ...issued, when: '2026-11-29' });
    expect(again.features[0]!.issued.map(({ when }) => when)).toEqual(['2026-11-29']);
  });
});

describe('a bore that was ground past its target', () => {
  it('is told where, by how much, and with what is still possible', () => {
    const job = demo();
    // The wall after the pass, 0.008 in larger across than it was read: 0.004 per side further out everywhere.
    const [before, after] = job.features[0]!.surveys;
    const readings = after!.readings.map((one) => ({
      ...one,
      value: { ...one.value, text: (Number(one.value.text) + 0.008).toFixed(4) },
    }));
    const past: Job = {
      ...job,
      features: [{ ...job.features[0]!, surveys: [before!, { ...after!, readings }] }],
    };
    expect(looked(job, 1).passes.past).toBeNull();
    const { passes, bore } = looked(past, 1);
    const { head, ways } = pastWords(passes.past!, bore.facts, 'in');
    expect(head).toMatch(/^At \d+:\d\d, [\d.]+ in deep, the wall lies 0\.\d+ in per side outside/);
    expect(head).toContain('Take nothing more off there.');
    expect(ways.join(' ')).toContain('Have a bushing made to suit');
  });
});
