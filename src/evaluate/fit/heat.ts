/** Which temperatures let a bushing slip into its bore, and what the chosen ones open. */

import { after, type Cooling, coolingOf, type Part } from '../../assembly/cooling.ts';
import { HOTTEST, strainAt } from '../../assembly/expansion.ts';
import { expands } from '../../assembly/family.ts';
import type { Material } from '../../assembly/material.ts';
import { BATHS, bossFor, type Mating, openingAt, usualRoom } from '../../assembly/slip.ts';
import { ovalOf, type Uneven, unevenOf } from '../../assembly/unevenHeat.ts';
import { SEATED } from '../../bore/removal.ts';
import { bossStated, type HeatFacts, heatFacts } from '../../job/heatFacts.ts';
import type { Cold } from '../../job/heatSchema.ts';
import { type MetalUsed, metalUsed } from './material.ts';
import type { FitMatter, Seated } from './seated.ts';

/** Why nothing is told of heat. */
export type HeatFault =
  | 'loose'
  | 'no-size'
  | 'boss-melts'
  | 'boss-past'
  | 'boss-cold'
  | 'bushing-past'
  | 'bushing-hotter';

/** One way of getting the bushing in: it that cold, the boss that warm. °C; mm across. */
export interface HeatRow {
  readonly cold: Cold;
  /** Of the bushing when it is taken out, and when it touches. */
  readonly taken: number;
  readonly entry: number;
  /** How much smaller the bushing is then than at 20 °C. */
  readonly smaller: number;
  /** Of the boss when they touch, and when the heat is taken away, for the room wanted; NaN: no such below 600 °C. */
  readonly boss: number;
  readonly off: number;
  /** `cold`: no heat is needed; `heat`: within the limit; `over`: past what this boss may have. */
  readonly verdict: 'cold' | 'heat' | 'over';
}

export interface Chosen {
  readonly row: HeatRow;
  /** °C of the boss when the heat is taken away and when they touch; where from. */
  readonly off: number;
  readonly boss: number;
  readonly from: 'typed' | 'probes' | 'usual';
  readonly uneven: Uneven | null;
  /** Across, mm: what two warmer sides take of it, least to most; zeros where it is even. */
  readonly oval: { readonly least: number; readonly most: number };
  /** Room when they touch, by the mean temperature, and where it is least. */
  readonly room: number;
  readonly least: number;
}

export interface Heat {
  readonly facts: HeatFacts;
  readonly fault: HeatFault | null;
  readonly boss: Material;
  readonly bushing: Material;
  /** Press fit at the tightest place, across, mm, and its give-or-take (two standard deviations; NaN: not known). */
  readonly press: number;
  readonly give: number;
  /** Room wanted at entry, across, mm. */
  readonly room: number;
  readonly hardened: boolean;
  /** Most that each may have, °C. */
  readonly limits: { readonly boss: number; readonly bushing: number };
  readonly rows: readonly HeatRow[];
  readonly chosen: Chosen | null;
  /** Both in air; NaN within where a size is missing. */
  readonly cooling: { readonly boss: Cooling; readonly bushing: Cooling };
  /** Both once evened out, nothing lost to the air, °C; NaN where a size is missing. */
  readonly mixed: number;
  /** How much shorter the bushing is at entry, mm; NaN: its length is not known. */
  readonly shorter: number;
  /** Whether the boss shows its heat in the oxide colours of clean steel. */
  readonly colours: boolean;
}

/** Below this the change of length is not tabled, °C. */
const COLDEST = -200;

/** Bearing steel is tempered at 150 to 230 °C (ASM): below that nothing of its hardness goes. */
const HARDENED_LIMIT = 150;

/**
 * Most that a metal may have, °C. Steel 300: DIN 7190-1, joining in a furnace. The others are judgement, so that nothing of
 * their strength is lost: what was hardened or aged is softened by more.
 */
const METAL_LIMITS: Readonly<Record<string, number>> = {
  'plain steel': 300,
  'stainless steel': 300,
  'hardened bearing steel': HARDENED_LIMIT,
  aluminium: 120,
};
const OTHER_LIMIT = 200;
export function heatOf(matter: FitMatter, seated: Seated): Heat {
  const facts = heatFacts(matter.feature.decisions.fit?.heat);
  const used = {
    boss: metalUsed(matter.job, seated.boss.material, 'boss'),
    bushing: metalUsed(matter.job, seated.material, 'bushing'),
  };
  const [boss, bushing] = [used.boss.material, used.bushing.material];
  const { press, give } = tightest(seated);
  const room = facts.room >= 0 ? facts.room : usualRoom(seated.outside);
  const hardened =
    used.bushing.metal === 'hardened bearing steel' ||
    /hard|carburi/.test((seated.material ?? '').toLowerCase());
  const cooling = {
    boss: coolingOf(partOf(seated, 'boss', boss), facts.film.value),
    bushing: coolingOf(partOf(seated, 'bushing', bushing), facts.film.value),
  };
  const limits = {
    boss: limitOf(facts.limit, facts.shop.value, used.boss),
    bushing:
      hardened && !(facts.bushingLimit > facts.shop.value)
        ? HARDENED_LIMIT
        : limitOf(facts.bushingLimit, facts.shop.value, used.bushing),
  };
  const colours = expands(boss).family === 'steel';
  const common = { facts, boss, bushing, press, give, room, hardened, limits, cooling, colours };
  const none = { rows: [], chosen: null, mixed: Number.NaN, shorter: Number.NaN };
  const mating = {
    bore: seated.outside - press,
    bushing: seated.outside,
    bossMetal: expands(boss),
    bushingMetal: expands(bushing),
  };
  const fault = faultOf(facts, mating, boss, press);
  if (fault !== null) return { ...common, fault, ...none };
  const rows = coldsOf(facts).map(([cold, taken]) => rowOf({ ...common, mating }, cold, taken));
  const chosen = chosenOf({ ...common, mating }, rows);
  return {
    ...common,
    fault: chosen.row.entry > chosen.boss ? 'bushing-hotter' : null,
    rows,
    chosen,
    mixed: mixedOf(cooling, boss, bushing, chosen),
    shorter: -seated.length * strainAt(mating.bushingMetal, chosen.row.entry),
  };
}

