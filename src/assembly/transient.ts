/** After a cold bushing and a warm boss touch: how the gap between them closes, second by second. */
import { conduct, type Edges, meanOver, type Rings } from './conduction.ts';
import { strainAt } from './expansion.ts';
import { expands } from './family.ts';
import type { Material } from './material.ts';

/** Two rings at the moment at which they touch. Diameters at 20 °C in mm, °C. */
export interface Meeting {
  readonly inside: number;
  /** Outside of the bushing. */
  readonly outside: number;
  /** The bore where it is tightest. */
  readonly bore: number;
  readonly bossOutside: number;
  readonly bushing: { readonly metal: Material; readonly celsius: number };
  readonly boss: { readonly metal: Material; readonly celsius: number };
  readonly air: number;
  /** Film to the air on bore and outside, W/(m² K). */
  readonly film: number;
  readonly contact: Contact;
}

/**
 * W/(m² K) as stated, or through the air between them: the bushing in the middle of the bore, lying on one side, or
 * half-way between as it is slid in (the root of the product of both).
 */
export type Contact = number | 'centred' | 'resting' | 'sliding';

export interface Closing {
  /** Seconds from touching until they are tight; 0: they never had room; NaN: not within four hours. */
  readonly seconds: number;
  /** Room, across, mm, by time: what it was at touching first. */
  readonly curve: { readonly seconds: Float64Array; readonly room: Float64Array };
  /** Mean temperatures when they are tight, °C. */
  readonly boss: number;
  readonly bushing: number;
}

const FIRST = 2e-3;
const FARTHER = 1.05;
const LAST = 4 * 3600;
/** Cells a ring: with the steps above, within 0.4 % of cells and steps without end. */
const CELLS = 20;
/** The picture goes on a little beyond. */
const BEYOND = 1.35;

/** Air between surfaces that touch, as thick as shop roughness leaves it, mm per side. Judgement. */
const ROUGH = 5e-3;

/**
 * Air conducts, W/(m K), at a temperature in °C: 0.0241 at 0 and 0.0386 at 200, straight between (tables of air in any
 * textbook of heat transfer, from memory).
 */
function airConducts(celsius: number): number {
  return 0.0241 + 7.25e-5 * celsius;
}

/**
 * Through the air between the two, W/(m² K): mean round the clock of air over the gap's width there. Lying on one side,
 * where only roughness keeps them apart, the mean is that of the middle over the root of 1 − e², e the share of the gap
 * by which it is off.
 *
 * @param room across, mm
 */
export function throughAir(room: number, celsius: number, how: Exclude<Contact, number>): number {
  const gap = Math.max(0, room / 2);
  const middle = airConducts(celsius) / ((gap + ROUGH) * 1e-3);
  if (how === 'centred') return middle;
  const off = gap / (gap + ROUGH);
  return middle / (1 - off ** 2) ** (how === 'resting' ? 1 / 2 : 1 / 4);
}

export function closingOf(meeting: Meeting): Closing {
  const { bore, outside, bushing, boss, contact } = meeting;
  const rings = ringsOf(meeting);
  const [grows, shrinks] = [expands(boss.metal), expands(bushing.metal)];
  const means = { boss: boss.celsius, bushing: bushing.celsius };
  const start =
    bore * (1 + strainAt(grows, boss.celsius)) - outside * (1 + strainAt(shrinks, bushing.celsius));
  const [times, rooms] = [[0], [start]];
  const film = (boss.celsius + bushing.celsius) / 2;
  let closed = start > 0 ? Number.NaN : 0;
  // What it will be in the middle of the step, as it went in the step before.
  const ahead = () => {
    const [room, before] = [rooms.at(-1)!, rooms.at(-2) ?? rooms[0]!];
    return room + ((room - before) * FARTHER) / 2;
  };
  const joint = () => (typeof contact === 'number' ? contact : throughAir(ahead(), film, contact));
  conduct(rings, steps(), joint, ({ seconds, celsius }) => {
    const wide = meanOver(rings, 1, celsius, (one) => strainAt(grows, one));
    const narrow = meanOver(rings, 0, celsius, (one) => strainAt(shrinks, one));
    const room = bore * (1 + wide) - outside * (1 + narrow);
    const before = rooms.at(-1)!;
    if (!(closed >= 0) && !(room > 0)) {
      const from = times.at(-1)!;
      closed = from + ((seconds - from) * before) / (before - room);
      means.boss = meanOver(rings, 1, celsius, (one) => one);
      means.bushing = meanOver(rings, 0, celsius, (one) => one);
    }
    times.push(seconds);
    rooms.push(room);
    return !(closed >= 0 && seconds >= BEYOND * closed);
  });
  const curve = { seconds: Float64Array.from(times), room: Float64Array.from(rooms) };
  return { seconds: closed, curve, ...means };
}

/** Two rings that have one radius between them; free rings, whose edges both grow by the mean over their area. */
export function ringsOf(
  { inside, outside, bossOutside, bushing, boss, air, film }: Omit<Meeting, 'contact' | 'bore'>,
  flame?: Edges['flame'],
): Rings {
  const edges = { inside: film, outside: film, air };
  return {
    layers: [
      { inner: inside / 2, outer: outside / 2, metal: bushing.metal, start: bushing.celsius },
      { inner: outside / 2, outer: bossOutside / 2, metal: boss.metal, start: boss.celsius },
    ],
    edges: flame ? { ...edges, flame } : edges,
    cells: CELLS,
  };
}

/** Short steps first, each a little longer than the one before. */
function* steps(): Generator<number> {
  for (let at = FIRST; at < LAST; at *= FARTHER) yield at;
  yield LAST;
}
