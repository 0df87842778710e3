/**
 * Whatever number of the plan is changed, the plan follows, and undo brings back the very same one. Every decision that a saved
 * job can hold is walked through, by the schema itself, so that none is left out. Constructed.
 */
import { afterAll, describe, expect, it } from 'vitest';
import { buildUpFinder } from '../../src/cli/buildUpReport.ts';
import { centresFinder } from '../../src/cli/centresReport.ts';
import { pinFinder } from '../../src/cli/pinsReport.ts';
import { reportOf } from '../../src/cli/report.ts';
import { waysFinder } from '../../src/cli/waysReport.ts';
import { passesOfSurvey } from '../../src/evaluate/passes.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import {
  addKeepout,
  setBushing,
  setBushingOutside,
  setDecision,
  setDimension,
  setMending,
  setPin,
  setWanted,
  setWayFigure,
  setWayShare,
} from '../../src/job/edits.ts';
import { Shim, Squeeze, Weld } from '../../src/job/mendingSchema.ts';
import { OfPin } from '../../src/job/pinSchema.ts';
import { Decisions, type Job, WayFigure, WayShare } from '../../src/job/schema.ts';
import { orchardLiftClevis } from '../../src/practice/demos/orchardLiftClevis.ts';
import { sawmillRockerShaft } from '../../src/practice/demos/sawmillRockerShaft.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';
import { createJobStore } from '../../src/store/job.ts';

const inch = (text: string) => ({ text, unit: 'in' as const });

/** One bore as found, so that its plan is the whole job's. */
function asFound(job: Job): Job {
  const features = job.features.map((one) => ({ ...one, surveys: one.surveys.slice(0, 1) }));
  return { ...job, features };
}

/** All that the plan says, as the report has it. */
function planner() {
  const memory: Memory = new Map();
  return (job: Job): string => {
    const finders = {
      ways: waysFinder(job, null),
      passes: (
        bore: Parameters<typeof passesOfSurvey>[1],
        survey: Parameters<typeof passesOfSurvey>[2],
      ) => passesOfSurvey(job, bore, survey, null),
      buildUp: buildUpFinder(job, null),
      centres: centresFinder(job, memory, null),
    };
    const evaluation = evaluate(job, memory, 'settled');
    const pins = { job, find: pinFinder(job, memory, null) };
    const { bores, pins: shafts } = reportOf(evaluation, {}, finders, pins);
    const plans = bores.flatMap(({ surveys }) =>
      surveys.map(({ target, removal, zones, ways, wayAdvice, buildUp, passes, grinding }) => {
        return { target, removal, zones, ways, wayAdvice, buildUp, passes, grinding };
      }),
    );
    return JSON.stringify([plans, shafts.map(({ surveys }) => surveys)]);
  };
}

type Edit = (job: Job) => Job;

/** With a squeeze that was measured, and a steel that is known: figures that only count beside one another. */
function measuredCold(job: Job): Job {
  const sizes = { moved: inch('0.020'), along: inch('2.0020'), between: inch('2.0035') };
  const squeeze = setDecision(job, 'f1', { way: 'squeeze', squeeze: sizes });
  const round = setMending(squeeze, 'f1', 'shim', 'round', inch('2.0407'));
  return setMending(round, 'f1', 'weld', 'carbon', '0.5');
}

const byHand = { rule: 'by-hand' as const, x: inch('0.001') };

