/** Welding a bore up: how much metal, which places are too low, in which order, and how warm. */
import { STEEL_DENSITY } from '../assembly/steel.ts';
import {
  carbonEquivalent,
  type Deposit,
  depositOf,
  ELECTRODES,
  type Preheat,
  preheatOf,
  stringersOf,
} from '../assembly/weld.ts';
import { cellShares, SEATED } from '../bore/removal.ts';
import type { Field, Removal, WearSurface, Zone } from '../bore/types.ts';
import { findZones } from '../bore/zones.ts';
import type { BoreEvaluation } from '../evaluate.ts';
import type { MendingFacts } from '../job/mendingFacts.ts';
import type { SteelPart } from '../job/schema.ts';
import type { WithTarget } from './withTarget.ts';

export interface Weld {
  readonly deposit: Deposit;
  /** What is missing to finished size and allowance, per side, mm: 0 where nothing is, NaN where nothing is asked. */
  readonly short: Field;
  /** Places lower than finished size and allowance, as they are in this survey, with what each takes. */
  readonly low: readonly LowPlace[];
  /** Share of the seat that is lower, 0 to 1. */
  readonly lowShare: number;
  /** Stringers of the first layer in the order of welding, by clock position. */
  readonly order: readonly number[];
  /** Percent; NaN while nothing tells it. */
  readonly equivalent: number;
  /** Null while the carbon equivalent is not known. */
  readonly preheat: Preheat | null;
}

export interface LowPlace extends Zone {
  /** Grams of weld, and layers of beads where it is deepest. */
  readonly mass: number;
  readonly layers: number;
}

export function weldOf({ bore, surface, removal, facts, places }: WithTarget): Weld {
  const { grid, mean } = surface;
  const { allowance, over, electrode, beadHeight, beadWidth, overlap, steel } = facts.weld;
  const wanted = removal.deviation.map((e, k) => {
    if (places[k] !== SEATED) return Number.NaN;
    return over === 'low' && !(e > 0) ? 0 : Math.max(0, e + allowance.mm);
  });
  const shares = cellShares(grid);
  const share = mean.map((_, k) => shares[Math.floor(k / grid.theta.length)]!);
  const deposit = depositOf({
    thickness: wanted,
    radius: mean,
    share,
    run: seatDepth(bore, surface),
    bead: { height: beadHeight.mm, width: beadWidth.mm, overlap: overlap.value / 100 },
    electrode: ELECTRODES.find(({ core }) => core === electrode) ?? ELECTRODES[1]!,
  });
  const order = stringersOf({
    thickness: wanted,
    radius: mean,
    theta: grid.theta,
    pitch: beadWidth.mm * (1 - overlap.value / 100),
    round: deposit.stringers,
  });
  const equivalent = equivalentOf(steel);
  return {
    deposit: { ...deposit, stringers: order.length },
    short: wanted,
    ...stillLow(surface, removal, wanted, beadHeight.mm),
    equivalent,
    order,
    preheat: preheatOf(equivalent),
  };
}

function stillLow(
  surface: WearSurface,
  removal: Removal,
  wanted: Field,
  beadHeight: number,
): Pick<Weld, 'low' | 'lowShare'> {
  const low = wanted.map((t) => (t > 0 ? t : Number.NEGATIVE_INFINITY));
  const none = wanted.map((t) => (Number.isNaN(t) ? Number.NaN : 0));
  const shares = cellShares(surface.grid);
  let [all, lower] = [0, 0];
  wanted.forEach((t, k) => {
    if (Number.isNaN(t)) return;
    const share = shares[Math.floor(k / surface.grid.theta.length)]!;
    all += share;
    if (t > 0) lower += share;
  });
  return {
    low: findZones(surface, { ...removal, deviation: low, likely: none }).map((zone) => ({
      ...zone,
      mass: zone.volume * STEEL_DENSITY,
      layers: Math.ceil(zone.peak / beadHeight - 1e-9),
    })),
    lowShare: all > 0 ? lower / all : Number.NaN,
  };
}

/** Of the papers' parts carbon must be told; one that is left out counts for nothing. NaN: not known. */
export function equivalentOf({ known, carbon, parts }: MendingFacts['weld']['steel']): number {
  if (known === 'equivalent') return carbon;
  if (known === 'nothing' || !(parts.C > 0)) return Number.NaN;
  const told = (part: SteelPart) => (parts[part] >= 0 ? parts[part] : 0);
  return carbonEquivalent({
    C: parts.C,
    Mn: told('Mn'),
    Cr: told('Cr'),
    Mo: told('Mo'),
    V: told('V'),
    Ni: told('Ni'),
    Cu: told('Cu'),
  });
}

/** Depth that bushings sit on, mm. */
function seatDepth({ facts }: BoreEvaluation, { grid }: WearSurface): number {
  const length = grid.z[grid.z.length - 1]!;
  return facts.seats.reduce((sum, { from, to }) => sum + Math.min(to, length) - from, 0);
}
