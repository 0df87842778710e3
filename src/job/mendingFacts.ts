/**
 * What a job and its shop say of squeezing, shimming and welding, as millimetres; with the usual figure where nothing is
 * said. Common practice or judgement, as each says.
 */
import { clockTheta } from './clock.ts';
import type { Known } from './facts.ts';
import {
  type Decisions,
  type Feature,
  type Job,
  SteelPart,
  type Typed,
  type Units,
  type WayFigure,
} from './schema.ts';
import type { Shop } from './shop.ts';
import { lengthMm, MM_PER_INCH } from './units.ts';
import { usualStock, wayFigureMm } from './wayFigures.ts';

/** A number of any unit that stands in the job, or is usual. */
export interface Stated {
  readonly value: number;
  readonly from: 'typed' | 'default' | 'missing';
}

export interface MendingFacts {
  readonly squeeze: {
    readonly under: Known;
    /** How far the mean draws in with one heat; NaN: as usual for the size, or as the log teaches. */
    readonly upset: { readonly least: number; readonly most: number };
    /** °C. */
    /** `refused`: as it was typed, where that is no heat of steel; null else. */
    readonly heat: Stated & { readonly refused: string | null };
    /** MPa. */
    readonly yield: Stated;
    /** What was done and measured cold, across, mm; NaN: not said. */
    readonly done: { readonly moved: number; readonly along: number; readonly between: number };
    readonly log: readonly {
      readonly when: string;
      readonly note: string;
      readonly asked: number;
      readonly came: number;
      readonly meanBefore: number;
      readonly meanAfter: number;
    }[];
  };
  readonly shim: {
    /** NaN: none stated. */
    readonly round: number;
    readonly gap: Known;
    readonly miss: Known;
    readonly tab: Known;
    /** The least thickness all round, per side. */
    readonly least: Known;
    /** Left round a hole on each side. */
    readonly clear: number;
  };
  readonly stock: { readonly sheets: readonly number[]; readonly from: 'shop' | 'series' };
  readonly washers: readonly number[];
  readonly weld: {
    readonly allowance: Known;
    readonly over: 'seat' | 'low';
    /** Core, mm. */
    readonly electrode: number;
    readonly beadHeight: Known;
    readonly beadWidth: Known;
    /** Percent. */
    readonly overlap: Stated;
    readonly steel: SteelFacts;
  };
  readonly rims: readonly {
    readonly face: 'A' | 'B';
    readonly readings: readonly { readonly theta: number; readonly below: number }[];
    readonly standOut: number;
  }[];
}

/** What of the steel is known: percent by weight, NaN where not stated. */
export interface SteelFacts {
  readonly known: 'equivalent' | 'parts' | 'nothing';
  readonly carbon: number;
  readonly parts: Readonly<Record<SteelPart, number>>;
}

type Usual = Readonly<Record<Units, string>>;

/** Texts in the job's units, so that a field can show them. */
export const USUAL = {
  /** Judgement: butted, and free to close. */
  gap: { in: '0.010', mm: '0.25' },
  /** Judgement. */
  miss: { in: '0.001', mm: '0.025' },
  /** Judgement: long enough to be bent over the rim by hand. */
  tab: { in: '0.25', mm: '6' },
  /** Judgement: a stringer of a 3.2 mm (1/8 in) electrode. */
  beadHeight: { in: '0.10', mm: '2.5' },
  beadWidth: { in: '0.30', mm: '8' },
} as const satisfies Readonly<Record<string, Usual>>;

/** °C: the middle of the usual range for drawing plain steel in with a flame, 540 to 700 °C. Practice as told. */
export const USUAL_HEAT = 600;
/** Of a bead, percent: a third to a half is shop practice. */
export const USUAL_OVERLAP = 40;
/** MPa: EN 10025-2, S235, the least of the usual plain steels. */
export const USUAL_YIELD = 235;
/** Sheet that is thicker is no shim, mm. */
const THICKEST_SHIM = 1.6;
/** mm round a hole on each side. Judgement. */
const CLEAR = 0.8;

/** Washers beside pivot bushings as makers list them: mm, and the inch ones of the same range. */
const WASHERS: Readonly<Record<Units, readonly number[]>> = {
  in: [0.02, 0.03, 0.04, 0.06],
  mm: [0.5, 0.8, 1, 1.5, 1.6, 2],
};

export function usualTyped(which: keyof typeof USUAL, units: Units): Typed {
  return { text: USUAL[which][units], unit: units };
}

