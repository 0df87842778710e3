/** Squeezing, shims and weld in the report: equal in text and JSON, and no step with heat before its questions are answered. */
import { describe, expect, test } from 'vitest';
import { buildUpFinder } from '../../src/cli/buildUpReport.ts';
import { buildUpParts } from '../../src/cli/buildUpText.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import {
  addFaceReading,
  setDecision,
  setMending,
  setSafety,
  setWayFigure,
} from '../../src/job/edits.ts';
import type { Decisions, Job } from '../../src/job/schema.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';

const inch = (text: string) => ({ text, unit: 'in' as const });

/** The survey as found of a demo job; its shape is worked out once for all. */
const memory: Memory = new Map();

function reported(of: Job) {
  const bore = evaluate(of, memory).bores[0]!;
  const survey = bore.surveys[0]!;
  const parts = buildUpParts(of, bore, survey, null);
  return {
    buildUp: buildUpFinder(of, null)(bore, survey)!,
    text: parts.map(({ head, lines }) => [`${head}:`, ...lines].join('\n')).join('\n'),
  };
}

const whole = slipwayWinch();
const [heel] = whole.features;
const job: Job = { ...whole, features: [{ ...heel!, surveys: heel!.surveys.slice(0, 1) }] };
const by = (way: NonNullable<Decisions['way']>) => setDecision(job, 'f1', { way });

describe('a squeeze', () => {
  test('tells both ends of every depth, and the set-up once every question is answered', () => {
    const { buildUp, text } = reported(by('squeeze'));
    const { depths, setUp, goal } = buildUp.squeeze!;
    // Bushing 2.0061 in less 0.002 in press fit, less 0.002 in.
    expect(goal).toBeCloseTo(2.0021 * 25.4, 6);
    for (const { before, bending, withUpset } of depths) {
      expect(bending.mean).toBeCloseTo(before.mean, 9);
      expect(withUpset.mean).toBeLessThanOrEqual(bending.mean + 1e-12);
    }
    // Worn along 12-6: the jaws stand within a quarter of an hour of it.
    expect(Math.abs(Math.sin((setUp!.jawsClock * Math.PI) / 180))).toBeLessThan(Math.sin(0.13));
    expect(setUp!.grip.from).toBeLessThan(0.25 * 25.4);
    expect(setUp!.cold).toHaveLength(4 * 5);
    for (const line of [...buildUp.squeeze!.words, ...setUp!.words]) expect(text).toContain(line);
  });

  test('shows no step before that', () => {
    const { buildUp, text } = reported(setSafety(by('squeeze'), 'metal', undefined));
    expect(buildUp.squeeze!.setUp).toBeNull();
    expect(text).not.toContain('Set the jaws');
    expect(text).not.toContain('Measure cold');
    expect(text).toContain('Still to be answered: What metal is it?');
    const iron = reported(setSafety(by('squeeze'), 'metal', 'iron'));
    expect(iron.buildUp.squeeze!.setUp).toBeNull();
    expect(iron.text).toContain('cast iron is never squeezed');
  });

  test('follows the figures that are stated', () => {
    const lower = setWayFigure(by('squeeze'), 'f1', 'squeezeUnder', inch('0.003'));
    expect(reported(lower).buildUp.squeeze!.goal).toBeCloseTo(2.0011 * 25.4, 6);
  });
});

describe('shims', () => {
  test('fill the round bore exactly where the size is free, and leave the press fit', () => {
    const { buildUp, text } = reported(by('shim'));
    const shims = buildUp.shims!;
    const sum = shims.layers.reduce((a: number, b: number) => a + b, 0);
    expect(shims.round - 2 * sum).toBeCloseTo(2.0041 * 25.4, 6);
    expect(shims.round).toBeGreaterThanOrEqual(shims.cleanUp);
    expect(shims.pressFit).toBeCloseTo(0.002 * 25.4, 6);
    expect(shims.strips).toHaveLength(shims.layers.length);
    // The load pulls to 6: the first joint is at 12.
    expect(Math.cos((shims.strips[0]!.buttClock * Math.PI) / 180)).toBeGreaterThan(0.5);
    expect(text).toContain('Shims:');
    expect(text).toContain(shims.words[0]!);
  });

  test('are chosen for the size that the bore was ground to', () => {
    const ground = setMending(by('shim'), 'f1', 'shim', 'round', inch('2.0241'));
    const shims = reported(ground).buildUp.shims!;
    expect(shims.missing).toBeCloseTo(0.01 * 25.4, 6);
    expect(shims.layers.map((t: number) => t / 25.4)).toEqual([expect.closeTo(0.01, 9)]);
  });
});

describe('weld', () => {
  test('is low and allowance over the seat; its steps wait for the answers', () => {
    const allowance = setWayFigure(by('weld'), 'f1', 'weldAllowance', inch('0.060'));
    const { buildUp, text } = reported(allowance);
    const { weld } = buildUp;
    expect(weld.greatest).toBeGreaterThan(0.06 * 25.4);
    expect(weld.mass).toBeCloseTo(weld.volume * 7.85e-3, 9);
    expect(weld.steps!.orderClocks).toHaveLength(weld.stringers);
    for (const line of [...weld.words, ...weld.steps!.words]) expect(text).toContain(line);
    const asked = setSafety(allowance, 'openAndClean', 'unknown');
    const shut = reported(asked);
    expect(shut.buildUp.weld.steps).toBeNull();
    expect(shut.text).not.toContain('Stringers along the axis');
  });
});

describe('rim faces', () => {
  test('are told with the washers that bring them back', () => {
    let worn = job;
    for (const [clock, below] of [
      ['12', '0.020'],
      ['6', '0.032'],
    ] as const) {
      const tried = addFaceReading(worn, 'f1', { face: 'A', clock, below: inch(below) });
      if (!tried.ok) throw new Error(tried.why);
      worn = tried.job;
    }
    const { buildUp, text } = reported(worn);
    expect(buildUp.rims).toHaveLength(1);
    expect(buildUp.rims[0]!.asItIs.layers).toEqual([expect.closeTo(0.02 * 25.4, 9)]);
    expect(buildUp.rims[0]!.asItIs.gap).toBeCloseTo(0.012 * 25.4, 9);
    expect(text).toContain('Face A: 0.020 in below flush at 12:00, 0.032 in at 6:00.');
  });
});
