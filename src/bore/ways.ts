/** Every way of mending, worked out in full on one bore. */
import type { CleanUp } from './cleanUp.ts';
import type { PassMatter } from './passes.ts';
import { type Keepout, metalVolume, SEATED, type Span } from './removal.ts';
import { type SeatPlaces, seatPlaces } from './seating.ts';
import { deviationFrom } from './target.ts';
import type { Axis, Field, WearSurface } from './types.ts';
import {
  finished,
  metal,
  outcome,
  type SeatKnown,
  type WallAfter,
  type Work,
} from './wayOutcome.ts';
import { WAY_NAMES, type WayFigures, type WayName, type WayOutcome } from './wayTypes.ts';

/** A squeeze as it is planned: `SqueezePlan`'s rows, and its heats. */
export interface SqueezeAim {
  /** Clock position of the jaws. */
  readonly jaws: number;
  /** By depth, across: how far it closes across the jaws by bending, and what the mean is to draw in besides. */
  readonly rows: readonly { readonly z: number; readonly close: number; readonly short: number }[];
  /** Largest size of all depths that bending alone ends at, across. */
  readonly bent: number;
  readonly heats: { readonly least: number; readonly most: number };
  /** The most that the mean draws in with one heat, across. */
  readonly upset: number;
}

/** Shims as they are planned: ground round to what size, across, and how thick each, from the wall inwards. */
export interface ShimAim {
  readonly round: number;
  readonly layers: readonly number[];
}

export interface WaysAsked extends Pick<SeatKnown, 'bare' | 'grinder'> {
  readonly surface: WearSurface;
  /** Standard deviation of the deviation in the target's frame. */
  readonly sd: Field;
  readonly seats: readonly Span[];
  readonly keepouts: readonly Keepout[];
  /** What the ways aim at that keep the bushing's size: across, and about which axis. */
  readonly target: number;
  readonly axis: Axis;
  /** Smallest round that cleans up all of the seat, about the axis of the rule. */
  readonly cleanUp: CleanUp;
  /** Wall and deviation about the target that passes go by, where earlier surveys tell more; null: as the surface is. */
  readonly standing: Pick<PassMatter, 'surface' | 'removal' | 'worked'> | null;
  /** Null: no place is worth a squeeze. */
  readonly squeeze: SqueezeAim | null;
  /** Null: nothing is to be filled, or no shims at hand fill it. */
  readonly shims: ShimAim | null;
  /** Outside of the bushing at hand, across; NaN: not known, so that one is made to suit. */
  readonly bushing: number;
  readonly pressFit: number;
  readonly bossOutside: number;
  readonly figures: WayFigures;
}

export interface Ways {
  /**
   * In the order of `WAY_NAMES`; without shims and a larger bushing where they have nothing to fill, and without shims
   * where none at hand fill it.
   */
  readonly outcomes: readonly WayOutcome[];
  /** What shims or a larger bushing would have to fill, per side; not above 0: nothing. */
  readonly toFill: number;
}

export function waysOf(asked: WaysAsked): Ways {
  const start = startOf(asked);
  const known = { ...asked, wall: start.wall };
  return {
    toFill: toFill(asked),
    outcomes: WAY_NAMES.flatMap((name) => {
      const work = WORKS[name](start);
      return work === null ? [] : [outcome(work, known)];
    }),
  };
}

/** The wall as one way leaves it, without its passes; null where that way has nothing to do here. */
export function wallAfter(asked: WaysAsked, name: WayName): WallAfter | null {
  const start = startOf(asked);
  const work = WORKS[name](start);
  return work && finished(work, start.wall.places);
}

function startOf(asked: WaysAsked): Start {
  const { surface, seats, keepouts, axis, cleanUp } = asked;
  return {
    asked,
    wall: seatPlaces(surface, seats, keepouts),
    length: seatLength(asked),
    about: deviationFrom(surface, 0, axis),
    clean: deviationFrom(surface, 0, cleanUp.axis),
  };
}

interface Start {
  readonly asked: WaysAsked;
  readonly wall: SeatPlaces;
  /** Of the seats, mm. */
  readonly length: number;
  /** Radii of the wall, mm: about the axis of the target, and about that of the smallest clean-up. */
  readonly about: Field;
  readonly clean: Field;
}

const WORKS: Readonly<Record<WayName, (start: Start) => Work | null>> = {
  grind: ground,
  squeeze,
  shim,
  oversize,
  sleeve,
  weld,
  leave,
};

/** The bushing at hand, or one made to suit the target. */
function bushingFor({
  bushing,
  target,
  pressFit,
}: Pick<WaysAsked, 'bushing' | 'target' | 'pressFit'>): number {
  return bushing > 0 ? bushing : target + pressFit;
}

/** What the ways have in common that keep the bushing's size. */
function standard({ asked, about }: Start): Omit<Work, 'name' | 'tool'> {
  const { surface, target, axis } = asked;
  const bushing = bushingFor(asked);
  const deviation = over(about, target / 2);
  return { target, axis, bushing, outside: bushing, surface, deviation };
}

function over(radii: Field, radius: number): Field {
  const out = new Float64Array(radii.length);
  for (let k = 0; k < out.length; k++) out[k] = radii[k]! - radius;
  return out;
}

function ground(start: Start): Work {
  return { name: 'grind', tool: 'grinder', ...standard(start), standing: start.asked.standing };
}

function leave(start: Start): Work {
  return { name: 'leave', tool: 'none', ...standard(start) };
}

