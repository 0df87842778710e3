/** What enters the bore and what cleans it up, over the whole measured depth: the same for page and report. */
import type { PlugGives } from '../bore/plugGive.ts';
import type { Plugs } from '../bore/types.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { written } from './written.ts';

/** A straight cylinder, with what is meant by it. */
export interface CylinderRow {
  readonly kind: 'entering' | 'average' | 'around' | 'zone';
  readonly name: string;
  readonly means: string;
  /** Across, without the unit; a dash where the wall leaves it open. */
  readonly across: string;
  /** Across, two standard deviations; nothing while it is not worked out. */
  readonly give: string;
}

const KINDS = [
  { kind: 'entering', name: 'biggest plug', means: 'the largest straight round bar that goes in' },
  { kind: 'average', name: 'average round', means: 'as much wall outside of it as inside' },
  {
    kind: 'around',
    name: 'smallest clean-up',
    means: 'the smallest straight round cut that leaves no old wall',
  },
  {
    kind: 'zone',
    name: 'minimum zone',
    means: 'midway between the two nearest straight rounds that hold all of the wall between them',
  },
] as const;

/** @returns none with one measured depth */
export function cylinderRows(
  { bore }: Plugs,
  gives: PlugGives | null,
  units: Units,
): CylinderRow[] {
  if (bore === null) return [];
  return KINDS.map(({ kind, name, means }) => {
    const give = gives?.all[kind] ?? Number.NaN;
    const { bare } = written(units, give);
    const plug = bore[kind];
    return {
      kind,
      name,
      means,
      across: bare(plug?.diameter ?? Number.NaN),
      give: give > 0 && plug !== null ? bare(give) : '',
    };
  });
}

/** Of what depth they are. */
export function cylinderHead({ from, to }: Plugs, units: Units): string {
  const deep = (z: number) => formatDepth(z, units);
  return `Straight through the measured depth, ${deep(from)} to ${deep(to)}`;
}

/**
 * How near the wall is to round and straight, and what of the give-or-take is not for these gauges to tell.
 *
 * @param seenLobes to which some instrument of the survey responds
 */
export function cylinderWords(
  { bore }: Plugs,
  gives: PlugGives | null,
  seenLobes: readonly number[],
  units: Units,
): string[] {
  if (bore === null || gives === null) return [];
  const out: string[] = [];
  const { all, seen } = gives;
  if (bore.zone !== null && all.range > 0) {
    const { perSide, plain } = written(units, all.range);
    out.push(
      `Out of round and out of straight together, all of the wall lies within ${perSide(bore.zone.range)}, give or take ` +
        `${plain(all.range)} (minimum zone).`,
    );
  }
  if (seen !== null && bore.entering !== null && seen.entering < MOSTLY * all.entering) {
    const { plain } = written(units, seen.entering);
    const unseen = SHAPES.filter(({ lobe }) => !seenLobes.includes(lobe)).map(({ name }) => name);
    out.push(
      `Much of the give-or-take is what these gauges cannot see. Were there no ${unseen.join(' and no ')}, the biggest ` +
        `plug would be known to ${plain(seen.entering)} across.`,
    );
  }
  return out;
}

/** Below this share of the whole, what the gauges see is not most of a give-or-take. */
const MOSTLY = 0.75;

const SHAPES = [
  { lobe: 1, name: 'bow along the bore' },
  { lobe: 2, name: 'oval' },
  { lobe: 3, name: 'three-lobed shape' },
] as const;
