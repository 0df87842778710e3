import {
  addKeepout,
  addSurvey,
  setBossMaterial,
  setBushing,
  setBushingOutside,
  setBushingText,
  setDecision,
  setDimension,
  setFeatureNote,
  setLoad,
  setPinDiameter,
  setSafety,
  setSidePlace,
  setSurveyText,
  setWornSide,
} from '../../job/edits.ts';
import type { Job, Survey } from '../../job/schema.ts';
import { measured } from '../measured.ts';
import * as wear from '../wear.ts';
import { HOUR, IN, inch, PAIRS, started, THOU } from './start.ts';

const DEPTHS = ['0.15', '0.65', '1.35', '2.05', '2.60'];
const LENGTH = 2.75 * IN;
/** Bushing outside 2.0061 in as measured, less the usual press fit of 0.002 in. */
const TARGET = 2.0041 * IN;

/**
 * An egg-shaped, bell-mouthed bore through all its stages. The wear lies at 6 o'clock and the rim is worst;
 * squeezing closes 12–6, opens 3–9 a little and leaves every place under the target; a pass of the drum takes most
 * of what is left, and more at the mouth than it should; strip and edges brought it to its size; the last readings are of
 * the bushing's own bore, once that was pressed in.
 */
export function slipwayWinch(): Job {
  let job = clearedForHeat(parts());
  job = setWornSide(job, 'f1', 's1', '6');
  job = taken(job, 's1', asFound, 11, '2026-11-02', '');
  job = addSurvey(job, 'f1', 'after-squeezing');
  job = taken(
    job,
    's2',
    squeezed,
    12,
    '2026-11-04',
    'Two heats with the jaws across 12 and 6, heat at 3 and 9. Measured cold the next morning.',
  );
  job = roundAgain(job, 'pass');
  job = taken(
    job,
    's3',
    afterPass,
    13,
    '2026-11-05',
    'Sanding drum, stopped short, cooled and wiped.',
  );
  job = roundAgain(job, 'pass');
  job = taken(
    job,
    's4',
    finished,
    14,
    '2026-11-06',
    'Last readings of the bore, after strip and edges, just before the bushing went in.',
  );
  return taken(
    addSurvey(job, 'f1', 'fitted'),
    's5',
    bushed,
    15,
    '2026-11-07',
    'Of the bushing’s own bore, the next morning, all cold.',
  );
}

/** Once the grinder has been round there is no worn side to speak of. */
function roundAgain(job: Job, stage: Survey['stage']): Job {
  const next = addSurvey(job, 'f1', stage);
  return setWornSide(next, 'f1', next.features[0]!.surveys.at(-1)!.id, '');
}

function parts(): Job {
  let job = started({
    id: 'demo-slipway-winch',
    title: 'Slipway winch, pawl arm',
    machine: 'Slipway winch, hauling gear',
    place: 'Harrow Sound ferry landing',
    bore: 'Heel bore',
    units: 'in',
    gauge: 'telescoping',
    length: '2.75',
    outside: '2.0062',
    depths: DEPTHS,
    clocks: PAIRS,
  });
  job = setDimension(job, 'f1', 'nominal', inch('2'));
  job = setDimension(job, 'f1', 'bossOutside', inch('3 3/4'));
  job = setBossMaterial(job, 'f1', 'Plain steel, forged');
  job = setBushingOutside(job, 'f1', 'b1', 1, inch('2.0061'));
  job = setBushingOutside(job, 'f1', 'b1', 2, inch('2.0060'));
  job = setBushingText(job, 'f1', 'b1', 'name', 'New heel bushing');
  job = setBushingText(job, 'f1', 'b1', 'material', 'Hardened steel');
  job = setBushing(job, 'f1', 'b1', 'inside', inch('1.5060'));
  job = setBushing(job, 'f1', 'b1', 'length', inch('2.70'));
  job = setBushing(job, 'f1', 'b1', 'leadChamfer', inch('1/16'));
  ['1.4995', '1.4993', '1.4996'].forEach((text, place) => {
    job = setPinDiameter(job, 'f1', place, inch(text));
  });
  // Between the cheeks of the winch, and over the faces of the arm.
  ['2.795', '2.792'].forEach((text, place) => {
    job = setSidePlace(job, 'f1', 'between', place, inch(text));
  });
  job = setSidePlace(job, 'f1', 'width', 0, inch('2.745'));
  const hole = { from: inch('1.25'), to: inch('1.45'), clock: '10:30', width: inch('0.2') };
  job = addKeepout(job, 'f1', { kind: 'grease-hole', face: 'A', ...hole });
  job = addKeepout(job, 'f1', { kind: 'chamfer', face: 'A', from: inch('0'), to: inch('1/16') });
  job = addKeepout(job, 'f1', { kind: 'chamfer', face: 'B', from: inch('0'), to: inch('1/16') });
  job = setLoad(job, 'f1', '6');
  job = setDecision(job, 'f1', { way: 'squeeze', centre: { rule: 'free' } });
  return setFeatureNote(
    job,
    'f1',
    'The pawl drops on the same side every time; the old bushing could be pushed out by hand.',
  );
}

