/**
 * Where a bore's reference axis, from which its readings are counted, lies in the frame of the pin: as read from a straight
 * bar through all bores, else as its place in the job says. mm; x to 3 o'clock, y to 12, z along the pin.
 */
import { type BarCentre, barCentre } from '../../assembly/barCentre.ts';
import type { WearSurface } from '../../bore/types.ts';
import { barFacts } from '../../job/alignFacts.ts';
import { boreFacts } from '../../job/facts.ts';
import type { Feature, Job } from '../../job/schema.ts';
import { lengthMm } from '../../job/units.ts';

export interface Placed {
  /** Station of face A along the pin, counted the way in which depth grows. */
  readonly station: number;
  readonly length: number;
  /** At face A, and lean in mm per mm of depth. */
  readonly x: number;
  readonly y: number;
  readonly leanX: number;
  readonly leanY: number;
  /** `bar`: read; `stated`: in the job; `on-line`: nobody has said, so it is taken to stand on the line. */
  readonly from: 'bar' | 'stated' | 'on-line';
  /** False: only one face was read from the bar, so that it is taken to lie along the bar. */
  readonly leanKnown: boolean;
  /** The greatest of what readings miss a round hole by, per side; NaN: cannot be told. */
  readonly miss: number;
}

export type PlacedOrNot =
  | { readonly ok: true; readonly placed: Placed; readonly faults: readonly string[] }
  | { readonly ok: false; readonly why: string };

/** @param surface of the bore, which tells how its wall runs round at its faces; null: a round hole */
export function placedOf(job: Job, feature: Feature, surface: WearSurface | null): PlacedOrNot {
  const station = lengthMm(feature.place?.station);
  const length = boreFacts(job, feature).length.mm;
  if (Number.isNaN(station)) {
    return { ok: false, why: 'its station along the pin is not given' };
  }
  if (!(length > 0)) return { ok: false, why: 'its length is not given' };
  const { A, B, faults } = barFacts(job, feature);
  const end = surface?.grid.z.length ?? 1;
  const [a, b] = [barCentre(A, outOf(surface, 0)), barCentre(B, outOf(surface, end - 1))];
  const unread = [...faults, ...tooFew(feature, 'A', A, a), ...tooFew(feature, 'B', B, b)];
  const placed = { station, length, ...(fromBar(a, b, length) ?? fromJob(feature, length)) };
  return { ok: true, placed, faults: unread };
}

function tooFew(
  { name }: Feature,
  face: string,
  read: readonly unknown[],
  centre: BarCentre | null,
): string[] {
  if (read.length === 0 || centre !== null) return [];
  return [
    `${name}, face ${face}: a centre needs readings that go round, as at 12, 3, 6 and 9 o’clock`,
  ];
}

type Lying = Omit<Placed, 'station' | 'length'>;

function fromBar(a: BarCentre | null, b: BarCentre | null, length: number): Lying | null {
  const one = a ?? b;
  if (one === null) return null;
  const both = a !== null && b !== null;
  const misses = [a?.miss ?? Number.NaN, b?.miss ?? Number.NaN].filter((m) => !Number.isNaN(m));
  return {
    x: one.x,
    y: one.y,
    leanX: both ? (b.x - a.x) / length : 0,
    leanY: both ? (b.y - a.y) / length : 0,
    from: 'bar',
    leanKnown: both,
    miss: misses.length > 0 ? Math.max(...misses) : Number.NaN,
  };
}

function fromJob({ place }: Feature, length: number): Lying {
  const of = (key: 'x' | 'y' | 'leanX' | 'leanY') => lengthMm(place?.[key]);
  const or0 = (mm: number) => (Number.isNaN(mm) ? 0 : mm);
  const said = !Number.isNaN(of('x')) || !Number.isNaN(of('y'));
  return {
    x: or0(of('x')),
    y: or0(of('y')),
    leanX: or0(of('leanX')) / length,
    leanY: or0(of('leanY')) / length,
    from: said ? 'stated' : 'on-line',
    leanKnown: !Number.isNaN(of('leanX') + of('leanY')),
    miss: Number.NaN,
  };
}

/** How far the wall stands out of its mean radius at a row of the surface, by clock position, per side. */
function outOf(surface: WearSurface | null, row: number): (theta: number) => number {
  if (surface === null) return () => 0;
  const turns = surface.grid.theta.length;
  const wall = surface.mean.subarray(row * turns, (row + 1) * turns);
  const mean = wall.reduce((sum, r) => sum + r, 0) / turns;
  return (theta) => {
    const at = ((theta / (2 * Math.PI)) * turns + turns) % turns;
    const [low, share] = [Math.floor(at) % turns, at - Math.floor(at)];
    return (1 - share) * wall[low]! + share * wall[(low + 1) % turns]! - mean;
  };
}
