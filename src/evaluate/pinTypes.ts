/** The plan of a pin or shaft, as data. Lengths mm, angles as clock positions from face A; not known is NaN. */
import type { Deposit, Preheat } from '../assembly/weld.ts';
import type { CleansUp } from '../bore/outside.ts';
import type { PinAdvice, PinWay, SPRAY, Turned } from '../bore/pinWays.ts';
import type { Axis, Field, WearSurface, Zone } from '../bore/types.ts';
import type { MendingFacts } from '../job/mendingFacts.ts';
import type { LandFacts, PinFacts } from '../job/pinFacts.ts';

/** The place where most is missing: per side, below zero where even there metal stands proud; two standard deviations. */
export interface Worst {
  readonly short: number;
  readonly give: number;
  readonly theta: number;
  readonly z: number;
}

/** Shares of an area, 0 to 1: below the finished size at the mean, and within two standard deviations of it. */
interface Shares {
  readonly low: number;
  readonly unsure: number;
}

export interface Centring extends CleansUp, Shares {
  /** `kept`: the centres that it has; `shifted`: where most cleans up. */
  readonly rule: 'kept' | 'shifted';
  readonly worst: Worst;
}

/** One end of a running stretch: its corner or shoulder. */
export interface Edge extends Worst {
  /** True where a reading was taken near it. */
  readonly measured: boolean;
}

export interface LandOutcome extends Shares {
  readonly facts: LandFacts;
  /** Name of the bore or bushing that it runs in; null: not said. */
  readonly runsIn: string | null;
  readonly worst: Worst;
  readonly edges: readonly [Edge, Edge];
}

/** A hole that the pin runs in: across; as bought where nobody measured it in place. */
export interface Hole {
  readonly name: string;
  readonly size: number;
  readonly from: 'measured' | 'bought';
}

export interface PinPlan {
  readonly pin: PinFacts;
  readonly facts: MendingFacts;
  readonly length: number;
  readonly stage: 'worn' | 'built-up';
  /** What the pin is made to, across, and where that comes from; `largest`: its own largest stands in for a new size. */
  readonly finished: {
    readonly mm: number;
    readonly from: 'typed' | 'new-size' | 'bore' | 'largest';
  };
  readonly holes: readonly Hole[];
  /** Smallest hole less the running clearance, across; NaN: no hole is known. */
  readonly fromBore: number;
  /** Clearance wanted, across. */
  readonly clearance: number;
  /** False where the readings do not show where the axis lies: `kept` then takes both sides to be alike. */
  readonly sideSeen: boolean;
  readonly kept: Centring;
  readonly shifted: Centring;
  readonly chosen: Centring['rule'];
  /** How far the shifted axis stands off the kept one at each end, and towards where. */
  readonly moved: readonly [
    { readonly by: number; readonly theta: number },
    { readonly by: number; readonly theta: number },
  ];
  readonly axis: Axis;
  readonly surface: WearSurface;
  /** About the chosen axis: missing per side (below zero: proud), its standard deviation, and what is welded on. */
  readonly short: Field;
  readonly sd: Field;
  readonly thickness: Field;
  readonly lands: readonly LandOutcome[];
  /** Below the finished size; and where it may be, though not at the mean. */
  readonly low: readonly Zone[];
  readonly unsure: readonly Zone[];
  readonly deposit: Deposit;
  /** To be turned off again, mm3 and g. */
  readonly turnOff: { readonly volume: number; readonly mass: number };
  /** Stringers of the first layer in the order of welding, by clock position. */
  readonly order: readonly number[];
  /** Carbon equivalent, percent; NaN while nothing tells it. */
  readonly equivalent: number;
  readonly preheat: Preheat | null;
  readonly turned: Turned;
  /** Of a worn pin; none once it is welded up. */
  readonly ways: readonly PinWay[];
  readonly advice: PinAdvice | null;
  /** What sprayed metal is held to. */
  readonly spray: typeof SPRAY;
}