export function mendingFacts(job: Job, feature: Feature, shop: Shop | null): MendingFacts {
  const { squeeze = {}, shim = {}, weld = {} } = feature.decisions;
  const known = (typed: Typed | undefined, which: keyof typeof USUAL): Known => {
    const mm = lengthMm(typed);
    return mm >= 0
      ? { mm, from: 'typed' }
      : { mm: lengthMm(usualTyped(which, job.units)), from: 'default' };
  };
  const ofWays = (key: WayFigure): Known => ({
    mm: wayFigureMm(feature.decisions, key, job.units),
    from: lengthMm(feature.decisions.wayFigures?.[key]) > 0 ? 'typed' : 'default',
  });
  const stock = (shop?.stock ?? [])
    .map(({ thickness }) => lengthMm(thickness))
    .filter((t) => t > 0);
  const sheets = stock.filter((t) => t <= THICKEST_SHIM);
  const per = job.units === 'in' ? MM_PER_INCH : 1;
  return {
    squeeze: {
      under: ofWays('squeezeUnder'),
      upset: {
        least: lengthMm(feature.decisions.wayFigures?.heatLeast),
        most: lengthMm(feature.decisions.wayFigures?.heatMost),
      },
      heat: heatOf(squeeze),
      yield: stated(squeeze.yield, USUAL_YIELD),
      done: {
        moved: lengthMm(squeeze.moved),
        along: lengthMm(squeeze.along),
        between: lengthMm(squeeze.between),
      },
      log: (shop?.squeezes ?? []).map(({ when, note, asked, came, meanBefore, meanAfter }) => ({
        when,
        note,
        asked: lengthMm(asked),
        came: lengthMm(came),
        meanBefore: lengthMm(meanBefore),
        meanAfter: lengthMm(meanAfter),
      })),
    },
    shim: {
      round: lengthMm(shim.round),
      gap: known(shim.gap, 'gap'),
      miss: known(shim.miss, 'miss'),
      tab: known(shim.tab, 'tab'),
      least: ofWays('shimLeast'),
      clear: CLEAR,
    },
    stock:
      sheets.length > 0
        ? { sheets, from: 'shop' }
        : { sheets: usualStock(job.units), from: 'series' },
    washers: [...WASHERS[job.units].map((t) => t * per), ...stock],
    weld: {
      allowance: ofWays('weldAllowance'),
      over: weld.over ?? 'seat',
      electrode: Number(weld.electrode ?? '3.2'),
      beadHeight: aboveNone(known(weld.beadHeight, 'beadHeight'), 'beadHeight', job.units),
      beadWidth: aboveNone(known(weld.beadWidth, 'beadWidth'), 'beadWidth', job.units),
      overlap: within(stated(weld.overlap, USUAL_OVERLAP), 0, 90, USUAL_OVERLAP),
      steel: steelOf(weld),
    },
    rims: rimsOf(feature),
  };
}

function steelOf({ known, carbon, steel = {} }: NonNullable<Decisions['weld']>): SteelFacts {
  const parts = SteelPart.options.map((part) => [part, numberOf(steel[part])] as const);
  return {
    known: known ?? (numberOf(carbon) > 0 ? 'equivalent' : 'nothing'),
    carbon: numberOf(carbon),
    parts: Object.fromEntries(parts) as Record<SteelPart, number>,
  };
}

/** A plain number as typed, with a comma or a point; NaN for anything else. */
export function numberOf(text: string | undefined): number {
  const plain = (text ?? '').trim().replace(',', '.').replace(/ ?%$/, '');
  return /^(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
}

function stated(text: string | undefined, usual: number): Stated {
  const value = numberOf(text);
  return value > 0 ? { value, from: 'typed' } : { value: usual, from: 'default' };
}

function within(one: Stated, least: number, most: number, usual: number): Stated {
  return one.value >= least && one.value <= most ? one : { value: usual, from: 'default' };
}

/** A bead of no height or width would never end. */
function aboveNone(one: Known, which: keyof typeof USUAL, units: Units): Known {
  return one.mm > 0 ? one : { mm: lengthMm(usualTyped(which, units)), from: 'default' };
}

/** In the table of hot steel, else the usual. */
function heatOf({ heat }: NonNullable<Decisions['squeeze']>): MendingFacts['squeeze']['heat'] {
  const value = numberOf(heat?.text);
  const celsius = heat?.unit === 'F' ? (value - 32) / 1.8 : value;
  const counts = within({ value: celsius, from: 'typed' }, 20, 1200, USUAL_HEAT);
  const refused = heat !== undefined && counts.from === 'default';
  return { ...counts, refused: refused ? `${heat.text.trim()} °${heat.unit}` : null };
}

function rimsOf(feature: Feature): MendingFacts['rims'] {
  return (['A', 'B'] as const).flatMap((face) => {
    const readings = (feature.rim ?? [])
      .filter((one) => one.face === face)
      .map(({ clock, below }) => ({ theta: clockTheta(clock, face), below: lengthMm(below) }))
      .filter(({ theta, below }) => Number.isFinite(theta + below));
    if (readings.length === 0) return [];
    const bushing = feature.bushings.find(({ seat }) => seat.face === face);
    const standOut = lengthMm(bushing?.seat.standOut);
    return [{ face, readings, standOut: Number.isNaN(standOut) ? 0 : standOut }];
  });
}
