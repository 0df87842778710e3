/** The words of the passes, as data: millimetres, per side, radians; fields row by row as everywhere in bore. */
import type { Instrument } from '../job/schema.ts';
import type { Tool } from './reach.ts';
import type { Field, Zone } from './types.ts';

/** Where nothing more can be taken, and how much is left there. */
export interface Left extends Pick<Zone, 'theta' | 'z'> {
  /** Per side, mm; and its give-or-take, two standard deviations. */
  readonly most: number;
  readonly give: number;
  /**
   * `tool`: the wheel does not get there; `slope`: no room to blend it out; `doubt`: likely high, and not surely enough for
   * a pass, so that it may be ground only after better measuring.
   */
  readonly why: 'tool' | 'slope' | 'doubt';
}

/** The highest of the places that are likely high, where none is surely enough for a pass: to be measured better first. */
export type Waits = Pick<Left, 'theta' | 'z' | 'most' | 'give'>;

/** What one instrument should read at a gate, as it reads: mm across or per side. */
export interface Expected {
  readonly instrument: Instrument;
  readonly before: number;
  /** Once the pass is done as planned. */
  readonly after: number;
  /** From here on the metal at this place is no longer sure: stop, whatever the map still asks. */
  readonly stop: number;
  /** Two standard deviations of what the gauge reads here before the pass, less its own scatter, by all readings so far. */
  readonly give: number;
}

export interface GatePlace {
  readonly theta: number;
  readonly z: number;
  /** `most`: where most comes off; `near`: nearest to the target afterwards; `control`: what is expected there stays as it is. */
  readonly why: 'most' | 'near' | 'control';
  readonly expected: readonly Expected[];
}

/** A place half-way between readings: round the clock at a depth that was read, along the depth, or from the outermost to a face. */
export interface BetweenPlace extends Pick<Zone, 'theta' | 'z'> {
  readonly halfway: 'clock' | 'depth' | 'face';
  /** What the pass takes there, per side, mm. */
  readonly takes: number;
}

export interface Pass {
  /** Per side, mm; NaN where nothing may be ground. */
  readonly removal: Field;
  /** Greatest of it, mm; what comes off in all, mm3 and grams. */
  readonly greatest: number;
  readonly volume: number;
  readonly mass: number;
  /** Highest spots of the removal, the most first. */
  readonly zones: readonly Zone[];
  /** True where it ends nearer to the target than today's give-or-take: only if the gate before it allows it. */
  readonly beyondDoubt: boolean;
  /** True where no more than the last 0.001 in across stands: that comes off with strip, by hand. */
  readonly byStrip: boolean;
  readonly gate: readonly GatePlace[];
  /** To be felt for hollows before it: of the first pass of a bore alone, for later ones the gates read half-way. */
  readonly between: readonly BetweenPlace[];
}

export interface PassPlan {
  readonly tool: Tool;
  /** mm a mm along the wall. */
  readonly slope: number;
  readonly passes: readonly Pass[];
  /** Null: there is a pass, or nothing that better readings would let one take. */
  readonly waits: Waits | null;
  /** After the last pass, on the seats, 0.0025 mm and more; the most first. */
  readonly left: readonly Left[];
  /** Greatest that is left anywhere on the seats after the last pass, per side, mm. */
  readonly leftMost: number;
}
