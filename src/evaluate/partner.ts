/**
 * Where the bores that share this one's pin want its axis, from the places that the job states.
 *
 * A place tells of a bore's reference axis (from which its readings are counted): the station of face A along the pin,
 * counted the way in which depth grows; how far it lies beside the pin's axis there (x to 3 o'clock, y to 12); and its
 * run-off over the bore's length.
 */
import type { Axis } from '../bore/types.ts';
import { boreFacts } from '../job/facts.ts';
import type { Feature, Job } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';

export interface PartnerLine {
  readonly status: 'known';
  /** Names of the partners, in the job's order. */
  readonly with: readonly string[];
  /** The line in this bore's frame. */
  readonly axis: Axis;
  /** From the middle of this bore to that of the nearest partner, along the pin, mm, above 0. */
  readonly distance: number;
}

/** The line, or why there is none, in a sentence. */
export type Partner = PartnerLine | { readonly status: 'unknown'; readonly why: string };

const unknown = (why: string): Partner => ({ status: 'unknown', why });

export function partnerOf(job: Job, feature: Feature): Partner {
  const others = job.features.filter(({ id, kind }) => kind === 'bore' && id !== feature.id);
  if (others.length === 0)
    return unknown('This job holds no other bore on the same pin: add it, and say where it sits.');
  const own = middleOf(job, feature);
  if (own === null) {
    return unknown(
      'Where this bore sits along the pin is not stated: give its station, and its length.',
    );
  }
  const placed = others.flatMap((one) => middleOf(job, one) ?? []);
  if (placed.length === 0) {
    return unknown('Where the other bore sits along the pin is not stated: give its station.');
  }
  const distance = Math.min(...placed.map(({ station }) => Math.abs(station - own.station)));
  if (!(distance > 0)) {
    return unknown(
      'Both bores are stated to sit at one place along the pin: check their stations.',
    );
  }
  const line = lineThrough(placed);
  const at = (z: number) => own.station - own.half + z;
  const leanX = line.leanX - own.leanX;
  const leanY = line.leanY - own.leanY;
  return {
    status: 'known',
    with: placed.map(({ name }) => name),
    distance,
    axis: {
      x: line.x + line.leanX * at(0) - (own.x - own.leanX * own.half),
      y: line.y + line.leanY * at(0) - (own.y - own.leanY * own.half),
      leanX,
      leanY,
    },
  };
}

/** A bore's reference axis at its middle, in the pin's frame, mm. */
interface Middle extends Axis {
  readonly name: string;
  readonly station: number;
  readonly half: number;
}

function middleOf(job: Job, feature: Feature): Middle | null {
  const { place, name } = feature;
  const length = boreFacts(job, feature).length.mm;
  const station = lengthMm(place?.station) + length / 2;
  if (place === undefined || Number.isNaN(station)) return null;
  const or0 = (mm: number) => (Number.isNaN(mm) ? 0 : mm);
  const [runX, runY] = [or0(lengthMm(place.leanX)), or0(lengthMm(place.leanY))];
  return {
    name,
    station,
    half: length / 2,
    x: or0(lengthMm(place.x)) + runX / 2,
    y: or0(lengthMm(place.y)) + runY / 2,
    leanX: runX / length,
    leanY: runY / length,
  };
}

/** Straight through their middles by least squares; through a single one, along the pin. */
export function lineThrough(
  middles: readonly { readonly station: number; readonly x: number; readonly y: number }[],
): Axis {
  const mean = (of: (one: (typeof middles)[number]) => number) =>
    middles.reduce((sum, one) => sum + of(one), 0) / middles.length;
  const middle = mean(({ station }) => station);
  const spread = mean(({ station }) => (station - middle) ** 2);
  const lean = (of: (one: (typeof middles)[number]) => number) =>
    spread > 0 ? mean((one) => (one.station - middle) * of(one)) / spread : 0;
  const [leanX, leanY] = [lean(({ x }) => x), lean(({ y }) => y)];
  return {
    x: mean(({ x }) => x) - leanX * middle,
    y: mean(({ y }) => y) - leanY * middle,
    leanX,
    leanY,
  };
}

/** How far two bores may stand off one line: half of the running clearance, as the trade has it. */
export interface PartnerLimit {
  /** Running clearance, across, mm, and where it is from. */
  readonly clearance: number;
  readonly from: 'typed' | 'default';
  /** Sideways, per side, mm. */
  readonly aside: number;
  /** The same over the distance to the partner, mm per mm. */
  readonly lean: number;
}

/** Null where no partner or no clearance is known. */
export function partnerLimit(
  partner: Partner,
  { mm, from }: { readonly mm: number; readonly from: 'typed' | 'default' | 'missing' },
): PartnerLimit | null {
  if (partner.status !== 'known' || from === 'missing' || !(mm >= 0)) return null;
  return { clearance: mm, from, aside: mm / 2, lean: mm / 2 / partner.distance };
}
