import {
  addKeepout,
  setBushing,
  setBushingOutside,
  setDimension,
  setFeatureNote,
  setGauge,
  setPinDiameter,
  setSurveyText,
} from '../../job/edits.ts';
import type { Job } from '../../job/schema.ts';
import { measured } from '../measured.ts';
import * as wear from '../wear.ts';
import { withOldParts } from './elevatorOldParts.ts';
import { HOUR, IN, inch, PAIRS, started, THOU } from './start.ts';

/** Fattest in the middle: a caliper at the mouth would call it good. Readings in thou over the set ring. */
export function elevatorHeadArm(): Job {
  const depths = ['0.20', '1.00', '1.75', '2.50', '3.30'];
  const length = 3.5 * IN;
  let job = started({
    id: 'demo-elevator-head-arm',
    title: 'Grain elevator, head arm',
    machine: 'Bucket elevator, head-shaft arm',
    place: 'Harrow Sound grain elevator',
    bore: 'Arm bore',
    units: 'in',
    gauge: 'dial-bore',
    length: '3.5',
    outside: '2.5065',
    depths,
    clocks: PAIRS,
  });
  job = setGauge(job, 'g1', { zeroedAt: inch('2.5000'), needle: 'larger' });
  job = setDimension(job, 'f1', 'nominal', inch('2.5'));
  job = setDimension(job, 'f1', 'bossOutside', inch('4'));
  job = setBushingOutside(job, 'f1', 'b1', 1, inch('2.5064'));
  job = setBushing(job, 'f1', 'b1', 'inside', inch('2.0070'));
  job = setBushing(job, 'f1', 'b1', 'length', inch('3.5'));
  job = setPinDiameter(job, 'f1', 0, inch('1.9990'));
  job = setPinDiameter(job, 'f1', 1, inch('1.9988'));
  job = addKeepout(job, 'f1', {
    kind: 'groove',
    name: 'Old grease groove',
    face: 'A',
    from: inch('1.55'),
    to: inch('1.65'),
  });
  job = setFeatureNote(
    job,
    'f1',
    'Grain dust worked in at the grease groove, where the bore is fattest.',
  );
  const bore = wear.wornBore(1.2505 * IN, [
    wear.barrel(5 * THOU, length),
    wear.oval(1.2 * THOU, 4 * HOUR),
  ]);
  job = measured(job, 'f1', 's1', bore, {
    instrument: 'two-point',
    gauge: 'g1',
    depths,
    clocks: PAIRS,
    noise: 0.15 * THOU,
    step: 0.1,
    decimals: 1,
    unit: 'thou',
    over: 2.5 * IN,
    length,
    seed: 31,
    repeatFirst: true,
  });
  job = setSurveyText(job, 'f1', 's1', 'note', 'Zeroed on a 2.5000 ring before and after.');
  return withOldParts(job);
}
