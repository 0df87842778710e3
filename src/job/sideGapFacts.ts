/** The room beside a boss as millimetres; NaN or empty: not known. */
import type { Known } from './facts.ts';
import type { Feature, Typed, Units } from './schema.ts';
import type { SidePart } from './sideGapSchema.ts';
import { lengthMm, readLength } from './units.ts';

export interface SideGapFacts {
  readonly between: readonly number[];
  readonly width: readonly number[];
  readonly parts: readonly (Pick<SidePart, 'name' | 'face' | 'when'> & {
    readonly thickness: number;
  })[];
  readonly faces: 'as-it-is' | 'dressed';
  readonly least: Known;
  readonly most: Known;
  /** What was typed and cannot be used, a sentence each without a full stop. */
  readonly faults: readonly string[];
}

/**
 * Of the whole gap: most, as makers' manuals of digging and loading machines have it, under 0.040 in (1.0 mm), some up
 * to 0.060; least, room for a film of grease on both sides, by judgement.
 */
const USUAL = {
  least: { in: '0.005', mm: '0.12' },
  most: { in: '0.040', mm: '1.0' },
} as const;

export function usualSideGap(which: keyof typeof USUAL, units: Units): Typed {
  return { text: USUAL[which][units], unit: units };
}

export function sideGapFacts({ sideGap = {} }: Feature, units: Units): SideGapFacts {
  const faults: string[] = [];
  const size = (typed: Typed, what: string): number => {
    const read = readLength(typed);
    if (read.ok && read.mm > 0) return read.mm;
    if (read.ok) faults.push(`${what}: “${typed.text.trim()}” is no size above nothing`);
    else if (read.why !== '') faults.push(`${what}: ${read.why}`);
    return Number.NaN;
  };
  const sizes = (list: readonly Typed[] | undefined, what: string) =>
    (list ?? []).map((one) => size(one, what)).filter((mm) => mm > 0);
  const limit = (which: 'least' | 'most'): Known => {
    const mm = lengthMm(sideGap[which]);
    return mm >= 0
      ? { mm, from: 'typed' }
      : { mm: lengthMm(usualSideGap(which, units)), from: 'default' };
  };
  return {
    between: sizes(sideGap.between, 'Between the ears'),
    width: sizes(sideGap.width, 'Over the faces'),
    parts: (sideGap.parts ?? []).map(({ name, face, when, thickness }) => ({
      name,
      face,
      when,
      thickness: size(thickness, name),
    })),
    faces: sideGap.faces ?? 'as-it-is',
    least: limit('least'),
    most: limit('most'),
    faults,
  };
}
