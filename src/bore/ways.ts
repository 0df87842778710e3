/** Every way of mending, worked out in full on one bore. */
import { type CleanUp, cleanUp } from './cleanUp.ts';
import { type Keepout, metalVolume, SEATED, type Span } from './removal.ts';
import { type SeatPlaces, seatPlaces } from './seating.ts';
import { type Squeezed, squeezed } from './squeezed.ts';
import { deviationFrom } from './target.ts';
import type { Axis, Field, WearSurface } from './types.ts';
import { metal, outcome, type SeatKnown, type Work } from './wayOutcome.ts';
import type { WayFigures, WayOutcome } from './wayTypes.ts';

export interface WaysAsked {
  readonly surface: WearSurface;
  /** Standard deviation of the deviation in the target's frame. */
  readonly sd: Field;
  readonly seats: readonly Span[];
  readonly keepouts: readonly Keepout[];
  /** What the ways aim at that keep the bushing's size: across, and about which axis. */
  readonly target: number;
  readonly axis: Axis;
  /** True: a bore that is made larger may move to where it stays smallest. */
  readonly free: boolean;
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
  readonly cleanUp: CleanUp;
}

/** @returns null where nothing of the wall is a seat */
export function waysOf(asked: WaysAsked): Ways | null {
  const { surface, sd, seats, keepouts, bossOutside } = asked;
  const wall = seatPlaces(surface, seats, keepouts);
  const clean = cleanUp(surface, wall.places, asked.free ? null : asked.axis);
  if (clean === null) return null;
  const known: SeatKnown = { wall, sd, bossOutside };
  const start: Start = { asked, wall, clean, length: seatLength(asked) };
  const works = [
    ground(start),
    squeeze(start),
    shim(start),
    oversize(start),
    sleeve(start),
    weld(start),
    leave(start),
  ];
  return {
    cleanUp: clean,
    toFill: toFill(start),
    outcomes: works.flatMap((work) => (work === null ? [] : [outcome(work, known)])),
  };
}

interface Start {
  readonly asked: WaysAsked;
  readonly wall: SeatPlaces;
  readonly clean: CleanUp;
  /** Of the seats, mm. */
  readonly length: number;
}

/** The bushing at hand, or one made to suit the target. */
function bushingFor({ bushing, target, pressFit }: WaysAsked): number {
  return bushing > 0 ? bushing : target + pressFit;
}

/** What the ways have in common that keep the bushing's size. */
function standard({ asked }: Start): Omit<Work, 'name' | 'tool'> {
  const { surface, target, axis } = asked;
  const bushing = bushingFor(asked);
  const deviation = deviationFrom(surface, target / 2, axis);
  return { target, axis, bushing, outside: bushing, surface, deviation };
}

function ground(start: Start): Work {
  return { name: 'grind', tool: 'grinder', ...standard(start) };
}

function leave(start: Start): Work {
  return { name: 'leave', tool: 'none', ...standard(start) };
}

function squeeze(start: Start): Work {
  const { asked, wall } = start;
  const work = standard(start);
  const { squeezeUnder, heatLeast, heatMost } = asked.figures;
  const found: Squeezed = squeezed(wall.grid, wall.places, work.deviation, squeezeUnder);
  const { closing, upset, bentOver, deviation } = found;
  const mean = asked.surface.mean.map((r, k) => r + deviation[k]! - work.deviation[k]!);
  return {
    ...work,
    name: 'squeeze',
    tool: 'grinder',
    surface: { ...asked.surface, mean },
    deviation,
    squeeze: {
      closing,
      upset,
      bentOver,
      heatsLeast: Math.ceil(closing / heatMost),
      heatsMost: Math.ceil(closing / heatLeast),
    },
  };
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
  const { surface, pressFit } = asked;
  const deviation = deviationFrom(surface, target / 2, clean.axis);
  const outside = target + pressFit;
  return { target, axis: clean.axis, bushing: outside, outside, surface, deviation };
}

/** Null where the bushing at hand fills the bore. */
function oversize(start: Start): Work | null {
  const { asked, clean } = start;
  if (!(toFill(start) > NO_ROOM)) return null;
  const { pressFit, figures } = asked;
  const size = roundedUp(clean.diameter + pressFit, figures.oversizeStep);
  return { ...roundAt(start, size - pressFit), name: 'oversize', tool: 'grinder' };
}

function toFill({ asked, clean }: Start): number {
  return (clean.diameter - (bushingFor(asked) - asked.pressFit)) / 2;
}

/** Rounding of a size that is the same, per side, mm. */
const NO_ROOM = 1e-9;

/** Null where no shim is wanted, or none at hand fills the bore. */
function shim(start: Start): Work | null {
  const { asked, length } = start;
  const bushing = bushingFor(asked);
  const hole = bushing - asked.pressFit;
  const { stock, shimLayers, shimLeast } = asked.figures;
  const fill = toFill(start);
  const layers = fill > NO_ROOM ? layersFor(Math.max(fill, shimLeast), stock, shimLayers) : null;
  if (layers === null) return null;
  const thickness = layers.reduce((sum, t) => sum + t, 0);
  const target = hole + 2 * thickness;
  return {
    ...roundAt(start, target),
    name: 'shim',
    tool: 'grinder',
    bushing,
    layers,
    on: metal(ringVolume(target, thickness, length), thickness),
  };
}

function sleeve(start: Start): Work {
  const { asked, clean, length } = start;
  const { sleeveWall, oversizeStep } = asked.figures;
  const bushing = bushingFor(asked);
  const hole = bushing - asked.pressFit;
  const target = roundedUp(Math.max(clean.diameter, hole + 2 * sleeveWall), oversizeStep);
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

/**
 * The layers that come to the least thickness of at least so much; the fewest of those; thickest first.
 *
 * @returns null where nothing is to be filled, or no layers at hand come to it
 */
export function layersFor(
  needed: number,
  stock: readonly number[],
  most: number,
): readonly number[] | null {
  if (!(needed > NO_ROOM)) return null;
  let best: readonly number[] | null = null;
  const sheets = [...new Set(stock)].filter((t) => t > 0).sort((a, b) => b - a);
  const total = (layers: readonly number[]) => layers.reduce((sum, t) => sum + t, 0);
  const extend = (layers: readonly number[], from: number) => {
    const sum = total(layers);
    if (sum >= needed - 1e-9) {
      const now = best === null ? Number.POSITIVE_INFINITY : total(best);
      const fewer = best !== null && layers.length < best.length;
      if (sum < now - 1e-9 || (sum < now + 1e-9 && fewer)) best = layers;
      return;
    }
    if (layers.length >= most) return;
    for (let i = from; i < sheets.length; i++) extend([...layers, sheets[i]!], i);
  };
  extend([], 0);
  return best;
}
