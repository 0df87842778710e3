/** How large a measured bore, bushing or pin is, how far it is worn and where: figures of one survey, across. */
import type { Pattern } from './patternTypes.ts';
import type { Profile, Section } from './types.ts';

/** A figure and two standard deviations of it, mm; NaN not known. */
export interface Known2 {
  readonly mm: number;
  readonly give: number;
}

/** A diameter and where: clock position of the pair (NaN all round) and depth (NaN not told). */
export interface DiameterAt extends Known2 {
  readonly theta: number;
  readonly z: number;
}

export interface PartSize {
  readonly mean: Known2;
  readonly least: DiameterAt;
  readonly greatest: DiameterAt;
  /** Greatest less least diameter at one depth, the worst. */
  readonly outOfRound: DiameterAt;
  /** Over the length, positive where it widens inward. */
  readonly taper: Known2;
}

/** Worn against the new size, at the worst place. */
export interface Worn {
  readonly across: Known2;
  /** All of it where one side is known or said to be worn, else half: both sides alike. */
  readonly perSide: Known2;
  readonly oneSided: boolean;
  readonly theta: number;
  readonly z: number;
}

/** Of the greatest or the least diameter: the mean's, and twice that of each even lobe; two standard deviations. */
function endGive({ give, lobes }: Section): number {
  const even = lobes.filter(({ n }) => n % 2 === 0);
  return Math.hypot(give, ...even.map(({ sd }) => 4 * sd));
}

/** Of the difference of both: four times the oval's amplitude. */
function outOfRoundGive({ lobes }: Section): number {
  const oval = lobes.find(({ n }) => n === 2);
  return oval === undefined ? Number.NaN : 8 * oval.sd;
}

/** @returns null where no depth was measured */
export function partSize(
  sections: readonly Section[],
  profile: Profile | null,
  length: number,
): PartSize | null {
  if (sections.length === 0) return null;
  const end = (s: Section, which: 'least' | 'greatest'): DiameterAt =>
    Number.isNaN(s[which].diameter)
      ? { mm: s.meanDiameter, give: s.give, theta: Number.NaN, z: s.z }
      : { mm: s[which].diameter, give: endGive(s), theta: s[which].theta, z: s.z };
  const least = sections.map((s) => end(s, 'least')).reduce((a, b) => (b.mm < a.mm ? b : a));
  const greatest = sections.map((s) => end(s, 'greatest')).reduce((a, b) => (b.mm > a.mm ? b : a));
  const oval = sections.reduce((a, b) => (b.outOfRound > a.outOfRound ? b : a));
  const slope = profile?.taper ?? Number.NaN;
  return {
    mean: {
      mm: sections.reduce((sum, s) => sum + s.meanDiameter, 0) / sections.length,
      // What depths share does not average out: none is better known than each by itself.
      give: Math.max(...sections.map((s) => s.give)),
    },
    least,
    greatest,
    outOfRound: {
      mm: oval.outOfRound,
      give: outOfRoundGive(oval),
      theta: oval.greatest.theta,
      z: oval.z,
    },
    taper: { mm: slope * length, give: 2 * (profile?.taperSd ?? Number.NaN) * length },
  };
}

/**
 * @param newSize across, mm; NaN not known
 * @param outside true where wear makes it smaller
 * @param egg the worn side, where it is known or said
 */
export function wornOf(
  size: PartSize,
  newSize: number,
  outside: boolean,
  egg: Pattern | undefined,
): Worn | null {
  if (!(newSize > 0)) return null;
  const worst = outside ? size.least : size.greatest;
  const across = { mm: outside ? newSize - worst.mm : worst.mm - newSize, give: worst.give };
  const share = egg === undefined ? 0.5 : 1;
  return {
    across,
    perSide: { mm: share * across.mm, give: share * across.give },
    oneSided: egg !== undefined,
    theta: egg?.theta ?? worst.theta,
    z: worst.z,
  };
}

/** From sizes typed at a few places, each good to `give`. */
export function listSize(diameters: readonly number[], give: number): PartSize | null {
  if (diameters.length === 0) return null;
  const nowhere = { theta: Number.NaN, z: Number.NaN };
  const none = { mm: Number.NaN, give: Number.NaN };
  return {
    mean: { mm: diameters.reduce((a, b) => a + b, 0) / diameters.length, give },
    least: { mm: Math.min(...diameters), give, ...nowhere },
    greatest: { mm: Math.max(...diameters), give, ...nowhere },
    outOfRound: { ...none, ...nowhere },
    taper: none,
  };
}