function squeeze(start: Start): Work {
  const work = standard(start);
  const { squeeze: aim, surface } = start.asked;
  if (aim === null) return { ...work, name: 'squeeze', tool: 'grinder' };
  const closed = (upset: number) => {
    const by = closing(aim, upset, start.wall);
    const less = (wall: Field) => wall.map((v, k) => v - by[k]!);
    return {
      surface: { ...surface, mean: less(surface.mean) },
      deviation: less(work.deviation),
    };
  };
  return {
    ...work,
    name: 'squeeze',
    tool: 'grinder',
    ...closed(0),
    drawnIn: closed(aim.upset),
    squeeze: {
      closing: aim.rows.reduce((most, row) => Math.max(most, row.close + row.short), 0),
      upset: aim.rows.reduce((most, { short }) => Math.max(most, short), 0),
      bentOver: (aim.bent - work.target) / 2,
      heatsLeast: aim.heats.least,
      heatsMost: aim.heats.most,
    },
  };
}

/**
 * How far each place closes, per side: half across the jaws, opening between them, and half of what the mean draws in, which
 * is what bending leaves over and may be as much as the upset; where that is more than the jaws close, all round alike.
 */
function closing(
  { jaws, rows }: SqueezeAim,
  upset: number,
  { grid: { theta, z } }: SeatPlaces,
): Field {
  const bends = theta.map((at) => Math.cos(2 * (at - jaws)));
  const out = new Float64Array(theta.length * z.length);
  for (const { z: depth, close, short } of rows) {
    const from = z.indexOf(depth) * theta.length;
    const all = close + short;
    const drawn = all > 0 ? Math.max(short, upset) : 0;
    const bent = Math.max(0, all - drawn);
    bends.forEach((bend, it) => {
      out[from + it] = (bent * bend + drawn) / 2;
    });
  }
  return out;
}

function weld(start: Start): Work {
  const { asked, wall } = start;
  const work = standard(start);
  const { weldAllowance, weldOver } = asked.figures;
  const laid = work.deviation.map((e, k) =>
    wall.places[k] === SEATED && (weldOver === 'seat' || e > 0)
      ? Math.max(0, e + weldAllowance)
      : 0,
  );
  const surface = { ...asked.surface, mean: asked.surface.mean.map((r, k) => r - laid[k]!) };
  return {
    ...work,
    name: 'weld',
    tool: 'grinder',
    surface,
    deviation: work.deviation.map((e, k) => e - laid[k]!),
    on: metal(
      metalVolume(surface, laid),
      laid.reduce((most, t) => Math.max(most, t), 0),
    ),
  };
}

/** What the ways have in common that make the whole bore round at a size of their own. */
function roundAt({ asked, clean }: Start, target: number): Omit<Work, 'name' | 'tool'> {
  const { surface, pressFit, cleanUp } = asked;
  const { axis } = cleanUp;
  const deviation = over(clean, target / 2);
  const outside = target + pressFit;
  return { target, axis, bushing: outside, outside, surface, deviation };
}

/** Null where the bushing at hand fills the bore. */
function oversize(start: Start): Work | null {
  const { asked } = start;
  if (!(toFill(asked) > NO_ROOM)) return null;
  const { pressFit, figures, cleanUp } = asked;
  const size = roundedUp(cleanUp.diameter + pressFit, figures.oversizeStep);
  return { ...roundAt(start, size - pressFit), name: 'oversize', tool: 'grinder' };
}

/** The hole that the bushing at hand, or one made to suit the target, is pressed into, across. */
export function holeFor(asked: Pick<WaysAsked, 'bushing' | 'target' | 'pressFit'>): number {
  return bushingFor(asked) - asked.pressFit;
}

/** What is missing all round under that bushing once all of the seat is clean, per side; not above 0: nothing. */
export function toFill(
  asked: Pick<WaysAsked, 'bushing' | 'target' | 'pressFit' | 'cleanUp'>,
): number {
  return (asked.cleanUp.diameter - holeFor(asked)) / 2;
}

/** Rounding of a size that is the same, per side, mm. */
export const NO_ROOM = 1e-9;

function shim(start: Start): Work | null {
  const { asked, length } = start;
  if (asked.shims === null) return null;
  const { round, layers } = asked.shims;
  const bushing = bushingFor(asked);
  const thickness = layers.reduce((sum, t) => sum + t, 0);
  return {
    ...roundAt(start, round),
    name: 'shim',
    tool: 'grinder',
    bushing,
    outside: bushing + 2 * thickness,
    layers,
    on: metal(ringVolume(round, thickness, length), thickness),
  };
}

function sleeve(start: Start): Work {
  const { asked, length } = start;
  const { sleeveWall, oversizeStep } = asked.figures;
  const bushing = bushingFor(asked);
  const hole = holeFor(asked);
  const target = roundedUp(Math.max(asked.cleanUp.diameter, hole + 2 * sleeveWall), oversizeStep);
  const wall = (target - hole) / 2;
  return {
    ...roundAt(start, target),
    name: 'sleeve',
    tool: 'boring bar',
    bushing,
    layers: [wall],
    on: metal(ringVolume(target, wall, length), wall),
  };
}

/** Of a ring of that outside, across. */
function ringVolume(outside: number, thickness: number, length: number): number {
  return Math.PI * thickness * (outside - thickness) * length;
}

function seatLength({ surface, seats }: WaysAsked): number {
  const { z } = surface.grid;
  const far = z[z.length - 1]!;
  return seats.reduce(
    (sum, { from, to }) => sum + Math.max(0, Math.min(to, far) - Math.max(from, 0)),
    0,
  );
}

/** Rounding up what stands on a step already adds none. */
function roundedUp(mm: number, step: number): number {
  return step > 0 ? Math.ceil(mm / step - 1e-9) * step : mm;
}
