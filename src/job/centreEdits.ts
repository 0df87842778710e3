/** Edits of where the target stands: the rule for its centre, and the axis that is set by hand. */
import { findFeature, withKeys } from './change.ts';
import { setDecision } from './featureEdits.ts';
import type { Decisions, Job, Typed, Units } from './schema.ts';
import { inUnits, lengthMm } from './units.ts';

type Centre = NonNullable<Decisions['centre']>;

/** A straight axis in the bore's frame: x to 3 o'clock and y to 12 at face A, mm; sideways per mm of depth. */
export interface Straight {
  readonly x: number;
  readonly y: number;
  readonly leanX: number;
  readonly leanY: number;
}

/** A move by hand is kept finer than anyone grinds, so that moves one after the other lose nothing. */
const DECIMALS: Readonly<Record<Units, number>> = { in: 5, mm: 4 };

/** A length as the page would have typed it. */
export function typedOf(mm: number, units: Units): Typed {
  return { text: inUnits(mm, units).toFixed(DECIMALS[units]), unit: units };
}

/**
 * Chooses the rule. One that is set by hand for the first time begins at `axis`.
 *
 * @param axis where the target stands now; null: nowhere yet, which is the readings' own axis
 * @param length of the bore, mm
 */
export function chooseCentre(
  job: Job,
  featureId: string,
  rule: Centre['rule'],
  axis: Straight | null,
  length: number,
): Job {
  const centre = findFeature(job, featureId)?.decisions.centre ?? { rule };
  const chosen = setDecision(job, featureId, { centre: { ...centre, rule } });
  const typed = [centre.x, centre.y, centre.leanX, centre.leanY];
  const set = !typed.every((one) => Number.isNaN(lengthMm(one)));
  if (rule !== 'by-hand' || set || axis === null) return chosen;
  return setHand(chosen, featureId, {
    x: axis.x,
    y: axis.y,
    leanX: axis.leanX * length,
    leanY: axis.leanY * length,
  });
}

/** What of the axis is set by hand: x and y at face A, and the run-off of each over the bore's length; mm. */
export type ByHand = Partial<Straight>;

/** Sets the axis by hand, and so chooses that rule; what is not given stays as it is. */
export function setHand(job: Job, featureId: string, by: ByHand): Job {
  const centre: Centre = { ...findFeature(job, featureId)?.decisions.centre, rule: 'by-hand' };
  return setDecision(job, featureId, { centre: withKeys(centre, typedAll(by, job.units)) });
}

function typedAll(by: ByHand, units: Units): Partial<Record<keyof Straight, Typed>> {
  const typed = Object.entries(by).map(([key, mm]) => [key, typedOf(mm, units)]);
  return Object.fromEntries(typed) as Partial<Record<keyof Straight, Typed>>;
}
