/** What a made-up pattern is held against: the bore on the bench where it shows a shape, else a bore of usual size. */
import { useMemo } from 'react';
import { type CountedFromNew, countedFromNew, departure } from '../../figures/heldAgainst.ts';
import type { Units } from '../../job/schema.ts';
import { useBench } from '../../store/useBench.ts';
import type { Worked } from '../plan/worked.ts';

export interface Held {
  readonly units: Units;
  /** mm. */
  readonly radius: number;
  readonly length: number;
  /** How far the bore at hand departs from new, per side, mm; NaN: no bore is at hand. */
  readonly size: number;
  /** Null where no bore with a shape is on the bench. */
  readonly own: { readonly bench: Worked; readonly counted: CountedFromNew } | null;
}

/** A bore such as the trade sees every week, where none is at hand; mm. */
const USUAL: Readonly<Record<Units, { readonly radius: number; readonly length: number }>> = {
  in: { radius: 25.4, length: 63.5 },
  mm: { radius: 25, length: 60 },
};
/** Less wear than this, per side, cannot be told from none: mm. */
const LEAST = 0.005;

export function useHeld(): Held {
  const bench = useBench();
  return useMemo(() => {
    const units = bench?.job.units ?? 'mm';
    const none = { units, ...USUAL[units], size: Number.NaN, own: null };
    if (bench === null || bench.bore.kind !== 'bore') return none;
    const { boreSeen, surveySeen } = bench;
    if (boreSeen === null || surveySeen === null) return none;
    const counted = countedFromNew(surveySeen, boreSeen.facts);
    const length = boreSeen.facts.length.mm;
    if (counted === null || !(length > 0)) return none;
    const size = departure(counted);
    return {
      units,
      radius: counted.radius,
      length,
      size: size > LEAST ? size : Number.NaN,
      own: { bench: { ...bench, boreSeen, surveySeen }, counted },
    };
  }, [bench]);
}