/** Drained, stripped, plain steel, carries nobody: the answers under which a hot step may be looked at. */
function clearedForHeat(job: Job): Job {
  let next = setSafety(job, 'openAndClean', 'yes');
  next = setSafety(next, 'sealsAndPlatingOut', 'yes');
  next = setSafety(next, 'metal', 'plain-steel');
  return setSafety(next, 'carriesPeople', 'no');
}

const rim = wear.mouth('exponential', 0.45 * IN, 'A', LENGTH);
const drum = wear.mouth('quadratic', 0.5 * IN, 'A', LENGTH);

const asFound = wear.wornBore(IN, [
  wear.crescent(IN, THOU, THOU, Math.PI, (z) => 5.2 + 9.5 * rim(z)),
  wear.round(1.5 * THOU, rim),
  wear.lobes(3, 0.15 * THOU, 1),
]);

const squeezed = wear.wornBore(1.0004 * IN, [
  wear.round(0.6 * THOU, rim),
  wear.oval(1.2 * THOU, 3.2 * HOUR, (z) => 0.6 + 1.1 * rim(z)),
  wear.lobes(4, 0.15 * THOU, 0.4),
]);

/** Some six tenths of what was left, not everywhere the same, and the mouth rounded over by the drum. */
const afterPass: wear.Truth = (theta, z) => {
  const left = TARGET / 2 - squeezed(theta, z);
  const hand = 0.62 + 0.1 * Math.cos(theta - 1) + 0.05 * Math.cos((3 * z) / IN);
  return squeezed(theta, z) + left * hand + 0.15 * THOU * drum(z);
};

const finished = wear.wornBore(TARGET / 2, [
  wear.round(0.25 * THOU, drum),
  wear.oval(0.4 * THOU, 2 * HOUR),
  wear.lobes(3, 0.08 * THOU, 0.2),
  wear.round(-0.1 * THOU, wear.throughout),
]);

/** Some two thirds of 0.002 in of press fit close it, and nearly all of the oval goes through. */
const bushed = wear.wornBore(0.7523 * IN, [
  wear.oval(0.3 * THOU, 2 * HOUR),
  wear.round(0.1 * THOU, drum),
]);

function taken(
  job: Job,
  surveyId: string,
  truth: wear.Truth,
  seed: number,
  when: string,
  note: string,
): Job {
  let next = setSurveyText(job, 'f1', surveyId, 'when', when);
  next = setSurveyText(next, 'f1', surveyId, 'note', note);
  return measured(next, 'f1', surveyId, truth, {
    instrument: 'two-point',
    gauge: 'g1',
    depths: DEPTHS,
    clocks: PAIRS,
    noise: 0.25 * THOU,
    step: 0.0001,
    decimals: 4,
    unit: 'in',
    length: LENGTH,
    seed,
    repeatFirst: true,
  });
}
