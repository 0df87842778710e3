/** A zone of the map in words that can be followed with a grinder in the hand. */
import type { Removal, WearSurface, Zone } from '../bore/types.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearClock } from './nearClock.ts';
import { sureWords } from './waitWords.ts';
import { written } from './written.ts';

export interface ZoneWords {
  /** Clock range and depth range. */
  readonly where: string;
  /** `take off` or nothing. */
  readonly action: string;
  /** The figure, with `per side`. */
  readonly amount: string;
  readonly rest: string;
}

/**
 * @param length depth of the bottom, mm
 * @param waits no pass is given until it is measured better: what is high is only likely so
 */
export function zoneWords(zone: Zone, length: number, units: Units, waits = false): ZoneWords {
  const { perSide, bare } = written(units, zone.give);
  const where = `${clockRange(zone)}, ${depthRange(zone, length, units)}`;
  const doubt = `give or take ${bare(zone.give)}`;
  if (zone.kind === 'high') {
    return {
      where,
      action: waits ? 'likely high by ' : 'take off ',
      amount: perSide(-zone.peak),
      rest: ` at the middle, ${doubt}${waits ? '' : feather(zone)}.`,
    };
  }
  return {
    where,
    action: '',
    amount: perSide(zone.peak),
    rest: ` short at the worst place, ${doubt}: build up or accept, and leave the grinder off it.`,
  };
}

export function clockRange(zone: Zone): string {
  if (zone.allRound) return 'All round';
  const [from, to] = [nearClock(zone.from), nearClock(zone.to)];
  return from === to ? `At ${from}` : `${from} to ${to}`;
}

/** The edge of a zone this near to a face is that face, as a share of the length. */
const AT_THE_FACE = 0.03;

export function depthRange({ top, bottom }: Zone, length: number, units: Units): string {
  const fromRim = top <= AT_THE_FACE * length;
  const toBottom = bottom >= (1 - AT_THE_FACE) * length;
  if (fromRim && toBottom) return 'the whole depth';
  const deep = formatDepth(bottom, units);
  if (fromRim) return `rim to ${deep} deep`;
  const shallow = formatDepth(top, units);
  if (toBottom) return `${shallow} deep to the bottom`;
  return shallow === deep ? `${deep} deep` : `${shallow} to ${deep} deep`;
}

export function feather(zone: Zone): string {
  if (zone.allRound || zone.outerFrom === zone.outerTo) return '; feather it out';
  return `; feather to nothing by ${nearClock(zone.outerFrom)} and ${nearClock(zone.outerTo)}`;
}

/** A zone as a line: `2:30 to 3:30, rim to 0.70 in deep: take off 0.0031 in per side at the middle, … Of that, 0.0020 in per side is sure.` */
export function sayZone(
  zone: Zone,
  length: number,
  units: Units,
  of: { readonly surface: WearSurface | null; readonly removal: Removal | null },
  waits: boolean,
): string {
  const { where, action, amount, rest } = zoneWords(zone, length, units, waits);
  return `${where}: ${action}${amount}${rest} ${sureWords(zone, of, units, waits)}`.trimEnd();
}
