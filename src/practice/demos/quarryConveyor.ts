import {
  addSurvey,
  renameSurvey,
  setBushing,
  setDimension,
  setFeatureNote,
  setLoad,
  setPinDiameter,
  setSurveyText,
} from '../../job/edits.ts';
import type { Job } from '../../job/schema.ts';
import { measured, type Taking } from '../measured.ts';
import * as wear from '../wear.ts';
import { HOUR, mm, PAIRS, started } from './start.ts';

/** An oval at 1:30, which two angles do not see at all and six pairs do. */
export function quarryConveyor(): Job {
  const depths = ['5', '45', '85'];
  const length = 90;
  let job = started({
    id: 'demo-quarry-conveyor',
    title: 'Quarry conveyor, tail link',
    machine: 'Stone conveyor, tail tensioner',
    place: 'Harrow Sound quarry',
    bore: 'Link bore',
    units: 'mm',
    gauge: 'telescoping',
    length: '90',
    outside: '80.06',
    depths,
    clocks: ['12', '3'],
  });
  job = setDimension(job, 'f1', 'nominal', mm('80'));
  job = setDimension(job, 'f1', 'bossOutside', mm('125'));
  job = setBushing(job, 'f1', 'b1', 'inside', mm('65.15'));
  job = setPinDiameter(job, 'f1', 0, mm('64.96'));
  job = setPinDiameter(job, 'f1', 1, mm('64.95'));
  job = setLoad(job, 'f1', '1:30');
  job = setFeatureNote(job, 'f1', 'The belt pulls the link at an angle: half past one and back.');
  const bore = wear.wornBore(39.995, [
    wear.oval(0.3, 1.5 * HOUR, wear.between(1.05, 0.9, length)),
    wear.taper(-0.01, length),
  ]);
  const taking: Taking = {
    instrument: 'two-point',
    gauge: 'g1',
    depths,
    clocks: ['12', '3'],
    noise: 0.006,
    step: 0.01,
    decimals: 2,
    unit: 'mm',
    length,
    seed: 21,
  };
  job = renameSurvey(job, 'f1', 's1', 'As found, two angles');
  job = setSurveyText(job, 'f1', 's1', 'note', 'Looks round: 12–6 and 3–9 read alike.');
  job = measured(job, 'f1', 's1', bore, taking);
  job = addSurvey(job, 'f1', 'as-found', { name: 'As found, six pairs' });
  job = setSurveyText(
    job,
    'f1',
    's2',
    'note',
    'The plug did not go in, so all six pairs were read.',
  );
  return measured(job, 'f1', 's2', bore, { ...taking, clocks: PAIRS, seed: 22, repeatFirst: true });
}
