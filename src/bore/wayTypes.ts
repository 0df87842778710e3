/** The ways of mending a bore, each worked out in full, as data. mm and radians as everywhere in `bore`. */
import type { Waits } from './passTypes.ts';
import type { Share } from './seating.ts';
import type { Axis, Field } from './types.ts';

export type WayName = 'grind' | 'squeeze' | 'shim' | 'oversize' | 'sleeve' | 'weld' | 'leave';

/** The order in which they are told. */
export const WAY_NAMES: readonly WayName[] = [
  'grind',
  'squeeze',
  'shim',
  'oversize',
  'sleeve',
  'weld',
  'leave',
];

/** What the ways are worked out with; each is the repairer's to change. mm. */
export interface WayFigures {
  /** Sizes of a bushing made to suit, and of a bored hole, are rounded up to this, across. */
  readonly oversizeStep: number;
  /** Least wall of a sleeve, once the bushing's hole is in it. */
  readonly sleeveWall: number;
  /** Laid over the finished size by welding, per side, to be cut again. */
  readonly weldAllowance: number;
  /** Weld goes over the whole seat, or over its low places alone. */
  readonly weldOver: 'seat' | 'low';
  /** How far under the target the largest place is to end after a squeeze, across. */
  readonly squeezeUnder: number;
  /** What one heat closes, across: the least and the most to be expected. */
  readonly heatLeast: number;
  readonly heatMost: number;
  /** The most layers of shim on each other. */
  readonly shimLayers: number;
  /** The least thickness of a shim all round, per side: a bore is ground larger before a thinner one is taken. */
  readonly shimLeast: number;
  /** Thicknesses of shim at hand. */
  readonly stock: readonly number[];
}

export interface Metal {
  /** mm3. */
  readonly volume: number;
  /** Grams of plain steel. */
  readonly mass: number;
  /** The most at one place, per side. */
  readonly greatest: number;
}

/**
 * What a way comes to. Press fits are local ones, across: twice what the outside of the bushing (with its shims or its
 * sleeve) stands over the wall at a place, about the axis on which it sits; below 0 there is air.
 */
export interface WayOutcome {
  readonly name: WayName;
  /** What the bore is made to, across, and about which axis; of a bore that is left, what it is counted from. */
  readonly target: number;
  readonly axis: Axis;
  /** The bushing that goes in, outside, across; and what sits in the bore, shims or sleeve and all. */
  readonly bushing: number;
  readonly outside: number;
  readonly off: Metal;
  readonly on: Metal;
  readonly pressFit: {
    readonly least: number;
    readonly mean: number;
    readonly greatest: number;
    /** Where it is least, and its give-or-take there: two standard deviations; NaN where it is measured anew before. */
    readonly theta: number;
    readonly z: number;
    readonly give: number;
  };
  /** Share of the seat where the press fit is above 0; least and most NaN where it is measured anew before. */
  readonly seated: Share;
  /** Share of the seat that ends over the target. */
  readonly lowShare: number;
  /** The largest place over the target, per side, and the air behind the bushing there. */
  readonly gap: {
    readonly over: number;
    readonly behind: number;
    readonly theta: number;
    readonly z: number;
  };
  /** From the largest place of the finished bore to the outside of the boss, per side; NaN: the boss is not known. */
  readonly wallLeft: number;
  /**
   * Passes of the grinder as they are planned, the finish left out; of a bore that is measured anew before, as they would be
   * planned were it what is predicted. 0: nothing is ground; NaN: bored, not ground.
   */
  readonly passes: number;
  /** Where it is bored because nobody takes so many passes by hand: how many there would be at least; NaN else. */
  readonly fewest: number;
  /** What no pass may be given for until it is measured better; null: nothing, or the bore is measured anew anyway. */
  readonly waits: Waits | null;
  /** The most that no pass takes down, per side; NaN: bored, or measured anew before. */
  readonly stays: number;
  /** Layers of shim from the wall inwards, or the sleeve's wall; none else. */
  readonly layers: readonly number[];
  readonly squeeze: SqueezeOutcome | null;
  /** Per side about the target once all is done, negative where metal is left standing; NaN: not known. */
  readonly deviation: Field;
}

export interface SqueezeOutcome {
  /** How far the bore is to close where it closes most, across; of that by shortening of the hot metal. */
  readonly closing: number;
  readonly upset: number;
  /** Where bending alone would end: the largest place over the target, per side, negative under it. */
  readonly bentOver: number;
  /** Heats, by the most and by the least that one closes. */
  readonly heatsLeast: number;
  readonly heatsMost: number;
  /** Where the hot metal shortens as much as it may: the smallest that it can end, and the most to grind; else as the way. */
  readonly drawnIn: { readonly passes: number; readonly off: Metal };
}
