/**
 * What follows from where readings were taken and how smooth the bore is, whatever they say: all that is not known, above
 * all. While a value is typed over it stays as it is, exactly, and is not worked out again.
 */
import { type Design, design } from './design.ts';
import type { Posterior } from './posterior.ts';
import type { Pressed } from './pressed.ts';
import type { SetupPrior, Sighting, Smoothness } from './types.ts';

/**
 * A thing that depends on a posterior's places and smoothness, and on a detail in words, alone.
 * @returns gives it, made once as long as those two are the very same
 */
export function valueFree<T>(): (p: Posterior, detail: string, make: () => T) => T {
  const kept = new WeakMap<Pressed, WeakMap<Smoothness, Map<string, T>>>();
  return ({ design: { pressed }, smoothness }, detail, make) => {
    const ofPlaces = kept.get(pressed) ?? new WeakMap<Smoothness, Map<string, T>>();
    kept.set(pressed, ofPlaces);
    const known = ofPlaces.get(smoothness) ?? new Map<string, T>();
    ofPlaces.set(smoothness, known);
    const before = known.get(detail);
    if (before !== undefined) return before;
    const made = make();
    known.set(detail, made);
    return made;
  };
}

/** The same design for other values where nothing else changed; else a new one. @param before null: none */
export function designAgain(
  before: Design | null,
  sightings: readonly Sighting[],
  setups: readonly SetupPrior[],
  length: number,
  wornSide: number,
): Design {
  const same =
    before !== null &&
    before.length === length &&
    Object.is(before.wornSide, wornSide) &&
    before.sightings.length === sightings.length &&
    before.sightings.every((s, i) => samePlace(s, sightings[i]!)) &&
    JSON.stringify(before.setups) === JSON.stringify(setups);
  return same ? { ...before, sightings } : design(sightings, setups, length, wornSide);
}

function samePlace(a: Sighting, b: Sighting): boolean {
  return (
    a.instrument === b.instrument &&
    a.setup === b.setup &&
    a.theta === b.theta &&
    a.z === b.z &&
    a.sd === b.sd &&
    a.sdStated === b.sdStated
  );
}
