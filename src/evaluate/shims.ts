/** A bore ground round and lined: to which size, with which stack, and how each strip is cut. */
import {
  type PartRound,
  partRound,
  type Stack,
  type Strip,
  stackOf,
  stripsOf,
} from '../assembly/shims.ts';
import { metalVolume, SEATED } from '../bore/removal.ts';
import type { WithTarget } from './withTarget.ts';

export interface Shims {
  /** Smallest round about the target's centre that cleans up all of the seat, across, mm. */
  readonly cleanUp: number;
  /** Diameter to grind round to: as stated, or so that the stack fills it exactly. Across, mm. */
  readonly round: number;
  readonly stated: boolean;
  /** What is missing per side at that diameter; what the stack is chosen for. */
  readonly missing: number;
  /** Null where no stack of the stock will do. */
  readonly stack: Stack | null;
  /** Bushing less the lined bore, across, mm: below 0 it is loose. NaN: its size is not known, or there is no stack. */
  readonly pressFit: number;
  /** Metal to grind off to make it round, mm3. */
  readonly volumeOff: number;
  readonly strips: readonly Strip[];
  /** Depths that each set of strips lies over, one a bushing. */
  readonly seats: readonly { readonly from: number; readonly to: number }[];
  /** Null where metal is missing nowhere, or all round. */
  readonly partRound: PartRound | null;
}

/** Half the clock that the butts of four layers and a hole between them take up. */
const NEAR_HOLE = Math.PI / 4;

/** @returns null where nothing of the seat is over the target, and no larger round is stated */
export function shimsOf({
  bore,
  surface,
  target,
  removal,
  facts,
  places,
}: WithTarget): Shims | null {
  const { shim, stock } = facts;
  const { deviation } = removal;
  let most = Number.NEGATIVE_INFINITY;
  deviation.forEach((e, k) => {
    if (places[k] === SEATED && e > most) most = e;
  });
  const cleanUp = target.diameter + 2 * most;
  const stated = shim.round > target.diameter;
  const missing = stated ? (shim.round - target.diameter) / 2 : most;
  if (!(missing > 0)) return null;
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
      ? cleanUp
      : target.diameter + 2 * stack.thickness;
  const lined = stack === null ? Number.NaN : round - 2 * stack.thickness;
  const length = surface.grid.z[surface.grid.z.length - 1]!;
  const off = deviation.map((e, k) =>
    places[k] === SEATED ? Math.max(0, (round - target.diameter) / 2 - e) : 0,
  );
  return {
    cleanUp,
    round,
    stated,
    missing,
    stack,
    pressFit: bore.facts.bushingOutside.mm - lined,
    volumeOff: metalVolume(surface, off),
    strips:
      stack === null
        ? []
        : stripsOf({
            bore: round,
            layers: stack.layers,
            gap: shim.gap.mm,
            clear: shim.clear,
            ...holesAndButt(bore),
          }),
    seats: bore.facts.seats.map(({ from, to }) => ({ from, to: Math.min(to, length) })),
    partRound: partRound(lowByHour({ surface, deviation, places })),
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
