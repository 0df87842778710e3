import {
  addGauge,
  addKeepout,
  addLand,
  addSurvey,
  setBushing,
  setDimension,
  setFeatureNote,
  setKeepout,
  setMending,
  setPin,
  setSafety,
  setSurveyText,
} from '../../job/edits.ts';
import { layPlan } from '../../job/layPlan.ts';
import { addMeasured } from '../../job/partEdits.ts';
import type { Job } from '../../job/schema.ts';
import { measured, type Taking } from '../measured.ts';
import * as wear from '../wear.ts';
import { done, HOUR, HOURS, IN, inch, PAIRS, started, THOU } from './start.ts';

const LENGTH = 8 * IN;
const OF_BORE = ['0.20', '1.00', '1.80'];
const FOUND = ['0.60', '0.85', '1.75', '2.65', '4.00', '5.35', '6.25', '7.15'];
const WELDED = ['0.80', '1.75', '2.70', '5.30', '6.25', '7.20'];

/**
 * A shaft worn where it rocks in two bearings, and the same shaft welded up: one place in the middle of a stretch and one
 * at an edge are still too low for the lathe.
 */
export function sawmillRockerShaft(): Job {
  let job = started({
    id: 'demo-sawmill-rocker-shaft',
    title: 'Sawmill carriage, rocker shaft',
    machine: 'Log carriage, set works',
    place: 'Harrow Sound sawmill',
    bore: 'Left bearing',
    units: 'in',
    gauge: 'telescoping',
    length: '2',
    outside: '2.7540',
    depths: OF_BORE,
    clocks: PAIRS,
  });
  job = setDimension(job, 'f1', 'nominal', inch('2.75'));
  job = setDimension(job, 'f1', 'bossOutside', inch('4'));
  job = setBushing(job, 'f1', 'b1', 'inside', inch('2.2570'));
  job = measured(job, 'f1', 's1', wear.wornBore(1.3755 * IN, [wear.oval(2 * THOU, 0)]), {
    ...micrometer('g1', 61),
    depths: OF_BORE,
    length: 2 * IN,
  });
  job = shaft(job);
  job = setSafety(job, 'openAndClean', 'yes');
  job = setSafety(job, 'sealsAndPlatingOut', 'yes');
  job = setSafety(job, 'metal', 'plain-steel');
  return setSafety(job, 'carriesPeople', 'no');
}

function shaft(start: Job): Job {
  let job = done(addMeasured(start, 'pin', 'Rocker shaft'));
  const { id, surveys } = job.features.at(-1)!;
  const [found] = surveys;
  job = setDimension(job, id, 'nominal', inch('2.2500'));
  job = setDimension(job, id, 'length', inch('8'));
  for (const [name, from, to, runsIn] of [
    ['Left stretch', '0.75', '2.75', 'f1'],
    ['Right stretch', '5.25', '7.25', undefined],
  ] as const) {
    const land = { name, face: 'A' as const, from: inch(from), to: inch(to) };
    job = done(addLand(job, id, runsIn === undefined ? land : { ...land, runsIn }));
  }
  const at = (from: string, to: string) => ({ face: 'A' as const, from: inch(from), to: inch(to) });
  const hole = { ...at('1.60', '1.85'), clock: '10:30', width: inch('0.25') };
  job = addKeepout(job, id, { kind: 'grease-hole', ...hole });
  job = addKeepout(job, id, { kind: 'thread', name: 'Thread of the end nut', ...at('7.50', '8') });
  job = addKeepout(job, id, { kind: 'groove', name: 'Keeper slot', ...at('0.15', '0.40') });
  const thread = job.features.at(-1)!.keepouts[1]!;
  job = setKeepout(job, id, thread.id, { guarded: true });
  job = setPin(job, id, 'skin', 'plain');
  job = setPin(job, id, 'way', 'weld');
  job = setMending(job, id, 'weld', 'carbon', '0.42');
  job = setFeatureNote(job, id, 'The keeper holds it: it wears at the bottom only.');
  job = asFound(job, id, found!.id, found!.plan.gauge);
  return weldedUp(job, id);
}

const inStretches = (z: number) =>
  Number((z > 0.75 * IN && z < 2.75 * IN) || (z > 5.25 * IN && z < 7.25 * IN));

function asFound(start: Job, id: string, surveyId: string, gauge: string): Job {
  let job = laid(start, id, surveyId, FOUND, PAIRS);
  job = setSurveyText(job, id, surveyId, 'note', 'Across, by micrometer.');
  const truth = wear.wornBore(1.12495 * IN, [
    wear.rubbed(42 * THOU, Math.PI, (z) => inStretches(z) * (z < LENGTH / 2 ? 1 : 0.8)),
  ]);
  return measured(job, id, surveyId, truth, {
    ...micrometer(gauge, 62),
    depths: FOUND,
  });
}

/** About 60 thou above the finished size, uneven as weld is. */
function weldedUp(start: Job, id: string): Job {
  let job = addGauge(start, 'between-centres');
  const gauge = job.gauges.at(-1)!.id;
  job = addSurvey(job, id, 'after-build-up');
  const { id: surveyId } = job.features.at(-1)!.surveys.at(-1)!;
  job = laid(job, id, surveyId, WELDED, HOURS);
  job = setSurveyText(job, id, surveyId, 'note', 'Cold, between centres, the day after.');
  const radius = 1.125 * IN;
  const place = (theta: number, z: number, halfLength: number) => ({
    theta,
    z: z * IN,
    halfWidth: 0.9 * IN,
    halfLength: halfLength * IN,
  });
  const truth = wear.wornBore(radius + 60 * THOU, [
    wear.lobes(3, 5 * THOU, 1),
    wear.oval(12 * THOU, 2 * HOUR),
    wear.gouge(-78 * THOU, radius, place(9 * HOUR, 6.25, 0.8)),
    wear.gouge(-85 * THOU, radius, place(4 * HOUR, 0.75, 0.7)),
  ]);
  return measured(job, id, surveyId, truth, {
    ...micrometer(gauge, 63),
    instrument: 'radius',
    depths: WELDED,
    clocks: HOURS,
    noise: 0.5 * THOU,
    step: 0.0005,
  });
}

function laid(
  job: Job,
  id: string,
  surveyId: string,
  depths: readonly string[],
  clocks: readonly string[],
): Job {
  return layPlan(job, id, surveyId, { clocks, depths: depths.map(inch), short: false });
}

function micrometer(gauge: string, seed: number): Taking {
  return {
    instrument: 'two-point',
    gauge,
    depths: FOUND,
    clocks: PAIRS,
    noise: 0.15 * THOU,
    step: 0.0001,
    decimals: 4,
    unit: 'in',
    length: LENGTH,
    seed,
  };
}