function limitOf(stated: number, shop: number, { metal }: MetalUsed): number {
  return stated > shop ? stated : (METAL_LIMITS[metal] ?? OTHER_LIMIT);
}

function partOf(seated: Seated, which: 'boss' | 'bushing', metal: Material): Part {
  const { inside, outside, length, seat, boss } = seated;
  const long = length > 0 ? length : seat.to - seat.from;
  return which === 'boss'
    ? { inside: outside, outside: boss.outside, length: long, metal }
    : { inside, outside, length: long, metal };
}

/** Where it is to be held and is tightest: press fit across, and its give-or-take. */
function tightest({ wall }: Seated): { press: number; give: number } {
  let at = -1;
  for (let i = 0; i < wall.press.length; i++) {
    if (wall.places[i] !== SEATED || Number.isNaN(wall.press[i]!)) continue;
    if (at < 0 || wall.press[i]! > wall.press[at]!) at = i;
  }
  if (at < 0) return { press: Number.NaN, give: Number.NaN };
  // Two standard deviations a side, two sides.
  return { press: wall.press[at]!, give: wall.sd === null ? Number.NaN : 4 * wall.sd[at]! };
}

function faultOf(
  facts: HeatFacts,
  { bore, bushing }: Mating,
  metal: Material,
  press: number,
): HeatFault | null {
  if (!(bushing > 0 && bore > 0)) return 'no-size';
  if (!(press > 0)) return 'loose';
  const stated = bossStated(facts);
  if (stated.some((celsius) => celsius >= metal.melts)) return 'boss-melts';
  if (stated.some((celsius) => celsius > HOTTEST)) return 'boss-past';
  if (stated.some((celsius) => celsius < COLDEST)) return 'boss-cold';
  return facts.cold === 'own' && (facts.own > HOTTEST || facts.own < COLDEST)
    ? 'bushing-past'
    : null;
}

function coldsOf({ shop, own }: HeatFacts): [Cold, number][] {
  const colds: [Cold, number][] = [
    ['as-it-is', shop.value],
    ['freezer', BATHS.freezer],
    ['dry-ice', BATHS.dryIce],
    ['nitrogen', BATHS.nitrogen],
  ];
  if (own >= COLDEST && own <= HOTTEST) colds.push(['own', own]);
  return colds;
}

type Common = Pick<Heat, 'facts' | 'room' | 'limits' | 'cooling' | 'boss'> & {
  readonly mating: Mating;
};

function rowOf(
  { facts, room, limits, cooling, mating }: Common,
  cold: Cold,
  taken: number,
): HeatRow {
  const { shop, carry } = facts;
  const entry = carried(cooling.bushing, taken, shop.value, carry.value);
  const boss = bossFor(mating, room, entry);
  const off = beforeCarrying(cooling.boss, boss, shop.value, carry.value);
  return {
    cold,
    taken,
    entry,
    smaller: -mating.bushing * strainAt(mating.bushingMetal, entry),
    boss,
    off,
    verdict: boss <= shop.value ? 'cold' : off <= limits.boss ? 'heat' : 'over',
  };
}

/** Where a size is missing nothing is lost on the way. */
function carried(cooling: Cooling, from: number, air: number, seconds: number): number {
  return Number.isNaN(cooling.time) ? from : after(cooling, from, air, seconds);
}

function beforeCarrying({ time }: Cooling, at: number, air: number, seconds: number): number {
  return Number.isNaN(time) || at <= air ? at : air + (at - air) * Math.exp(seconds / time);
}

function chosenOf(common: Common, rows: readonly HeatRow[]): Chosen {
  const { facts, mating, cooling } = common;
  const row = rows.find(({ cold }) => cold === facts.cold) ?? rows[0]!;
  const uneven = unevenOf(facts.probes);
  const [shop, seconds] = [facts.shop.value, facts.carry.value];
  const usual = Number.isNaN(row.off) ? common.limits.boss : Math.max(shop, row.off);
  const off = uneven?.mean ?? (Number.isNaN(facts.boss) ? usual : facts.boss);
  const boss = carried(cooling.boss, off, shop, seconds);
  const oval = uneven ? ovalOf(uneven, mating.bossMetal, mating.bore) : { least: 0, most: 0 };
  const room = openingAt(mating, boss, row.entry);
  const from = uneven ? 'probes' : Number.isNaN(facts.boss) ? 'usual' : 'typed';
  return { row, off, boss, from, uneven, oval, room, least: room - oval.most };
}

function mixedOf(
  cooling: Heat['cooling'],
  boss: Material,
  bushing: Material,
  { row, boss: warm }: Chosen,
): number {
  const holds = (mass: number, heat: number) => mass * heat;
  const [b, c] = [holds(cooling.boss.mass, boss.heat), holds(cooling.bushing.mass, bushing.heat)];
  return (b * warm + c * row.entry) / (b + c);
}