/** By decision and, where it holds several, by figure: what is changed of the winch's bore. */
const OF_BORE: Readonly<Record<string, Edit>> = {
  way: (job) => setDecision(job, 'f1', { way: 'weld' }),
  target: (job) => setDecision(job, 'f1', { target: inch('2.0050') }),
  crack: (job) => setDecision(job, 'f1', { crack: 'seen' }),
  'centre.rule': (job) => setDecision(job, 'f1', { centre: { rule: 'least-cut' } }),
  'centre.x': (job) => setDecision(job, 'f1', { centre: byHand }),
  'centre.y': (job) => setDecision(job, 'f1', { centre: { ...byHand, y: inch('0.002') } }),
  'centre.leanX': (job) => setDecision(job, 'f1', { centre: { ...byHand, leanX: inch('0.001') } }),
  'centre.leanY': (job) => setDecision(job, 'f1', { centre: { ...byHand, leanY: inch('0.001') } }),
  'centre.unwornFrom': (job) =>
    setDecision(job, 'f1', { centre: { rule: 'keep', unwornFrom: inch('2.2') } }),
  'centre.unwornTo': (job) =>
    setDecision(job, 'f1', { centre: { rule: 'keep', unwornTo: inch('1.5') } }),
  'between.smooth': (job) => setDecision(job, 'f1', { between: { smooth: inch('0.6') } }),
  'between.dents': (job) => setDecision(job, 'f1', { between: { dents: inch('0.0008') } }),
  'grinding.kind': (job) => setDecision(job, 'f1', { grinding: { kind: 'flap-wheel' } }),
  'grinding.diameter': (job) => setDecision(job, 'f1', { grinding: { diameter: inch('1.0') } }),
  'grinding.width': (job) => setDecision(job, 'f1', { grinding: { width: inch('0.4') } }),
  'grinding.bite': (job) => setDecision(job, 'f1', { grinding: { bite: inch('0.0004') } }),
  'grinding.slope': (job) => setDecision(job, 'f1', { grinding: { slope: inch('0.002') } }),
  'squeeze.heat': (job) => setMending(job, 'f1', 'squeeze', 'heat', { text: '1250', unit: 'F' }),
  'squeeze.yield': (job) => setMending(job, 'f1', 'squeeze', 'yield', '355'),
  'squeeze.moved': (job) => setMending(job, 'f1', 'squeeze', 'moved', inch('0.030')),
  'squeeze.along': (job) => setMending(job, 'f1', 'squeeze', 'along', inch('2.001')),
  'squeeze.between': (job) => setMending(job, 'f1', 'squeeze', 'between', inch('2.003')),
  'shim.round': (job) => setMending(job, 'f1', 'shim', 'round', inch('2.040')),
  'shim.gap': (job) => setMending(job, 'f1', 'shim', 'gap', inch('0.030')),
  'shim.miss': (job) => setMending(job, 'f1', 'shim', 'miss', inch('0.004')),
  'shim.tab': (job) => setMending(job, 'f1', 'shim', 'tab', inch('0.5')),
  'weld.over': (job) => setMending(job, 'f1', 'weld', 'over', 'low'),
  'weld.electrode': (job) => setMending(job, 'f1', 'weld', 'electrode', '4.0'),
  'weld.beadHeight': (job) => setMending(job, 'f1', 'weld', 'beadHeight', inch('0.06')),
  'weld.beadWidth': (job) => setMending(job, 'f1', 'weld', 'beadWidth', inch('0.20')),
  'weld.overlap': (job) => setMending(job, 'f1', 'weld', 'overlap', '50'),
  'weld.known': (job) => setMending(job, 'f1', 'weld', 'known', 'nothing'),
  'weld.carbon': (job) => setMending(job, 'f1', 'weld', 'carbon', '0.3'),
  'weld.steel': (job) =>
    setMending(setMending(job, 'f1', 'weld', 'known', 'parts'), 'f1', 'weld', 'steel', {
      C: '0.4',
      Mn: '0.8',
    }),
};

/** Shop's tools stand beside the job, and the fit is no part of the plan: each has tests of its own. */
const ELSEWHERE = ['tool', 'fit'];

/** Values that are no starting values, by figure of the ways. */
const FIGURES: Readonly<Record<WayFigure, string>> = {
  oversizeStep: '0.010',
  sleeveWall: '0.200',
  weldAllowance: '0.200',
  squeezeUnder: '0.003',
  heatLeast: '0.001',
  heatMost: '0.020',
  leastPress: '0.004',
  acceptLow: '0.030',
  squeezeLow: '0.030',
  oversizeLow: '0.001',
  shimLeast: '0.020',
  turnDownMost: '0.001',
};

const inPart = (name: string, entries: object) =>
  Object.keys(entries).map((key) => `${name}.${key}`);

