/** Weld build-up of a bore or a pin: metal, beads, electrodes, order and preheat. mm, grams, °C. */
import { STEEL_DENSITY } from './steel.ts';

/** Deposit of one basic low-hydrogen electrode, 350 mm long with a 50 mm stub. */
export interface Electrode {
  /** Core diameter. */
  readonly core: number;
  /** Grams that end up in the weld: computed from core and length with 110 to 112 % recovery. */
  readonly deposit: number;
}

export const ELECTRODES: readonly Electrode[] = [
  { core: 2.5, deposit: 12.7 },
  { core: 3.2, deposit: 21.2 },
  { core: 4, deposit: 33.2 },
];

/** Deposit as a share of electrodes bought, 14 in long with a 2 in stub: published deposition figures. */
export const EFFICIENCY = 0.62;

export interface Bead {
  readonly height: number;
  readonly width: number;
  /** Share of its width that lies on the bead before it. */
  readonly overlap: number;
}

export interface DepositAsked {
  /** Deposit per side at each place, mm; 0 or NaN where none is wanted. */
  readonly thickness: Float64Array;
  /** Radius of the wall there, mm. */
  readonly radius: Float64Array;
  /** Angle times depth of each place, rad mm. */
  readonly share: Float64Array;
  /** Depth between the ends of the seat, mm: what a stringer along the axis runs over. */
  readonly run: number;
  /** True of a pin, whose deposit goes outwards. */
  readonly outside?: boolean;
  readonly bead: Bead;
  readonly electrode: Electrode;
}

export interface Deposit {
  readonly volume: number;
  readonly mass: number;
  /** Greatest deposit, per side. */
  readonly greatest: number;
  readonly layers: number;
  /** Stringers side by side in the first layer. */
  readonly stringers: number;
  /** Electrodes burnt, and grams of them to have at hand, stubs and losses counted. */
  readonly electrodes: number;
  readonly toBuy: number;
}

/** A layer inwards from the wall: integral of t (R - t / 2) over angle and depth; outwards it is t (R + t / 2). */
export function depositOf(asked: DepositAsked): Deposit {
  const { thickness, radius, share, run, bead, electrode, outside = false } = asked;
  const way = outside ? 1 : -1;
  let [volume, greatest, area] = [0, 0, 0];
  for (let k = 0; k < thickness.length; k++) {
    const t = thickness[k]!;
    if (!(t > 0)) continue;
    volume += t * (radius[k]! + (way * t) / 2) * share[k]!;
    area += radius[k]! * share[k]!;
    greatest = Math.max(greatest, t);
  }
  const mass = volume * STEEL_DENSITY;
  const pitch = bead.width * (1 - bead.overlap);
  return {
    volume,
    mass,
    greatest,
    layers: upTo(greatest / bead.height),
    stringers: upTo(area / run / pitch),
    electrodes: upTo(mass / electrode.deposit),
    toBuy: mass / EFFICIENCY,
  };
}

/** The next whole number; a whole one that rounding lifted stays. */
function upTo(count: number): number {
  return Number.isFinite(count) ? Math.max(0, Math.ceil(count - 1e-9)) : Number.NaN;
}

/**
 * Order of stringers round the bore that keeps the pull even: straight across, then to the quarters, then the next to
 * each, and so on round.
 *
 * @param count places round the bore, evenly spaced; place 0 is 12 o'clock
 * @returns every place once
 */
export function skipOrder(count: number): number[] {
  const quarter = [0, 0.5, 0.25, 0.75].map((share) => Math.round(share * count) % count);
  const order: number[] = [];
  for (let next = 0; order.length < count; next++) {
    for (const start of quarter) {
      const place = (start + next) % count;
      if (!order.includes(place)) order.push(place);
    }
  }
  return order;
}

/** Where stringers along the axis go. */
export interface StringersAsked {
  /** As in `DepositAsked`, row by row. */
  readonly thickness: Float64Array;
  readonly radius: Float64Array;
  /** Clock positions of a row, even, radians. */
  readonly theta: Float64Array;
  /** Between stringers side by side, mm. */
  readonly pitch: number;
  /** How many go all round, where metal is wanted all round. */
  readonly round: number;
}

/**
 * Stringers of the first layer in the order of welding, by clock position, radians; only where metal is wanted at some depth.
 * Of some stretches of the clock each is filled side by side from edge to edge, and the next is always the farthest from
 * those that are laid, so that the pull is spread there too.
 */
export function stringersOf({ thickness, radius, theta, pitch, round }: StringersAsked): number[] {
  const columns = theta.length;
  const wanted = new Uint8Array(columns);
  let [sum, count] = [0, 0];
  for (let k = 0; k < thickness.length; k++) {
    if (!(thickness[k]! > 0)) continue;
    wanted[k % columns] = 1;
    sum += radius[k]!;
    count++;
  }
  if (!wanted.includes(0)) return skipOrder(round).map((place) => (2 * Math.PI * place) / round);
  const step = (2 * Math.PI) / columns;
  const places: number[] = [];
  for (let first = 0; first < columns; first++) {
    if (wanted[first] === 0 || wanted[(first + columns - 1) % columns] === 1) continue;
    let wide = 1;
    while (wanted[(first + wide) % columns] === 1) wide++;
    const beads = upTo((wide * step * (sum / count)) / pitch);
    for (let i = 0; i < beads; i++) {
      const along = ((i + 1 / 2) * wide) / beads - 1 / 2;
      places.push(((((first + along) * step) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI));
    }
  }
  return farthestFirst(places);
}

function farthestFirst(places: readonly number[]): number[] {
  const left = [...places];
  const order = left.splice(0, 1);
  const off = (a: number, b: number) => Math.abs(Math.sin((a - b) / 2));
  while (left.length > 0) {
    const away = left.map((one) => Math.min(...order.map((laid) => off(one, laid))));
    order.push(...left.splice(away.indexOf(Math.max(...away)), 1));
  }
  return order;
}

/** Percent by weight. */
export interface Composition {
  readonly C: number;
  readonly Mn: number;
  readonly Cr: number;
  readonly Mo: number;
  readonly V: number;
  readonly Ni: number;
  readonly Cu: number;
}

/** Carbon equivalent of the International Institute of Welding, as in EN 1011-2 and AWS D1.1: percent. */
export function carbonEquivalent({ C, Mn, Cr, Mo, V, Ni, Cu }: Composition): number {
  return C + Mn / 6 + (Cr + Mo + V) / 5 + (Ni + Cu) / 15;
}

export interface Preheat {
  /** °C; 0: none where it is thin. */
  readonly least: number;
  readonly most: number;
  readonly slowCool: boolean;
}

/**
 * Preheat by carbon equivalent as commonly published. Thickness, restraint and hydrogen decide as much: the code's table
 * or the filler maker's comes first.
 *
 * @returns null where the carbon equivalent is not known
 */
export function preheatOf(equivalent: number): Preheat | null {
  if (!(equivalent > 0)) return null;
  if (equivalent < 0.4) return { least: 0, most: 0, slowCool: false };
  if (equivalent < 0.45) return { least: 100, most: 100, slowCool: false };
  if (equivalent <= 0.6) return { least: 150, most: 200, slowCool: false };
  return { least: 200, most: Number.NaN, slowCool: true };
}
