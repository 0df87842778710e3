/**
 * Which side is worn, where diameters alone were read: what is assumed, and what else the same numbers would be.
 *
 * A crescent w deep on one side reads like w / 2 gone on both (exactly: a diameter is the sum of two opposite radii),
 * so both readings of the numbers can be said from one out-of-round figure.
 */
import { roundGive } from '../geometry/roundGive.ts';
import type { Remark, Section } from './types.ts';

/** How figures are written for the reader, with as many digits as their give-or-take allows. */
export interface Wording {
  deep(z: number): string;
  across(mm: number, give: number): string;
  perSide(mm: number, give: number): string;
  plain(mm: number, give: number): string;
  clock(theta: number): string;
}

const QUARTER = Math.PI / 4;

/** The section that is most out of round; null where none shows an oval. */
function mostOval(sections: readonly Section[]): Section | null {
  const shown = sections.filter((s) => s.outOfRound > 0);
  return shown.reduce<Section | null>(
    (most, s) => (most === null || s.outOfRound > most.outOfRound ? s : most),
    null,
  );
}

/** @param wornSide as stated, radians; NaN: both sides are taken alike */
export function sideRemarks(
  sections: readonly Section[],
  wornSide: number,
  say: Wording,
): Remark[] {
  const one = mostOval(sections);
  const head = Number.isNaN(wornSide)
    ? 'Assumed: both sides alike.'
    : `Assumed: worn at ${say.clock(wornSide)}, as you said.`;
  const text = `${head} Diameters cannot tell the sides apart`;
  if (one === null) return [{ kind: 'assumed', text: `${text}.` }];
  const { theta } = one.greatest;
  const give = roundGive(one);
  const size = `${say.across(one.outOfRound, give)} (give or take ${say.plain(give, give)})`;
  const where = `out of round by ${size} at ${say.deep(one.z)}`;
  const ends = `${say.clock(theta)} and ${say.clock(theta + Math.PI)}`;
  const both = `${say.perSide(one.outOfRound / 2, give / 2)} gone at ${ends} alike`;
  const single = `${say.perSide(one.outOfRound, give)} gone at one of them only`;
  const other = Number.isNaN(wornSide)
    ? `${where} may be ${both}, as the map has it, or ${single}`
    : `${where} may be ${single}, as the map has it, or ${both}`;
  return [{ kind: 'assumed', text: `${text}: ${other}.` }, ...otherWay(theta, wornSide, say)];
}

/** A stated side that lies across the long way of the oval is not what the readings show. */
function otherWay(longWay: number, wornSide: number, say: Wording): Remark[] {
  const apart = Math.abs(Math.atan(Math.tan(longWay - wornSide)));
  if (!(apart > QUARTER)) return [];
  return [
    {
      kind: 'warning',
      text:
        `You said that it wore at ${say.clock(wornSide)}, but the bore is longest from ${say.clock(longWay)} to ` +
        `${say.clock(longWay + Math.PI)}: check the worn side and the clock positions of the readings.`,
    },
  ];
}
