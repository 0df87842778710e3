/** One line for each part of the fit, and whether the part wants something of the person or warns of something. */
import type { BushingFit } from '../evaluate/fit.ts';
import type { Units } from '../job/schema.ts';
import { clockWords, enoughTime, timeSaid } from './clockWords.ts';
import type { BushingPartName } from './fitAnswers.ts';
import { pressWords } from './pressWords.ts';
import { clearanceOf } from './runningShort.ts';
import { slipShort } from './slipShort.ts';
import { slipWords } from './slipWords.ts';
import { percentOf } from './wayWords.ts';
import { written } from './written.ts';

export interface PartLine {
  readonly says: string;
  /** It warns, or something is to be said before it can be told. */
  readonly calls: boolean;
}

/** @param open whether steps with heat may be told */
export function bushingLines(
  one: BushingFit,
  units: Units,
  open: boolean,
): Readonly<Record<BushingPartName, PartLine>> {
  return {
    press: pressLine(one, units),
    round: roundLine(one, units),
    running: runningLine(one, units),
    heat: heatLine(one, units, open),
    clock: clockLine(one, units, open),
  };
}

function pressLine({ press }: BushingFit, units: Units): PartLine {
  const { local, held } = press;
  const { alarms, missing } = pressWords(press, units);
  const { plain, across } = written(units, local.give);
  const calls = alarms.length > 0 || missing !== null;
  if (Number.isNaN(local.mean)) return { says: 'not known', calls };
  const share = Number.isNaN(held.likely)
    ? ''
    : `; ${percentOf(held.likely)} of the seat tight before it is pressed in`;
  return {
    says: `${plain(local.least)} least, ${plain(local.mean)} mean, ${across(local.greatest)} most${share}`,
    calls,
  };
}

function roundLine({ round: { fit } }: BushingFit, units: Units): PartLine {
  if (fit === null) return { says: 'not known', calls: true };
  if (!(fit.touching > 0)) return { says: 'touches nowhere', calls: true };
  const { perSide } = written(units, Number.NaN);
  return fit.widest.value > 0
    ? {
        says: `touches ${percentOf(fit.touching)} of its seat; widest gap ${perSide(fit.widest.value)}`,
        calls: false,
      }
    : { says: 'touches all of its seat', calls: false };
}

const VERDICTS = {
  stuck: 'the pin does not go in',
  tight: 'too tight',
  near: 'as wanted, as near as can be told',
  good: 'as wanted',
  wide: 'looser than wanted when new',
  worn: 'past worn out',
} as const;

function runningLine({ running }: BushingFit, units: Units): PartLine {
  const { pin, free, installed, measured } = running;
  const wrong = measured === null && free !== null && !(free.tightest > 0);
  if (pin === null) return { says: 'the pin is not measured', calls: true };
  if (installed === null) {
    return {
      says: wrong ? VERDICTS.stuck : 'not known',
      calls: true,
    };
  }
  return {
    says: `${clearanceOf(installed, units)}: ${VERDICTS[installed.verdict]}`,
    calls: !['good', 'near'].includes(installed.verdict) || wrong,
  };
}

function heatLine({ heat, press }: BushingFit, units: Units, open: boolean): PartLine {
  const { wrong } = slipWords({ heat, press }, units);
  const { is, must, by, lacks } = slipShort(heat, units, open);
  if (is === 'untold') {
    const loose = heat.fault === 'loose';
    return { says: loose ? 'it slips in by itself' : 'not known', calls: !loose };
  }
  const won = `${must} to be won`;
  return is === 'waits'
    ? { says: `${won}; the questions about heat are open`, calls: true }
    : {
        says: `${won}: ${by}${lacks === '' ? '' : `, ${lacks} short`}`,
        calls: lacks !== '' || wrong.length > 0 || tooHot(heat),
      };
}

/** Half a degree is how temperatures are written. */
function tooHot({ chosen, limits, mixed }: BushingFit['heat']): boolean {
  return (chosen !== null && chosen.off > limits.boss + 0.5) || mixed > limits.bushing;
}

function clockLine({ clock, heat, seated }: BushingFit, units: Units, open: boolean): PartLine {
  if (heat.fault === 'loose') return { says: 'no hurry', calls: false };
  if (slipShort(heat, units, open).is === 'waits') {
    return { says: 'the questions about heat are open', calls: false };
  }
  if (clock === null) {
    const { missing } = clockWords(clock, heat, seated, units);
    return { says: 'not known', calls: missing.length > 0 };
  }
  const enough = enoughTime(clock);
  const verdict = { always: 'enough', usually: 'enough as usual', never: 'not enough' }[enough];
  return {
    says: `${timeSaid(clock.usual.seconds)}, ${timeSaid(clock.soonest.seconds)} at the worst; ${clock.needs} needed: ${verdict}`,
    calls: enough !== 'always',
  };
}