describe('what if', () => {
  const winch = measuredCold(asFound(slipwayWinch()));
  const plan = planner();
  const before = plan(winch);

  /** The plan is another one, and undo brings back what stood before. */
  function follows(edit: Edit, start: Job = winch, as: (job: Job) => string = plan): void {
    const store = createJobStore();
    store.getState().put(start);
    const stood = start === winch ? before : as(start);
    store.getState().edit(edit);
    expect(as(store.getState().job!)).not.toBe(stood);
    store.getState().undo();
    expect(store.getState().job).toBe(start);
  }

  afterAll(() => {
    // The same job, the same plan, whatever was looked at meanwhile.
    expect(plan(winch)).toBe(before);
  });

  it('walks every decision that a job can hold', () => {
    const { centre, between, grinding } = Decisions.entries;
    const keys = Object.keys(Decisions.entries).flatMap((key) => {
      if (key === 'centre') return inPart(key, centre.wrapped.entries);
      if (key === 'between') return inPart(key, between.wrapped.entries);
      if (key === 'grinding') return inPart(key, grinding.wrapped.entries);
      if (key === 'squeeze') return inPart(key, Squeeze.entries);
      if (key === 'shim') return inPart(key, Shim.entries);
      if (key === 'weld') return inPart(key, Weld.entries);
      return ['wayFigures', 'wayShares', 'pin', ...ELSEWHERE].includes(key) ? [] : [key];
    });
    expect(Object.keys(OF_BORE).sort()).toEqual(keys.sort());
    expect(Object.keys(FIGURES)).toEqual(WayFigure.options);
  });

  it.each(Object.entries(OF_BORE))('%s', (_, edit) => follows(edit));

  it.each(WayFigure.options.filter((key) => key !== 'turnDownMost'))('%s of the ways', (key) => {
    follows((job) => setWayFigure(job, 'f1', key, inch(FIGURES[key])));
  });

  it('sizes, fit wanted, seat and places to keep off', () => {
    follows((job) => setWanted(job, 'f1', 'pressFit', inch('0.003')));
    follows((job) => setBushingOutside(job, 'f1', 'b1', 0, inch('2.0100')));
    follows((job) => setDimension(job, 'f1', 'bossOutside', inch('3')));
    follows((job) => setBushing(job, 'f1', 'b1', 'to', inch('2.0')));
    follows((job) => setBushing(job, 'f1', 'b1', 'leadChamfer', inch('0.25')));
    const spot = { from: inch('0.5'), to: inch('0.9'), clock: '3', width: inch('0.3') };
    follows((job) => addKeepout(job, 'f1', { kind: 'other', face: 'A', ...spot }));
  });

  it('shares of the ways, by a bore with a partner on its pin', () => {
    const clevis = asFound(orchardLiftClevis());
    const as = planner();
    const values: Readonly<Record<WayShare, string>> = {
      acceptShare: '5',
      wallShare: '40',
      offShare: '10',
    };
    expect(Object.keys(values)).toEqual(WayShare.options);
    for (const key of WayShare.options)
      follows((job) => setWayShare(job, 'f1', key, values[key]), clevis, as);
  });

  it('every decision on a pin', () => {
    const shaft = asFound(sawmillRockerShaft());
    const as = planner();
    const { id } = shaft.features.find(({ kind }) => kind === 'pin')!;
    // Its ways are told and advised; none of them is chosen on the page.
    const { way, ...chosen } = OfPin.entries;
    const edits: Readonly<Record<keyof typeof chosen, Edit>> = {
      skin: (job) => setPin(job, id, 'skin', 'plated'),
      centres: (job) => setPin(job, id, 'centres', 'kept'),
      smaller: (job) => setPin(job, id, 'smaller', inch('2.200')),
    };
    expect(Object.keys(edits)).toEqual(Object.keys(chosen));
    for (const edit of Object.values(edits)) {
      follows(edit, shaft, as);
    }
    follows((job) => setDecision(job, id, { target: inch('2.26') }), shaft, as);
    follows((job) => setWayFigure(job, id, 'turnDownMost', inch(FIGURES.turnDownMost)), shaft, as);
  });
});
