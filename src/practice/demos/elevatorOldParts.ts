import { setDimension, setSurveyText } from '../../job/edits.ts';
import { layPlan } from '../../job/layPlan.ts';
import { addMeasured } from '../../job/partEdits.ts';
import type { Feature, Job } from '../../job/schema.ts';
import { measured } from '../measured.ts';
import * as wear from '../wear.ts';
import { done, HOUR, IN, inch, PAIRS, THOU } from './start.ts';

/** Towards 5 o'clock, where the head shaft pulls. */
const SIDE = 5 * HOUR;
const OF_BUSHING = ['0.30', '1.75', '3.20'];
const BUSHING_LENGTH = 3.5 * IN;
/** Both ends stuck out of the arm and never ran. */
const OF_PIN = ['0.30', '1.20', '2.40', '3.60', '4.60'];
const PIN_LENGTH = 4.9 * IN;

/** The pin and the bushing that came out: worn along one line, as with a pin that its keeper holds. */
export function withOldParts(start: Job): Job {
  let job = part(start, 'pin', 'Head pin', '2.0000', '4.9');
  job = taken(
    job,
    OF_PIN,
    PIN_LENGTH,
    32,
    wear.wornBore(0.9997 * IN, [
      wear.rubbed(6.5 * THOU, SIDE, (z) => Number(z > 0.7 * IN && z < 4.2 * IN)),
    ]),
  );
  job = note(job, 'Both ends of it never ran: they show its old size.');
  job = part(job, 'bushing-inside', 'Old bushing, inside', '2.0070', '3.5');
  job = taken(
    job,
    OF_BUSHING,
    BUSHING_LENGTH,
    33,
    wear.wornBore(1.0035 * IN, [
      wear.crescent(1.0035 * IN, 19 * THOU, 3 * THOU, SIDE, wear.between(1, 0.85, BUSHING_LENGTH)),
    ]),
  );
  job = part(job, 'bushing-outside', 'Old bushing, outside', '2.5060', '3.5');
  return taken(
    job,
    OF_BUSHING,
    BUSHING_LENGTH,
    34,
    wear.wornBore(1.2526 * IN, [wear.oval(0.8 * THOU, SIDE)]),
  );
}

function part(job: Job, kind: Feature['kind'], name: string, nominal: string, length: string): Job {
  let next = done(addMeasured(job, kind, name));
  const { id } = next.features.at(-1)!;
  next = setDimension(next, id, 'nominal', inch(nominal));
  return setDimension(next, id, 'length', inch(length));
}

function note(job: Job, text: string): Job {
  const { id, surveys } = job.features.at(-1)!;
  return setSurveyText(job, id, surveys[0]!.id, 'note', text);
}

/** Six clock pairs at each depth of the last part, with the gauge that its survey is planned for. */
function taken(
  job: Job,
  depths: readonly string[],
  length: number,
  seed: number,
  truth: wear.Truth,
): Job {
  const { id, surveys } = job.features.at(-1)!;
  const survey = surveys[0]!;
  const laid = layPlan(job, id, survey.id, {
    clocks: PAIRS,
    depths: depths.map(inch),
    short: false,
  });
  return measured(laid, id, survey.id, truth, {
    instrument: 'two-point',
    gauge: survey.plan.gauge,
    depths,
    clocks: PAIRS,
    noise: 0.15 * THOU,
    step: 0.0001,
    decimals: 4,
    unit: 'in',
    length,
    seed,
  });
}
