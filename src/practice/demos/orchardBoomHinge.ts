import {
  addGauge,
  addSurvey,
  renameSurvey,
  setDimension,
  setFeatureNote,
  setSurveyText,
} from '../../job/edits.ts';
import type { Job } from '../../job/schema.ts';
import { measured, type Taking } from '../measured.ts';
import * as wear from '../wear.ts';
import { HOUR, HOURS, mm, PAIRS, started } from './start.ts';

/** Three lobes: diameters alike all round, and a plug of that size does not go in. Radii show why. */
export function orchardBoomHinge(): Job {
  const depths = ['4', '22', '41'];
  const length = 45;
  let job = started({
    id: 'demo-orchard-boom-hinge',
    title: 'Orchard sprayer, boom hinge',
    machine: 'Orchard sprayer, folding boom',
    place: 'Harrow Sound orchards',
    bore: 'Hinge bore',
    units: 'mm',
    gauge: 'telescoping',
    length: '45',
    outside: '40.08',
    depths,
    clocks: PAIRS,
  });
  job = addGauge(job, 'centred-pin');
  job = setDimension(job, 'f1', 'nominal', mm('40'));
  job = setDimension(job, 'f1', 'bossOutside', mm('62'));
  job = setFeatureNote(job, 'f1', 'Somebody bored it in a three-jaw chuck and pulled it up hard.');
  const bore = wear.wornBore(20, [
    wear.lobes(3, 0.045, 2 * HOUR, wear.between(1, 0.8, length)),
    wear.oval(0.016, 0),
  ]);
  const taking: Taking = {
    instrument: 'two-point',
    gauge: 'g1',
    depths,
    clocks: PAIRS,
    noise: 0.005,
    step: 0.01,
    decimals: 2,
    unit: 'mm',
    length,
    seed: 41,
  };
  job = renameSurvey(job, 'f1', 's1', 'As found, diameters');
  job = setSurveyText(job, 'f1', 's1', 'note', 'Round within 0.02, and the plug will not enter.');
  job = measured(job, 'f1', 's1', bore, taking);
  job = addSurvey(job, 'f1', 'as-found', { name: 'As found, from a centred pin' });
  job = setSurveyText(job, 'f1', 's2', 'note', 'Radii from a pin centred in the far end.');
  return measured(job, 'f1', 's2', bore, {
    ...taking,
    instrument: 'radius',
    gauge: 'g2',
    clocks: HOURS,
    offset: { x: 0.008, y: -0.005 },
    seed: 42,
  });
}
