/** What press fit practice and two standards call for at this size, beside what is wanted and what the bore gives. */
import type { PressPart } from '../evaluate/fit/press.ts';
import type { Units } from '../job/schema.ts';
import { formatLength, inUnits } from '../job/units.ts';

type FitRange = PressPart['ranges'][number];

export interface RangeRow {
  readonly label: string;
  /** Stands over the first row of a source; '' over the others. */
  readonly head: string;
  /** As the figure counts. */
  readonly least: number;
  readonly most: number;
  /** This bore's own, and its mean. */
  readonly own: boolean;
  readonly mean: number;
  /** False: it lies far off the scale, or is not known. */
  readonly shown: boolean;
}

export interface FitRangesFigure {
  /** What the figure counts in: thou, or thousandths of a millimetre; across. */
  readonly unit: string;
  /** The scale runs from here to there. */
  readonly from: number;
  readonly to: number;
  readonly rows: readonly RangeRow[];
  /** NaN: none. */
  readonly wanted: number;
  readonly wantedText: string;
  readonly words: string;
}

const COUNTS: Readonly<Record<Units, { readonly one: number; readonly name: string }>> = {
  in: { one: 0.0254, name: 'thou across' },
  mm: { one: 0.001, name: 'thousandths of a mm across' },
};

const NAMES: Readonly<Record<string, string>> = {
  seat: 'fitted by hand',
  inch: 'pin bushings, by the inch',
  FN1: 'FN1, light drive',
  FN2: 'FN2, medium drive',
  FN3: 'FN3, heavy drive',
  FN4: 'FN4, force',
  FN5: 'FN5, force',
  LN1: 'LN1, for place alone',
  LN2: 'LN2, for place alone',
  LN3: 'LN3, for place alone',
};

const RANGE_SOURCES: Readonly<Record<FitRange['source'], string>> = {
  practice: 'Practice',
  'B4.1': 'ANSI B4.1',
  'ISO 286': 'ISO 286',
};

/** @returns null where the bushing's size is not known */
export function fitRangesFigure(part: PressPart, units: Units): FitRangesFigure | null {
  const { ranges, wanted } = part;
  if (ranges.length === 0) return null;
  const { one, name } = COUNTS[units];
  const far = Math.max(...ranges.map(({ most }) => most / one));
  const own = ownRow(part, one, far);
  const rows = [
    own,
    ...ranges.map(
      (range, at): RangeRow => ({
        label: NAMES[range.name] ?? range.name,
        head: range.source === ranges[at - 1]?.source ? '' : RANGE_SOURCES[range.source],
        least: range.least / one,
        most: range.most / one,
        own: false,
        mean: Number.NaN,
        shown: true,
      }),
    ),
  ];
  const asked = wanted.mm / one;
  const ends = [
    ...(own.shown ? [own.least, own.most] : []),
    ...(onScale(asked, far) ? [asked] : []),
  ];
  return {
    unit: name,
    from: Math.min(0, ...ends),
    to: Math.max(far, ...ends),
    rows,
    wanted: asked,
    wantedText: trimmed(asked.toFixed(1)),
    words: rangeWords(part, units).join(' '),
  };
}

/** What lies far outside all ranges is told in words, and would squeeze them together. */
function onScale(value: number, far: number): boolean {
  return Math.abs(value) <= 2 * far;
}

function ownRow({ local }: PressPart, one: number, far: number): RangeRow {
  const [least, mean, most] = [local.least / one, local.mean / one, local.greatest / one];
  const shown = onScale(least, far) && onScale(most, far);
  const told = Number.isNaN(local.mean) ? ' (not known)' : ' (off the scale)';
  return {
    label: `least, mean, most${shown ? '' : told}`,
    head: 'This bore',
    least,
    most,
    own: true,
    mean,
    shown,
  };
}

/** The same as sentences. */
export function rangeWords({ ranges, wanted }: PressPart, units: Units): string[] {
  if (ranges.length === 0) return ['Give the bushing’s outside diameter: the ranges follow.'];
  const digits = units === 'in' ? 5 : 4;
  const bare = (mm: number) => trimmed(inUnits(mm, units).toFixed(digits));
  const each = (source: FitRange['source']) =>
    ranges
      .filter((one) => one.source === source)
      .map(({ name, least, most }) => `${NAMES[name] ?? name} ${bare(least)} to ${bare(most)}`)
      .join('; ');
  const lines = (['practice', 'B4.1', 'ISO 286'] as const).map((source) => {
    const told = each(source);
    return told === ''
      ? `${RANGE_SOURCES[source]}: not tabulated for this size here (B4.1 up to 7.09 in, ISO 286 over 3 to 500 mm).`
      : `${RANGE_SOURCES[source]}, ${units} across: ${told}.`;
  });
  return [...lines, withinWords(ranges, wanted.mm, units)];
}

function withinWords(ranges: readonly FitRange[], wanted: number, units: Units): string {
  const size = formatLength(wanted, units);
  // What is on the edge is within: sizes are converted, and the last digit of a double tells nothing.
  const inside = ranges.filter(
    ({ least, most }) => wanted >= least - 1e-9 && wanted <= most + 1e-9,
  );
  if (inside.length > 0) {
    return `The wanted ${size} across lies within ${inside.map(({ name }) => NAMES[name] ?? name).join('; ')}.`;
  }
  const least = Math.min(...ranges.map((one) => one.least));
  const most = Math.max(...ranges.map((one) => one.most));
  const where =
    wanted < least
      ? 'looser than all of them'
      : wanted > most
        ? 'tighter than all of them'
        : 'between them';
  return `The wanted ${size} across is ${where}.`;
}

/** Without a last 0 that tells nothing. */
function trimmed(fixed: string): string {
  return fixed.endsWith('0') ? fixed.slice(0, -1).replace(/\.$/, '') : fixed;
}
