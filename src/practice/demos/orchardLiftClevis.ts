import {
  addBushing,
  addFeature,
  addGauge,
  addSurvey,
  removeDepth,
  setBushing,
  setBushingOutside,
  setDimension,
  setLoad,
  setPinDiameter,
  setPlace,
  setPlanFace,
  setSurveyText,
  setWanted,
} from '../../job/edits.ts';
import type { Job } from '../../job/schema.ts';
import { measured, type Taking } from '../measured.ts';
import * as wear from '../wear.ts';
import { done, HOUR, mm, PAIRS, started } from './start.ts';

/** Two ears on one pin; the long one has a bushing in each end and is read with a caliper from both faces. */
export function orchardLiftClevis(): Job {
  let job = started({
    id: 'demo-orchard-lift-clevis',
    title: 'Orchard mower, lift clevis',
    machine: 'Orchard mower, lift arm clevis',
    place: 'Harrow Sound orchards',
    bore: 'Left ear',
    units: 'mm',
    gauge: 'telescoping',
    length: '25',
    outside: '45.06',
    depths: ['4', '12', '21'],
    clocks: PAIRS,
  });
  job = addGauge(job, 'caliper');
  job = setDimension(job, 'f1', 'nominal', mm('45'));
  job = setDimension(job, 'f1', 'bossOutside', mm('75'));
  job = setPlace(job, 'f1', 'station', mm('0'));
  job = setLoad(job, 'f1', '5');
  job = setBushing(job, 'f1', 'b1', 'inside', mm('38.30'));
  job = setBushing(job, 'f1', 'b1', 'length', mm('25'));
  // Slow, greased and seldom straight: more room than a close pin has.
  job = setWanted(job, 'f1', 'clearance', mm('0.25'));
  job = setPinDiameter(job, 'f1', 0, mm('37.98'));
  job = setPinDiameter(job, 'f1', 1, mm('37.96'));
  const leftEar = wear.wornBore(22.49, [
    wear.crescent(22.49, 0.11, 0.02, 5 * HOUR, wear.between(1, 0.6, 25)),
  ]);
  job = measured(job, 'f1', 's1', leftEar, {
    instrument: 'two-point',
    gauge: 'g1',
    depths: ['4', '12', '21'],
    clocks: PAIRS,
    noise: 0.008,
    step: 0.01,
    decimals: 2,
    unit: 'mm',
    length: 25,
    seed: 51,
  });
  return rightEar(job);
}

function rightEar(start: Job): Job {
  const length = 80;
  let job = done(addFeature(start, 'bore', 'Right ear'));
  job = setDimension(job, 'f2', 'nominal', mm('45'));
  job = setDimension(job, 'f2', 'length', mm('80'));
  job = setDimension(job, 'f2', 'bossOutside', mm('75'));
  job = setPlace(job, 'f2', 'station', mm('140'));
  job = setPlace(job, 'f2', 'y', mm('-0.1'));
  job = setWanted(job, 'f2', 'clearance', mm('0.25'));
  job = setLoad(job, 'f2', '5');
  job = done(addBushing(job, 'f2', 'A', 'Bushing from face A'));
  job = done(addBushing(job, 'f2', 'B', 'Bushing from face B'));
  for (const [id, outside] of [
    ['b2', '45.05'],
    ['b3', '45.06'],
  ] as const) {
    job = setBushingOutside(job, 'f2', id, 0, mm(outside));
    job = setBushing(job, 'f2', id, 'from', mm('0'));
    job = setBushing(job, 'f2', id, 'to', mm('30'));
    job = setBushing(job, 'f2', id, 'inside', mm('38.30'));
    job = setBushing(job, 'f2', id, 'length', mm('30'));
  }
  const bore = wear.wornBore(22.49, [
    wear.round(0.05, wear.mouth('quadratic', 25, 'A', length)),
    wear.round(0.07, wear.mouth('quadratic', 25, 'B', length)),
    wear.oval(0.16, 5 * HOUR, wear.between(0.5, 1, length)),
  ]);
  const taking: Taking = {
    instrument: 'two-point',
    gauge: 'g2',
    depths: ['4', '12'],
    clocks: PAIRS,
    noise: 0.02,
    step: 0.01,
    decimals: 2,
    unit: 'mm',
    length,
    seed: 52,
  };
  job = addSurvey(job, 'f2', 'as-found');
  // of the five usual depths the ends and the middle
  job = done(removeDepth(job, 'f2', 's2', 3));
  job = done(removeDepth(job, 'f2', 's2', 1));
  job = setSurveyText(
    job,
    'f2',
    's2',
    'note',
    'The caliper reaches 16 mm, so each end was read from its own face. The middle was not reached.',
  );
  job = measured(job, 'f2', 's2', bore, taking);
  job = measured(job, 'f2', 's2', bore, { ...taking, face: 'B', seed: 53 });
  return setPlanFace(job, 'f2', 's2', 'A');
}
