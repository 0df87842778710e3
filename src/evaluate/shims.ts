/** A bore ground round and lined: to which size, with which stack, and how each strip is cut. */
import {
  type PartRound,
  partRound,
  type Stack,
  type Strip,
  stackOf,
  stripsOf,
} from '../assembly/shims.ts';
import { STEEL_DENSITY } from '../assembly/steel.ts';
import { metalVolume, SEATED } from '../bore/removal.ts';
import { deviationFrom } from '../bore/target.ts';
import { holeFor, NO_ROOM, toFill } from '../bore/ways.ts';
import type { Aimed } from './aimed.ts';
import type { WithTarget } from './withTarget.ts';

export interface Shims {
  /** Smallest round that cleans up all of the seat, about the centre that the rule wants, across, mm. */
  readonly cleanUp: number;
  /** Diameter to grind round to: as stated, or so that the stack fills it exactly. Across, mm. */
  readonly round: number;
  readonly stated: boolean;
  /** What the passes of the plan go to, across, mm. */
  readonly passesTo: number;
  /** What is missing per side at that diameter; what the stack is chosen for. */
  readonly missing: number;
  /** Null where no stack of the stock will do. */
  readonly stack: Stack | null;
  /** Bushing less the lined bore, across, mm: below 0 it is loose. NaN: its size is not known, or there is no stack. */
  readonly pressFit: number;
  /** Metal to grind off to make it round, mm3. */
  readonly volumeOff: number;
  /** Grams of it. */
  readonly massOff: number;
  readonly strips: readonly Strip[];
  /** Depths that each set of strips lies over, one a bushing. */
  readonly seats: readonly { readonly from: number; readonly to: number }[];
  /** Null where metal is missing nowhere, or all round. */
  readonly partRound: PartRound | null;
}

/** Half the clock that the butts of four layers and a hole between them take up. */
const NEAR_HOLE = Math.PI / 4;

/** What the bore is ground to and what lines it. */
type Lined = Pick<Shims, 'cleanUp' | 'round' | 'stated' | 'missing' | 'stack'>;

/** @returns null where nothing is to be filled under the bushing, and no larger round is stated */
export function shimStack({ bore, target, facts, cleanUp }: Aimed): Lined | null {
  const { shim, stock } = facts;
  const fit = {
    bushing: bore.facts.bushingOutside.mm,
    pressFit: bore.facts.pressFit.mm,
    target: target.diameter,
    cleanUp,
  };
  const hole = holeFor(fit);
  const stated = shim.round > hole;
  const fill = toFill(fit);
  if (!stated && !(fill > NO_ROOM)) return null;
  const missing = stated ? (shim.round - hole) / 2 : Math.max(fill, shim.least.mm);
  const stack = stackOf(
    {
      thickness: missing,
      under: stated ? shim.miss.mm : 0,
      over: shim.miss.mm,
      ...(stated ? {} : { must: 'reach' as const }),
    },
    stock.sheets,
  );
  const round = stated
    ? shim.round
    : stack === null
      ? cleanUp.diameter
      : hole + 2 * stack.thickness;
  return { cleanUp: cleanUp.diameter, round, stated, missing, stack };
}

/** @returns null where nothing is to be filled under the bushing, and no larger round is stated */
export function shimsOf(aimed: Aimed): Shims | null {
  const lined = shimStack(aimed);
  if (lined === null) return null;
  const { bore, surface, removal, facts, places, cleanUp } = aimed;
  const { stack, round } = lined;
  const length = surface.grid.z[surface.grid.z.length - 1]!;
  const off = deviationFrom(surface, round / 2, cleanUp.axis).map((e, k) =>
    places[k] === SEATED ? Math.max(0, -e) : 0,
  );
  const volumeOff = metalVolume(surface, off);
  return {
    ...lined,
    passesTo: aimed.survey.target?.diameter ?? aimed.target.diameter,
    pressFit:
      stack === null ? Number.NaN : bore.facts.bushingOutside.mm - (round - 2 * stack.thickness),
    volumeOff,
    massOff: volumeOff * STEEL_DENSITY,
    strips:
      stack === null
        ? []
        : stripsOf({
            bore: round,
            layers: stack.layers,
            gap: facts.shim.gap.mm,
            clear: facts.shim.clear,
            ...holesAndButt(bore),
          }),
    seats: bore.facts.seats.map(({ from, to }) => ({ from, to: Math.min(to, length) })),
    partRound: partRound(lowByHour({ surface, deviation: removal.deviation, places })),
  };
}

/** The ends butt straight across from the load, or from a grease hole; beside it where a hole is there. */
function holesAndButt({ facts: { keepouts, load } }: WithTarget['bore']) {
  const reliefs = keepouts.filter(
    ({ kind, theta }) => kind === 'grease-hole' && !Number.isNaN(theta),
  );
  const away = Number.isNaN(load) ? (reliefs[0]?.theta ?? Math.PI) + Math.PI : load + Math.PI;
  const turns = [0, 1, -1, 2, -2].map((eighths) => away + (eighths * Math.PI) / 4);
  const free = (at: number) => reliefs.every(({ theta }) => apart(theta, at) > NEAR_HOLE);
  return { reliefs, butt: turns.find(free) ?? away };
}

function apart(a: number, b: number): number {
  return Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
}

/** Mean over the seat of what is missing per side, at each clock hour. */
function lowByHour({
  surface: { grid },
  deviation,
  places,
}: Pick<WithTarget, 'surface' | 'places'> & { deviation: Float64Array }): number[] {
  const columns = grid.theta.length;
  return Array.from({ length: 12 }, (_, hour) => {
    const it = Math.round((hour / 12) * columns) % columns;
    let [sum, count] = [0, 0];
    for (let k = it; k < deviation.length; k += columns) {
      if (places[k] !== SEATED || Number.isNaN(deviation[k]!)) continue;
      sum += Math.max(0, deviation[k]!);
      count += 1;
    }
    return count > 0 ? sum / count : 0;
  });
}
