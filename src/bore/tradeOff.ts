/** What each size of target costs and leaves: metal off, seat held, worst gap. */

import { type FreeRule, freeAxes } from './centre.ts';
import { removalMap } from './removal.ts';
import { type Fit, type Seating, seating, seatPlaces } from './seating.ts';
import { deviationFrom } from './target.ts';
import type { Axis, Field, WearSurface } from './types.ts';

/** One target diameter: what would come off, and what a bushing would sit on. */
export interface TradeOffPoint extends Seating {
  /** Across, mm. */
  readonly diameter: number;
  /** Grams, as in `Removal`. */
  readonly mass: number;
  readonly sureMass: number;
  readonly possibleMass: number;
}

export interface TradeOffAsked {
  readonly surface: WearSurface;
  /** Standard deviation of the deviation in the target's frame, which no size changes. */
  readonly sd: Field;
  /** Where the target stands; a rule: it moves by that to the best of each size. */
  readonly axis: Axis | FreeRule;
  readonly seats: Parameters<typeof seatPlaces>[1];
  readonly keepouts: Parameters<typeof seatPlaces>[2];
  readonly fit: Omit<Fit, 'target'>;
}

/** @param diameters ascending, across, mm */
export function tradeOff(asked: TradeOffAsked, diameters: readonly number[]): TradeOffPoint[] {
  const { surface, sd, seats, keepouts, fit } = asked;
  const wall = seatPlaces(surface, seats, keepouts);
  const axes =
    typeof asked.axis === 'string'
      ? freeAxes(
          surface,
          diameters.map((d) => d / 2),
          wall.places,
          asked.axis,
        )
      : diameters.map(() => asked.axis as Axis);
  return diameters.map((diameter, at) => {
    const deviation = deviationFrom(surface, diameter / 2, axes[at]!);
    const { mass, sureMass, possibleMass } = removalMap(surface, deviation, sd, seats, keepouts);
    const held = seating(wall, deviation, sd, { ...fit, target: diameter });
    return { diameter, mass, sureMass, possibleMass, ...held };
  });
}
