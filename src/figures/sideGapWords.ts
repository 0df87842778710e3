/** The room beside a boss between two ears, in words: the gap now and after the work, what stands in it, and face shims. */
import type { SideStack } from '../evaluate/fit/sideStack.ts';
import type { Units } from '../job/schema.ts';
import { formatLength } from '../job/units.ts';

const length = (mm: number, units: Units) => formatLength(mm, units, units === 'in' ? 3 : 2);

/** What is not said yet, a sentence each. */
export function sideGapMissing({ facts }: SideStack): string[] {
  const missing = [
    ...(facts.between.length === 0 ? ['the space between the ears'] : []),
    ...(facts.width.length === 0 ? ['the width over both faces of the boss'] : []),
  ];
  return [
    ...facts.faults.map((fault) => `${fault}. The side gap follows once it is put right.`),
    ...(missing.length > 0 ? [`Give ${missing.join(' and ')}: the side gap follows.`] : []),
  ];
}

/** The gap before and after, both sides together. */
export function sideGapWords(found: SideStack, units: Units): string[] {
  const { now, after, facts } = found;
  if (Number.isNaN(now.least)) return [];
  const { least, most } = facts;
  const told = (gap: SideStack['now']) =>
    gap.greatest - gap.least > 0.005
      ? `${length(gap.least, units)} at the tightest place and ${length(gap.greatest, units)} at the widest`
      : length(gap.least, units);
  return [
    `Side gap now, both sides together: ${told(now)}.`,
    `After the work: ${told(after)}.`,
    `Wanted: at least ${length(least.mm, units)} and at most ${length(most.mm, units)}.`,
    ...afterWords(found, units),
  ];
}

function afterWords({ after, facts, shims }: SideStack, units: Units): string[] {
  const { least, most } = facts;
  if (!(after.least >= 0)) {
    return [
      `It does not go in: everything together is ${length(-after.least, units)} wider than the space. Take a thinner washer, or dress a face.`,
    ];
  }
  if (!(after.least >= least.mm)) {
    return [
      `That is ${length(least.mm - after.least, units)} less than is wanted: with grease in it the joint would bind on its faces. Take a thinner washer, or dress a face.`,
    ];
  }
  if (!(after.greatest > most.mm)) return ['That is within the limits: no face shim is needed.'];
  if (shims === null) return ['That is more than is wanted, and no shim of the stock goes in.'];
  const side = (face: 'A' | 'B') =>
    shims[face].length === 0
      ? ''
      : `${shims[face].map((t) => length(t, units)).join(' + ')} beside face ${face}`;
  const where = [side('A'), side('B')].filter((one) => one !== '').join(' and ');
  const { left } = shims;
  const still =
    left.greatest > most.mm
      ? ' More is still open at the widest place than is wanted: the faces are not parallel, so dress or build them up.'
      : '';
  return [
    `Face shims: ${where}. They leave ${length(left.least, units)} at the tightest place and ${length(left.greatest, units)} at the widest.${still}`,
  ];
}

type Layer = SideStack['layers'][number];

export function layerName({ kind, name }: Layer): string {
  switch (kind) {
    case 'dressed':
      return 'face dressed square';
    case 'washers':
      return 'rim washers';
    case 'bushing':
      return 'bushing stands out';
    case 'ear-washers':
      return `rim washers on ${name}`;
    case 'ear-bushing':
      return `bushing of ${name} stands out`;
    case 'part':
      return name === '' ? 'loose part' : name;
  }
}

/** Every layer beside a face, as rows: which face, what, how thick, and when. */
export function layerRows(
  { layers }: SideStack,
  units: Units,
): { face: string; what: string; thick: string; when: string }[] {
  const WHEN = { now: 'now only', after: 'after the work', both: 'now and after' } as const;
  return layers.map((one) => ({
    face: one.face,
    what: layerName(one),
    thick: Number.isNaN(one.thickness) ? 'not known' : length(one.thickness, units),
    when: WHEN[one.when],
  }));
}
