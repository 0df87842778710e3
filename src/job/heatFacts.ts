/** What a job says of heat and cold, as °C, seconds and mm; with the usual figure where nothing is said. */
import { clockTheta } from './clock.ts';
import type { Cold, HeatFigures, Warmth } from './heatSchema.ts';
import { numberOf, type Stated } from './mendingFacts.ts';
import type { Units } from './schema.ts';
import { type Degrees, readDegrees } from './temperature.ts';
import { lengthMm } from './units.ts';

export interface HeatFacts {
  readonly cold: Cold;
  /** °C; NaN where nothing is stated and nothing is usual. */
  readonly own: number;
  readonly shop: Stated;
  readonly boss: number;
  readonly limit: number;
  readonly bushingLimit: number;
  readonly probes: readonly { readonly theta: number; readonly celsius: number }[];
  /** Across, mm; NaN: as usual for the size. */
  readonly room: number;
  /** Seconds. */
  readonly carry: Stated;
  readonly slide: Stated;
  readonly find: Stated;
  readonly stop: 'collar' | 'eye';
  /** W/(m² K); contact NaN: through the air between the two. */
  readonly film: Stated;
  readonly contact: number;
  /** kW and seconds. */
  readonly flame: Stated;
  readonly flameSeconds: Stated;
  /** What was typed and cannot be: one sentence each. */
  readonly wrong: readonly string[];
}

/** Seconds and W/(m² K), as texts so that a field can show them. */
export const USUAL_HEAT_FIGURES = {
  /** Shop practice: everything at hand, 10 to 15 seconds. */
  carry: '15',
  /** Judgement. */
  slide: '3',
  find: '5',
  /** Still air, with what is lost by radiation: textbooks give 2 to 25 for air left to itself. */
  film: '10',
  /** Judgement: what a large heating tip brings into the metal. */
  flame: '8',
  flameSeconds: '30',
} as const;
type Plain = keyof typeof USUAL_HEAT_FIGURES;

export const USUAL_SHOP = 20;
const NOTHING_COLDER = -273.15;
/** A limit of heat is not below a cool shop, °C. */
const COOL_SHOP = 10;

/** Degrees of a job: inch jobs are read in °F. */
export function degreesOf(units: Units): Degrees {
  return units === 'in' ? 'F' : 'C';
}

export function heatFacts(figures: HeatFigures | undefined): HeatFacts {
  const given = figures ?? {};
  const wrong: string[] = [];
  const warm = (warmth: Warmth | undefined, what: string) => celsiusOf(warmth, what, wrong);
  const plain = (key: Plain): Stated => {
    const value = numberOf(given[key]);
    if (value > 0 || (value === 0 && key !== 'film')) return { value, from: 'typed' };
    if (given[key] !== undefined) {
      wrong.push(`“${given[key]}” is no ${PLAIN_WORDS[key]}: the usual figure is taken.`);
    }
    return { value: Number(USUAL_HEAT_FIGURES[key]), from: 'default' };
  };
  const shop = warm(given.shop, 'air');
  const room = lengthMm(given.room);
  if (given.room !== undefined && !(room >= 0)) {
    wrong.push(`“${given.room.text}” is no room at entry: the usual figure is taken.`);
  }
  const limitOf = (which: 'limit' | 'bushingLimit', what: string) => {
    const celsius = warm(given[which], what);
    if (!(celsius <= COOL_SHOP)) return celsius;
    wrong.push(
      `“${given[which]!.text}” as the ${what} is colder than a shop: no metal is harmed by so little, and it is left out.`,
    );
    return Number.NaN;
  };
  const contact = numberOf(given.contact);
  if (given.contact !== undefined && !(contact > 0)) {
    wrong.push(`“${given.contact}” is no contact: the air between the two is counted.`);
  }
  return {
    cold: given.cold ?? 'freezer',
    own: warm(given.bushing, 'bushing'),
    shop: { value: shop > -60 ? shop : USUAL_SHOP, from: shop > -60 ? 'typed' : 'default' },
    boss: warm(given.boss, 'boss'),
    limit: limitOf('limit', 'limit of the boss'),
    bushingLimit: limitOf('bushingLimit', 'limit of the bushing'),
    probes: probesOf(given, wrong),
    room: room >= 0 ? room : Number.NaN,
    carry: plain('carry'),
    slide: plain('slide'),
    find: plain('find'),
    stop: given.stop ?? 'eye',
    film: plain('film'),
    contact: contact > 0 ? contact : Number.NaN,
    flame: plain('flame'),
    flameSeconds: plain('flameSeconds'),
    wrong,
  };
}

const PLAIN_WORDS: Readonly<Record<Plain, string>> = {
  carry: 'number of seconds for carrying',
  slide: 'number of seconds for pushing home',
  find: 'number of seconds for finding the depth',
  film: 'figure for heat lost to the air',
  flame: 'power of a flame',
  flameSeconds: 'number of seconds of flame',
};

function celsiusOf(warmth: Warmth | undefined, what: string, wrong: string[]): number {
  if (warmth === undefined) return Number.NaN;
  const read = readDegrees(warmth.text, warmth.unit);
  if (!read.ok) {
    if (read.why !== '') wrong.push(`${read.why}: the ${what} is left out.`);
    return Number.NaN;
  }
  if (read.celsius >= NOTHING_COLDER) return read.celsius;
  wrong.push(
    `Nothing gets colder than −273 °C (−460 °F): “${warmth.text}” for the ${what} cannot be, and is left out.`,
  );
  return Number.NaN;
}

function probesOf({ probes = [] }: HeatFigures, wrong: string[]): HeatFacts['probes'] {
  const found: { theta: number; celsius: number }[] = [];
  for (const { clock, at } of probes) {
    const theta = clockTheta(clock);
    const celsius = celsiusOf(at, `boss at ${clock}`, wrong);
    if (Number.isNaN(theta) && clock.trim() !== '') {
      wrong.push(`“${clock}” is no clock position: what the boss measures there is left out.`);
    }
    if (Number.isNaN(theta) || Number.isNaN(celsius)) continue;
    if (found.some((one) => Math.abs(Math.sin((one.theta - theta) / 2)) < 1e-3)) {
      wrong.push(`The boss is measured twice at ${clock}: the first counts.`);
    } else {
      found.push({ theta, celsius });
    }
  }
  return found;
}

/** Every temperature of the boss that was typed, by probes or as one figure, °C; none where nothing was. */
export function bossStated({ boss, probes }: HeatFacts): number[] {
  return [boss, ...probes.map(({ celsius }) => celsius)].filter((one) => !Number.isNaN(one));
}
