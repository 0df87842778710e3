/**
 * The readings most worth taking: what each would do to the removal map, exact, and without solving anew.
 *
 * How sure the surface is does not depend on what a reading will say, only on where and with what it is taken.
 */

import type { AtHand } from '../job/atHand.ts';
import { followsBore } from './centre.ts';
import { design } from './design.ts';
import { freeSpread } from './frame.ts';
import { freshSet, places } from './nextPlaces.ts';
import type { MapAsked, NextReading } from './nextTypes.ts';
import { meanSd, meanSdAfterEach } from './oneMore.ts';
import { condition, type Posterior } from './posterior.ts';
import { type Keepout, type Span, wallPlaces } from './removal.ts';
import { betweenRows, gridSpread, variances } from './surface.ts';
import { bestTogether } from './together.ts';
import type { Field, SetupPrior, Sighting, Target, WearSurface } from './types.ts';

export interface WhatNext {
  /** Single readings, the best first. */
  readonly readings: readonly NextReading[];
  /** Set-ups not made yet, as a whole; the best first. */
  readonly setups: readonly NextReading[];
}

export const NOTHING_NEXT: WhatNext = { readings: [], setups: [] };

export function whatNext(p: Posterior, asked: MapAsked, hand: readonly AtHand[]): WhatNext {
  return { readings: nextReadings(p, asked, hand), setups: nextSetups(p, asked, hand) };
}

/** How many single readings are told of. */
const TOLD = 5;

/**
 * Single readings worth taking, the best first: together they do most, and no two do the same work. `after` is what each
 * would do by itself.
 *
 * @param hand gauges that may be used
 * @param told how many at most
 * @returns nothing where no place counts; how little a reading may do is for the reader to judge
 */
export function nextReadings(
  p: Posterior,
  asked: MapAsked,
  hand: readonly AtHand[],
  told: number = TOLD,
): NextReading[] {
  const before = meanSd(sdOf(p, asked), asked.counts);
  if (!(before > 0)) return [];
  const all = places(p.design, hand);
  const everywhere = all.map(({ sighting }) => sighting);
  const best = bestTogether(p, asked, everywhere, told).map((j) => all[j]!);
  const sightings = best.map(({ sighting }) => sighting);
  const after = meanSdAfterEach(p, asked, sightings);
  return best
    .map(({ hand: { gauge, name, instrument }, sighting: { theta, z } }, j) => {
      return { gauge, name, instrument, clocks: [theta], depths: [z], before, after: after[j]! };
    })
    .filter((one) => one.after < before);
}

/** Set-ups not made yet, each as a whole, the best first. */
function nextSetups(p: Posterior, asked: MapAsked, hand: readonly AtHand[]): NextReading[] {
  const before = meanSd(sdOf(p, asked), asked.counts);
  return hand
    .flatMap((one) => wholeSet(p, asked, one, before))
    .filter((one) => one.after < before)
    .sort((a, b) => a.after - b.after);
}

/** As if those readings were taken too: how sure the surface is then, whatever they will say. */
function withMore(
  p: Posterior,
  more: readonly Sighting[],
  setups: readonly SetupPrior[] = p.design.setups,
): Posterior | null {
  const both = design([...p.design.sightings, ...more], setups, p.design.length, p.design.wornSide);
  return condition(both, p.smoothness, p.base);
}

/** The map as it is drawn: where the bushing sits, nothing in a keepout; while no target is known, its centre free. */
export function mapAsked(
  surface: WearSurface,
  target: Target | null,
  { seats, keepouts }: { readonly seats: readonly Span[]; readonly keepouts: readonly Keepout[] },
): MapAsked {
  const frame = target === null || followsBore(target.centreRule) ? 'free' : 'kept';
  return { grid: surface.grid, frame, counts: wallPlaces(surface, seats, keepouts) };
}

/** Standard deviation of the deviation at every place of the map, mm per side. */
export function sdOf(p: Posterior, { grid, frame }: MapAsked): Field {
  const spread = gridSpread(p, grid);
  if (frame === 'free') return freeSpread(p, grid, spread);
  return betweenRows(
    spread.spreads.map((one) => variances(one, p, spread.basis).all),
    grid,
  );
}

/** A set-up not made yet, solved with all its readings: too many for one update after the other. */
function wholeSet(p: Posterior, asked: MapAsked, one: AtHand, before: number): NextReading[] {
  if (one.fresh === null) return [];
  const { setups, length } = p.design;
  const set = freshSet(one, length, setups.length);
  if (set.sightings.length === 0) return [];
  const after = withMore(p, set.sightings, [...setups, one.fresh]);
  if (after === null) return [];
  const { gauge, name, instrument } = one;
  const { clocks, depths } = set;
  const narrowed = meanSd(sdOf(after, asked), asked.counts);
  return [{ gauge, name, instrument, clocks, depths, before, after: narrowed }];
}
