/** Play of a pin in its hole and what is left of a bushing's wall: plain differences, millimetres. */
import type { DiameterAt, Known2, PartSize } from './partSize.ts';
import type { Section, WearSurface } from './types.ts';

/** Hole less pin, across, at its loosest and its tightest. */
export interface PlayNow {
  readonly loosest: DiameterAt;
  readonly tightest: DiameterAt;
  /** Compared clock position by clock position, or greatest with least where these are not known of both. */
  readonly by: 'clock' | 'extremes';
}

/** What is measured of one part: its sizes, and its surface with the depths read where clock positions are known. */
export interface Measured {
  readonly size: PartSize;
  readonly surface: WearSurface | null;
  readonly sections: readonly Section[];
}

/** Half a turn in steps of the surface's grid: the largest or least diameter of all measured depths at each. */
function ends({ surface, sections }: Measured): { theta: number; most: Place; least: Place }[] {
  if (surface === null) return [];
  const { theta, z } = surface.grid;
  const half = theta.length / 2;
  const rows = sections.map((s) => nearestRow(z, s.z));
  return Array.from({ length: half }, (_, i) => {
    const at = rows.map((row) => ({
      z: z[row]!,
      mm: surface.mean[row * theta.length + i]! + surface.mean[row * theta.length + i + half]!,
    }));
    return {
      theta: theta[i]!,
      most: at.reduce((a, b) => (b.mm > a.mm ? b : a)),
      least: at.reduce((a, b) => (b.mm < a.mm ? b : a)),
    };
  });
}

interface Place {
  readonly z: number;
  readonly mm: number;
}

function nearestRow(z: Float64Array, at: number): number {
  return Math.round((at / z[z.length - 1]!) * (z.length - 1));
}

/**
 * How far along one part lies in the other is not measured: at each clock position the widest depth of the hole stands
 * against the thinnest of the pin, and the other way about.
 */
export function playNow(hole: Measured, pin: Measured): PlayNow {
  const loose = Math.hypot(hole.size.greatest.give, pin.size.least.give);
  const tight = Math.hypot(hole.size.least.give, pin.size.greatest.give);
  const [a, b] = [ends(hole), ends(pin)];
  if (a.length === 0 || a.length !== b.length) {
    const { greatest, least } = hole.size;
    return {
      loosest: { ...greatest, mm: greatest.mm - pin.size.least.mm, give: loose },
      tightest: { ...least, mm: least.mm - pin.size.greatest.mm, give: tight },
      by: 'extremes',
    };
  }
  const at = (i: number, of: 'loosest' | 'tightest'): DiameterAt => {
    const [h, p] = of === 'loosest' ? [a[i]!.most, b[i]!.least] : [a[i]!.least, b[i]!.most];
    return { mm: h.mm - p.mm, give: of === 'loosest' ? loose : tight, theta: a[i]!.theta, z: h.z };
  };
  const all = a.map((_, i) => i);
  return {
    loosest: all.map((i) => at(i, 'loosest')).reduce((x, y) => (y.mm > x.mm ? y : x)),
    tightest: all.map((i) => at(i, 'tightest')).reduce((x, y) => (y.mm < x.mm ? y : x)),
    by: 'clock',
  };
}

/** Wall of a worn bushing. */
export interface WallLeft {
  /** When new; NaN not known. */
  readonly fresh: number;
  readonly mean: Known2;
  /** Where it is thinnest: as measured where one side is known to be worn, else both sides alike. */
  readonly least: DiameterAt;
  readonly oneSided: boolean;
  /** What the thinnest place would be if all of it were gone on one side; the same as `least` where oneSided. */
  readonly leastOneSide: number;
  /** Share of the new wall that is gone at `least`; NaN not known. */
  readonly lost: number;
}

/**
 * @param outside of the same bushing, or what stands in for it
 * @param fresh wall when new, mm; NaN not known
 * @param side the worn side, where it is known or said; NaN both alike
 */
export function wallLeft(
  inside: Measured,
  outside: PartSize,
  fresh: number,
  side: number,
): WallLeft {
  const { mean, greatest, least } = inside.size;
  const give = Math.hypot(greatest.give, outside.mean.give) / 2;
  const alike = (outside.mean.mm - greatest.mm) / 2;
  // Of w gone across at the worst place one side bears all where the other is unworn.
  const atDepth = inside.sections.find(({ z }) => z === greatest.z)?.least.diameter;
  const unworn = atDepth !== undefined && atDepth > 0 ? atDepth : least.mm;
  const single = alike - (greatest.mm - unworn) / 2;
  const oneSided = !Number.isNaN(side);
  const thinnest = oneSided ? single : alike;
  return {
    fresh,
    mean: {
      mm: (outside.mean.mm - mean.mm) / 2,
      give: Math.hypot(mean.give, outside.mean.give) / 2,
    },
    least: { mm: thinnest, give, theta: oneSided ? side : greatest.theta, z: greatest.z },
    oneSided,
    leastOneSide: single,
    lost: fresh > 0 ? (fresh - thinnest) / fresh : Number.NaN,
  };
}
