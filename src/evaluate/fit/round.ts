/**
 * The bushing in the bore as it is, not as if it were round: where it presses, where gaps are left, and what shape its own
 * bore takes.
 */
import type { Material } from '../../assembly/material.ts';
import { type ElasticRing, pairMoves } from '../../assembly/pairMoves.ts';
import { press } from '../../assembly/pressing.ts';
import { type RadialSpan, radialSpan } from '../../assembly/radialSpan.ts';
import { type HoleSizes, holeSizes } from '../../assembly/running.ts';
import type { Settled } from '../../assembly/settle.ts';
import { SEATED } from '../../bore/removal.ts';
import type { Field } from '../../bore/types.ts';
import type { Seated } from './seated.ts';

/** What stands in the way. */
export type RoundMissing =
  | 'inside'
  | 'outside'
  | 'boss-size'
  | 'bushing-wall'
  | 'boss-wall'
  | 'seat';

/** A figure of the seat and where. */
export interface PlaceOf {
  readonly value: number;
  readonly theta: number;
  readonly z: number;
}

export interface RoundFit {
  /** Rows of the wall's grid that the seat takes, first and last. */
  readonly rows: readonly [number, number];
  /** MPa, `[z][theta]` of the whole grid; 0 where it does not touch, NaN off the seat. */
  readonly pressure: Field;
  /** Per side, mm; 0 where it touches, NaN off the seat. */
  readonly gap: Field;
  /** Radius of the bushing's bore about its own axis, mm; NaN at depths off the seat. */
  readonly inside: Field;
  readonly settled: Settled;
  /** Share of the seat's area that touches, 0 to 1. */
  readonly touching: number;
  /** MPa, over the seat; the least is 0 where it does not touch everywhere. */
  readonly least: PlaceOf;
  readonly mean: number;
  readonly greatest: PlaceOf;
  /** Per side, mm; 0 where it touches everywhere. */
  readonly widest: PlaceOf;
  /** Of the bushing's bore after pressing, across. */
  readonly hole: HoleSizes;
  /** How much smaller the mean of its bore is than before, across, mm. */
  readonly closedIn: number;
  /** Of the bore before the bushing goes in, across: greatest less least diameter at one depth, the worst. */
  readonly boreOutOfRound: number;
  /** By radius, as a pin and a bushing meet it, of the bushing's bore after pressing and of the wall before. */
  readonly holeSpan: RadialSpan | null;
  readonly boreSpan: RadialSpan | null;
  /** What pressing flattens, across, mm. */
  readonly loss: number;
}

export type RoundPart =
  | { readonly missing: RoundMissing; readonly fit: null }
  | { readonly missing: null; readonly fit: RoundFit };

type Elastic = Pick<Material, 'elastic' | 'poisson'>;

export interface RoundMatter {
  readonly seated: Seated;
  readonly bushing: Elastic;
  readonly boss: Elastic;
  /** Taken off the press fit for what pressing flattens, across, mm. */
  readonly loss: number;
}

export function roundPart(matter: RoundMatter): RoundPart {
  const missing = missingOf(matter);
  if (missing !== null) return { missing, fit: null };
  const fit = roundFit(matter);
  return fit === null ? { missing: 'seat', fit } : { missing: null, fit };
}

function missingOf({ seated }: RoundMatter): RoundMissing | null {
  const { inside, outside, boss } = seated;
  if (!(outside > 0)) return 'outside';
  if (Number.isNaN(inside)) return 'inside';
  if (!(inside > 0 && inside < outside)) return 'bushing-wall';
  if (Number.isNaN(boss.outside)) return 'boss-size';
  if (!(boss.outside > outside)) return 'boss-wall';
  return null;
}

function roundFit({ seated, bushing, boss, loss }: RoundMatter): RoundFit | null {
  const { wall, inside } = seated;
  const { theta, z } = wall.grid;
  const columns = theta.length;
  const rows = seatRows(wall.places, columns);
  if (rows === null) return null;
  const [first, last] = rows;
  const [from, to] = [first * columns, (last + 1) * columns];
  const moves = pairMoves(
    ring(inside, seated.outside, bushing),
    ring(seated.outside, seated.boss.outside, boss),
    columns,
  );
  if (moves === null) return null;
  const proud = new Float64Array(to - from);
  for (let k = from; k < to; k++) {
    proud[k - from] = wall.places[k] === SEATED ? (wall.press[k]! - loss) / 2 : Number.NaN;
  }
  const depths = z.slice(first, last + 1);
  const found = press({ proud, z: depths, columns }, moves);
  if (found === null) return null;
  const radius = found.closed.map((closed) => inside / 2 - closed);
  const hole = holeSizes({ radius, z: depths, columns });
  const wallAsItIs = { radius: proud.map((h) => -h), z: depths, columns };
  const before = holeSizes(wallAsItIs);
  if (hole === null) return null;
  const whole = (part: Float64Array) => {
    const all = new Float64Array(wall.places.length).fill(Number.NaN);
    all.set(part, from);
    return all;
  };
  const [pressure, gap] = [whole(found.pressure), whole(found.gap)];
  return {
    rows,
    pressure,
    gap,
    inside: whole(radius),
    settled: found.settled,
    ...pressures(pressure, gap, wall),
    hole,
    closedIn: inside - hole.mean,
    boreOutOfRound: before?.outOfRound.mm ?? Number.NaN,
    holeSpan: radialSpan({ radius, z: depths, columns }),
    boreSpan: radialSpan(wallAsItIs),
    loss,
  };
}

function ring(inside: number, outside: number, { elastic, poisson }: Elastic): ElasticRing {
  return { inside, outside, modulus: elastic, poisson };
}

/** First and last row with a place of the seat; null: none. */
function seatRows(places: Uint8Array, columns: number): [number, number] | null {
  const first = places.indexOf(SEATED);
  if (first < 0) return null;
  return [Math.floor(first / columns), Math.floor(places.lastIndexOf(SEATED) / columns)];
}

function pressures(
  pressure: Field,
  gap: Field,
  { grid: { theta, z }, shares }: Seated['wall'],
): Pick<RoundFit, 'touching' | 'least' | 'mean' | 'greatest' | 'widest'> {
  const columns = theta.length;
  const place = (field: Field, k: number): PlaceOf => ({
    value: field[k]!,
    theta: theta[k % columns]!,
    z: z[Math.floor(k / columns)]!,
  });
  let [all, touching, sum] = [0, 0, 0];
  let [low, high, wide] = [-1, -1, -1];
  for (let k = 0; k < pressure.length; k++) {
    const p = pressure[k]!;
    if (Number.isNaN(p)) continue;
    const share = shares[Math.floor(k / columns)]!;
    all += share;
    sum += share * p;
    if (p > 0) touching += share;
    if (low < 0 || p < pressure[low]!) low = k;
    if (high < 0 || p > pressure[high]!) high = k;
    if (wide < 0 || gap[k]! > gap[wide]!) wide = k;
  }
  return {
    touching: touching / all,
    mean: sum / all,
    least: place(pressure, low),
    greatest: place(pressure, high),
    widest: place(gap, wide),
  };
}
