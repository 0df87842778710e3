/** What press fit the trade and two standards call for at a size: ranges, mm across, least first. */
import { FORCE_FITS, type InchLimits, LOCATION_FITS } from './inchFits.ts';
import { holeLimits, type ShaftLetter, shaftLimits } from './isoFits.ts';

const MM_PER_INCH = 25.4;
const MM_PER_THOU = 0.0254;

export type RangeSource = 'practice' | 'B4.1' | 'ISO 286';

export interface FitRange {
  readonly source: RangeSource;
  /** `FN2`, `H7/p6`; of practice `seat` (fitted by hand) or `inch` (so much an inch). */
  readonly name: string;
  readonly least: number;
  readonly most: number;
}

/** Pressed-in pin bushings: 0.001 to 0.0015 in an inch of outside diameter. Common practice, as told. */
const PER_INCH = { least: 0.001, most: 0.0015 };
/** A seat fitted by hand: about 0.002 in; between the 0.0008 and 0.004 in of a general figure. Common practice, as told. */
const BY_HAND = { least: 0.0008 * MM_PER_INCH, most: 0.004 * MM_PER_INCH };

const ISO_LETTERS: readonly ShaftLetter[] = ['p', 'r', 's', 'u'];
const FORCE = ['FN1', 'FN2', 'FN3', 'FN4', 'FN5'] as const;
const LOCATION = ['LN1', 'LN2', 'LN3'] as const;

/** @returns none of a standard outside its table here (B4.1 to 7.09 in, ISO 286 over 3 to 500 mm); none at all of a size not known */
export function fitRanges(mm: number): FitRange[] {
  if (!(mm > 0) || !Number.isFinite(mm)) return [];
  return [
    { source: 'practice', name: 'seat', ...BY_HAND },
    { source: 'practice', name: 'inch', least: PER_INCH.least * mm, most: PER_INCH.most * mm },
    ...inchRanges(mm / MM_PER_INCH),
    ...isoRanges(mm),
  ];
}

function inchRanges(inches: number): FitRange[] {
  const location = LOCATION_FITS.find(({ to }) => inches <= to);
  const force = FORCE_FITS.find(({ to }) => inches <= to);
  return [
    ...LOCATION.flatMap((name) => inchRange(name, location?.[name])),
    ...FORCE.flatMap((name) => inchRange(name, force?.[name])),
  ];
}

/** Loosest: the smallest shaft in the largest hole; tightest: the largest shaft in the smallest. */
function inchRange(name: string, limits: InchLimits | undefined): FitRange[] {
  if (limits === undefined) return [];
  const [hole, lower, upper] = limits;
  return [{ source: 'B4.1', name, least: (lower - hole) * MM_PER_THOU, most: upper * MM_PER_THOU }];
}

function isoRanges(mm: number): FitRange[] {
  const hole = holeLimits(mm, 7);
  return ISO_LETTERS.flatMap((letter): FitRange[] => {
    const shaft = shaftLimits(mm, letter, 6);
    const least = shaft.lower - hole.upper;
    return Number.isNaN(least)
      ? []
      : [{ source: 'ISO 286', name: `H7/${letter}6`, least, most: shaft.upper }];
  });
}
