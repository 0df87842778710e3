/** After a pass: what came off of what was asked, and what is still possible where it went past the target. No blame. */
import type { CameOff, Past } from '../bore/worked.ts';
import type { Passes } from '../evaluate/passes.ts';
import type { BoreFacts } from '../evaluate.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth, MM_PER_INCH } from '../job/units.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { written } from './written.ts';

/** Shares known worse than this, 1 standard deviation, are not told as a rate. */
const TOLD = 0.25;
/** Nearer than this to what was asked is as asked. */
const AS_ASKED = 0.1;

/** Where a pass goes by several surveys. */
const TOGETHER =
  'The passes go by this survey and those before it together, each less what came off since. So they may ask for a little more or less than the map of this survey alone.';

export function workedWords({ worked, together }: Passes, units: Units): string[] {
  if (worked === null) return [];
  const { off, since, given } = worked;
  const told = off.shareSd < TOLD;
  const lines: string[] = [];
  if (Number.isNaN(off.share)) lines.push(`Nothing was asked off after “${since}”.`);
  else if (!told) {
    lines.push(
      `Too little was asked off after “${since}” to tell from these readings how much came.`,
    );
  } else lines.push(rateWords(off.share, off.shareSd, off.perPass, since, units));
  if (given !== null && !Number.isNaN(off.share)) {
    lines.push(`Held against the pass as it was given to the bench on ${given}.`);
  }
  if (off.more !== null) lines.push(placeWords(off.more, 'More', units));
  if (off.less !== null) lines.push(placeWords(off.less, 'Less', units));
  if (together) lines.push(TOGETHER);
  return lines;
}

function rateWords(
  share: number,
  sd: number,
  perPass: number,
  since: string,
  units: Units,
): string {
  const percent = (s: number) => `${Math.round(100 * s)} %`;
  const { perSide } = written(units, (2 * sd * perPass) / share);
  const head = `Of what was asked off after “${since}”, ${percent(share)} came off, give or take ${percent(2 * sd)}: about ${perSide(perPass)} where most was asked`;
  if (Math.abs(share - 1) <= Math.max(AS_ASKED, 2 * sd)) return `${head}. As asked.`;
  return share < 1
    ? `${head}. Go over the next places about ${(1 / share).toFixed(1)} times as long.`
    : `${head}. Go over the next places for about ${percent(1 / share)} of the time.`;
}

function placeWords(
  { theta, z, asked, came, give }: CameOff,
  how: 'More' | 'Less',
  units: Units,
): string {
  const { across, bare } = written(units, give);
  return `${how} than asked at ${nearPair(theta)}, ${formatDepth(z, units)} deep: ${across(came)} came off where ${bare(asked)} was asked, give or take ${bare(give)}.`;
}

/** Gaps across that are still bridged, mm, and the share of the seat: starting points, judgement; the maker's figure wins. */
const ACCEPTED = 0.002 * MM_PER_INCH;
const ACCEPTED_SHARE = 1 / 3;
const SQUEEZED = 0.006 * MM_PER_INCH;

/** What the figure says, and what can still be done, the least trouble first. */
export function pastWords(
  past: Past,
  facts: BoreFacts,
  units: Units,
): { head: string; ways: string[] } {
  const { perSide, bare } = written(units, past.give);
  const { across } = written(units, 2 * past.give);
  const share = `${Math.max(1, Math.round(100 * past.share))} %`;
  const head = `At ${nearClock(past.theta)}, ${formatDepth(past.z, units)} deep, the wall lies ${perSide(past.over)} outside the target, give or take ${bare(past.give)}; ${share} of the seat is past it. Take nothing more off there.`;
  const { pressFit } = facts;
  const tight = pressFit.mm - 2 * past.over;
  const ways: string[] = [];
  if (tight > 0) {
    ways.push(
      `The bushing at hand still holds there, with ${across(tight)} of press fit instead of ${across(pressFit.mm)}: grind the rest to the same target and go on.`,
    );
  } else if (2 * past.over - pressFit.mm <= ACCEPTED && past.share < ACCEPTED_SHARE) {
    ways.push(
      'Grind the rest and accept it: the seat holds all around. A retaining compound fills such a gap; its maker says how wide.',
    );
  }
  ways.push(
    `Have a bushing made to suit: about the same centre all of the seat is clean at ${across(past.cleanUp)}, so the bushing is ${across(past.cleanUp + pressFit.mm)} outside, with the same press fit.`,
  );
  if (2 * past.over > ACCEPTED && 2 * past.over <= SQUEEZED) {
    ways.push('Squeeze it with heat and grind again, where the metal allows it.');
  }
  ways.push('Grind it round at that size and shim all round under the bushing at hand.');
  return { head, ways };
}
