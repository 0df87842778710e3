/** What a job says of how freely a pin is to run in its bushing, across, mm; the usual figure where nothing is said. */
import { defaultClearanceMm } from './defaults.ts';
import type { Known } from './facts.ts';
import type { Feature } from './schema.ts';
import { lengthMm } from './units.ts';

export interface RunningFacts {
  /** With the bushing in, at the tightest place. */
  readonly least: Known;
  /** When new, at the loosest place. */
  readonly most: Known;
  /** From which on it is worn out. */
  readonly worn: Known;
  /** What was typed and cannot be: one sentence each. */
  readonly wrong: readonly string[];
}

/** Across, mm: less is not worth honing. 0.0001 in, judgement. */
export const WORTH_HONING = 0.0025;

/** Judgement, from published pairs: about twice from least to most when new, and three to sixteen times to the limit. */
const MOST_OF_LEAST = 2;
const WORN_OF_LEAST = 3;

/** @param pin across, mm; NaN: not known, and nor are the usual figures */
export function runningFacts(
  { wanted, decisions: { fit = {} } }: Feature,
  pin: number,
): RunningFacts {
  const least = known(lengthMm(wanted.clearance), defaultClearanceMm(pin));
  const most = known(lengthMm(fit.clearanceMost), MOST_OF_LEAST * least.mm);
  const worn = known(lengthMm(fit.clearanceWorn), WORN_OF_LEAST * least.mm);
  const wrong: string[] = [];
  if (most.mm < least.mm) {
    wrong.push(
      'The most running clearance when new is less than the least: no bushing can be as wanted. Look at both.',
    );
  }
  if (worn.mm < most.mm) {
    wrong.push(
      'The clearance at which it is worn out is less than the most when new: a new joint would count as worn. Look at both.',
    );
  }
  return { least, most, worn, wrong };
}

function known(typed: number, usual: number): Known {
  if (typed >= 0) return { mm: typed, from: 'typed' };
  return { mm: usual, from: Number.isNaN(usual) ? 'missing' : 'default' };
}
