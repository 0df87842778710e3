/**
 * Running clearances as published or practised, by class of machine: a guide where the maker of the machine says nothing.
 * Service manuals (`published`) and what shops go by (`practice`); across, mm.
 */
import type { Units } from '../job/schema.ts';
import { inUnits } from '../job/units.ts';

interface Published {
  readonly of: string;
  readonly from: 'published' | 'practice';
  readonly least: number;
  readonly most: number;
  /** From which on it is worn out; NaN: not said. */
  readonly worn: number;
}

const NONE = Number.NaN;
const INCH = 25.4;

export const CLEARANCES: readonly Published[] = [
  {
    of: 'compact digging machine, pins of 30 to 50 mm (1.2 to 2 in)',
    from: 'published',
    least: 0.06,
    most: 0.32,
    worn: 1,
  },
  { of: 'the same, its main pivot', from: 'published', least: 0.07, most: 0.13, worn: 0.5 },
  {
    of: 'earth-moving machine, pin of 90 mm (3.5 in)',
    from: 'published',
    least: 0.125,
    most: 0.26,
    worn: NONE,
  },
  {
    of: 'earth-moving machine, pins of 110 to 120 mm (4.3 to 4.7 in)',
    from: 'published',
    least: 0.11,
    most: 0.28,
    worn: NONE,
  },
  { of: 'farm tractor, lift shaft', from: 'published', least: 0.03, most: 0.2, worn: 0.3 },
  {
    of: 'farm tractor, axle pivot of 40 mm (1.57 in)',
    from: 'published',
    least: 0,
    most: 0.007 * INCH,
    worn: 0.012 * INCH,
  },
  {
    of: 'farm tractor, steering cross-shaft of 44 mm (1.75 in)',
    from: 'published',
    least: 0.0005 * INCH,
    most: 0.003 * INCH,
    worn: NONE,
  },
  {
    of: 'mine, greased bronze, pin of 50 mm (2 in)',
    from: 'practice',
    least: 0.002 * INCH,
    most: 0.006 * INCH,
    worn: NONE,
  },
  {
    of: 'mine, greased bronze, pin of 100 mm (4 in)',
    from: 'practice',
    least: 0.003 * INCH,
    most: 0.008 * INCH,
    worn: NONE,
  },
];

export interface ClearanceRow {
  readonly of: string;
  readonly from: string;
  readonly fresh: string;
  readonly worn: string;
}

/** Figures without the unit, across; a dash where nothing is said. */
export function clearanceRows(units: Units): ClearanceRow[] {
  const bare = (mm: number) =>
    Number.isNaN(mm) ? '–' : inUnits(mm, units).toFixed(units === 'in' ? 4 : 2);
  return CLEARANCES.map(({ of, from, least, most, worn }) => ({
    of,
    from: from === 'published' ? 'service manual' : 'practice',
    fresh: `${bare(least)} to ${bare(most)}`,
    worn: bare(worn),
  }));
}

/** The table in one paragraph. */
export function publishedWords(units: Units): string {
  const rows = clearanceRows(units).map(
    ({ of, from, fresh, worn }) =>
      `${of} ${fresh}${worn === '–' ? '' : `, worn out from ${worn}`} (${from})`,
  );
  return `For comparison, running clearances when new, ${units} across: ${rows.join('; ')}. The maker of the machine comes before them.`;
}
