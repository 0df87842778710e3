/** A zone of the map in words that can be followed with a grinder in the hand. */
import type { Gap, Removal, WearSurface, Zone } from '../bore/types.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { clockAfter, clockBefore, nearClock } from './nearClock.ts';
import { sureWords } from './waitWords.ts';
import { written } from './written.ts';

export interface ZoneWords {
  /** Clock range and depth range, and what of them is left out. */
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
  const where = zoneWhere(zone, length, units);
  const at = `at ${zonePeak(zone, length, units)}`;
  const doubt = `give or take ${bare(zone.give)}`;
  if (zone.kind === 'high') {
    return {
      where,
      action: waits ? 'likely high by ' : 'take off ',
      amount: perSide(-zone.peak),
      rest: ` ${at}, where most stands, ${doubt}${waits ? '' : feather(zone)}.`,
    };
  }
  return {
    where,
    action: '',
    amount: perSide(zone.peak),
    rest: ` short ${at}, where most is missing, ${doubt}: build up or accept, and leave the grinder off it.`,
  };
}

/** `2:30 to 3:30, rim to 0.70 in deep, except …`: the whole stretch that the zone is told by. */
export function zoneWhere(zone: Zone, length: number, units: Units): string {
  const told = (stretch: Gap, clock: string) => `${clock}, ${depthRange(stretch, length, units)}`;
  const gaps = zone.gaps.map((gap) => told(gap, clockRange(gap)));
  const except = gaps.length > 0 ? `, except ${gaps.map(inSentence).join(' and ')}` : '';
  const patchy = zone.patchy ? ', but only where the map shows it' : '';
  return `${told(zone, clockRange(zone))}${except}${patchy}`;
}

function inSentence(text: string): string {
  return `${text[0]!.toLowerCase()}${text.slice(1)}`;
}

/** `4:00, 2.00 in deep`, `4:00 at the rim`: where its greatest is. */
export function zonePeak({ theta, z }: Zone, length: number, units: Units): string {
  const clock = nearClock(theta);
  if (z <= AT_THE_FACE * length) return `${clock} at the rim`;
  if (z >= (1 - AT_THE_FACE) * length) return `${clock} at the bottom`;
  return `${clock}, ${formatDepth(z, units)} deep`;
}

function clockRange(stretch: Gap): string {
  if (stretch.allRound) return 'All round';
  const [from, to] = [nearClock(stretch.from), nearClock(stretch.to)];
  return from === to ? `At ${from}` : `${from} to ${to}`;
}

/** The edge of a zone this near to a face is that face, as a share of the length. */
const AT_THE_FACE = 0.03;

function depthRange({ top, bottom }: Gap, length: number, units: Units): string {
  const fromRim = top <= AT_THE_FACE * length;
  const toBottom = bottom >= (1 - AT_THE_FACE) * length;
  if (fromRim && toBottom) return 'the whole depth';
  const deep = formatDepth(bottom, units);
  if (fromRim) return `rim to ${deep} deep`;
  const shallow = formatDepth(top, units);
  if (toBottom) return `${shallow} deep to the bottom`;
  return shallow === deep ? `${deep} deep` : `${shallow} to ${deep} deep`;
}

/** Quarters are counted outwards: nothing that stands is left beyond them. */
export function feather(zone: Zone): string {
  if (zone.allRound || zone.outerFrom === zone.outerTo) return '; feather it out';
  const [from, to] = [clockBefore(zone.outerFrom), clockAfter(zone.outerTo)];
  const sharp = [from === nearClock(zone.from), to === nearClock(zone.to)];
  if (sharp[0] && sharp[1]) return `; feather it out within, no farther than ${from} and ${to}`;
  if (sharp[0]) return `; feather to nothing by ${to}, and go no farther than ${from}`;
  if (sharp[1]) return `; feather to nothing by ${from}, and go no farther than ${to}`;
  return `; feather to nothing by ${from} and ${to}`;
}

/** A zone as a line: `2:30 to 3:30, rim to 0.70 in deep: take off 0.0031 in per side at 3:00 at the rim, … Of that, 0.0020 in per side is sure.` */
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
