/** How freely the pin runs, in few words. */
import type { Installed } from '../evaluate/fit/running.ts';
import { WORTH_HONING } from '../job/runningFacts.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearHour } from './nearClock.ts';
import { written } from './written.ts';

/** `0.0050 in to 0.0062 in across`: what a straight pin has at the tightest, and the loosest. */
export function clearanceOf({ tightest, loosest, room, give }: Installed, units: Units): string {
  const { plain, across } = written(units, give);
  return `${plain(Math.min(tightest.mm, room))} to ${across(loosest.mm)}`;
}

/** Why what is a little short of the least wanted is not to be honed by these figures; as the end of a sentence. `isRead`: they were read once it was in. */
export function nearlyWords(
  { short, give, tightest, room }: Installed,
  isRead: boolean,
  units: Units,
): string {
  const { across, plain } = written(units, Number.NaN);
  if (!(short > WRITTEN[units])) return 'nothing is to be honed.';
  return short > WORTH_HONING || !(Math.min(tightest.mm, room) > 0)
    ? `it is short by ${across(short)}, no more than its give or take of ${plain(give)}. ${isRead ? 'Read it again where it is tightest' : 'Measure its inside once it sits'}, before anything is honed.`
    : `it is short by ${across(short)}, less than is worth honing.`;
}

/** Across, mm: less is written as nothing, with the digits of a shop. */
const WRITTEN: Readonly<Record<Units, number>> = { in: 0.00127, mm: 0.0005 };

/** What to open, to what size, and where most comes off; as the end of a sentence. */
export function openedTo({ open }: Installed, units: Units): string {
  const { across, perSide } = written(units, Number.NaN);
  if (open === null) return 'open the bushing’s bore.';
  const to = `hone its bore to ${across(open.to)}`;
  const most = open.hours.reduce((a, b) => (b.most > a.most ? b : a), open.hours[0]!);
  return most === undefined
    ? `${to}.`
    : `${to}, most at ${nearHour(most.theta)} o’clock, ${formatDepth(most.from, units)} to ${formatDepth(most.to, units)} deep, by ${perSide(most.most)}.`;
}
