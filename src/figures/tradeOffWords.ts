/** What the chosen size of target costs and leaves, in one sentence; and what the chart of all sizes speaks of. */
import type { Removal, Target } from '../bore/types.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth } from '../job/units.ts';
import { amountWords } from './amountWords.ts';
import { nearClock } from './nearClock.ts';
import { type Sentence, said } from './sentence.ts';
import { percentOf } from './wayWords.ts';
import { written } from './written.ts';

type Seating = NonNullable<SurveyEvaluation['seating']>;
type Share = Seating['suit'];

export interface TradeOffWords {
  /** `2.0041 in across`. */
  readonly size: string;
  /** `1.1 g` and ` off (0.4 to 2.6)`. */
  readonly off: Sentence;
  /** `62 %` and ` of the seat held (50 to 75)`. */
  readonly held: Sentence;
  /** `worst gap `, `0.0081 in per side`, and where. */
  readonly gap: Sentence;
  /** What a bushing made to suit would be held on, where that is another share; else ''. */
  readonly suit: string;
}

/** @param bushing outside diameter of the one at hand, across, mm; NaN: not known */
export function tradeOffWords(
  { diameter }: Target,
  removal: Removal,
  { hand, suit, gap, behind }: Seating,
  bushing: number,
  units: Units,
): TradeOffWords {
  const share = hand ?? suit;
  const other = hand !== null && percentText(hand) !== percentText(suit) ? suit : null;
  const by = hand === null ? ' by a bushing made to suit' : '';
  return {
    size: formatAcross(diameter, units),
    off: offWords(removal),
    held:
      hand !== null && !(bushing > diameter)
        ? said('none of the seat held: the bushing at hand is loose in it')
        : said('', percentText(share), ` of the seat held${by}${doubtText(share)}`),
    suit:
      other === null
        ? ''
        : `; a bushing made to suit would be held on ${percentText(other)}${doubtText(other)}`,
    gap: gapWords(gap, behind, units),
  };
}

/** All of it as one sentence: `At 2.0041 in across: 1.1 g off, …` */
export function sayTradeOff(words: TradeOffWords): string {
  const { size, off, held, suit, gap } = words;
  const whole = ({ before, figure, after }: Sentence) => before + figure + after;
  return `At ${size}: ${whole(off)}, ${whole(held)}, ${whole(gap)}${suit}.`;
}

function offWords(removal: Removal): Sentence {
  const { sure, likely, possible } = amountWords(removal);
  const least = sure === null ? '0' : bare(sure);
  return said('', likely, ` off (${least} to ${bare(possible)})`);
}

function bare(grams: string): string {
  return grams.replace(' g', '');
}

function gapWords(gap: Seating['gap'], behind: number, units: Units): Sentence {
  if (!(gap.over > 0)) return said('no place over the target');
  const { perSide, bare: figure } = written(units, gap.give);
  const where = `${nearClock(gap.theta)}, ${formatDepth(gap.z, units)} deep`;
  const air =
    behind > 0 && figure(behind) !== figure(gap.over)
      ? ` (${figure(behind)} of it left behind the bushing at hand)`
      : '';
  const rest = ` over the target at ${where}, give or take ${figure(gap.give)}${air}`;
  return said('worst gap ', perSide(gap.over), rest);
}

/** To whole per cent, as the ways of mending have it too: `62 %`; how well it is known stands beside it. */
export function percentText({ likely }: Pick<Share, 'likely'>): string {
  return Number.isNaN(likely) ? 'no known share' : percentOf(likely);
}

function doubtText({ likely, least, most }: Share): string {
  if (Number.isNaN(likely) || !(most > least)) return '';
  return ` (${percentOf(least).replace(' %', '')} to ${percentOf(most).replace(' %', '')})`;
}
