/** The ways of mending side by side, as rows of a table or as cards: every figure with the number it was written from. */
import type { Verdict } from '../bore/advice.ts';
import type { WayName } from '../bore/wayTypes.ts';
import type { WaysEvaluation } from '../evaluate/ways.ts';
import { OWN_SIZE } from '../job/featureEdits.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth, inUnits } from '../job/units.ts';
import { WAY_CAUTIONS, WAY_TITLES } from './wayNames.ts';
import {
  doneWords,
  grams,
  leastPlace,
  needsWords,
  percentOf,
  tellerOf,
  verdictWords,
  whyWords,
  workWords,
} from './wayWords.ts';

export interface WayCell {
  /** mm, g, or a share; NaN: not known. */
  readonly value: number;
  readonly text: string;
  /** Small, beneath, a line each; '' none. */
  readonly note: string;
}

export type WayColumn = 'target' | 'off' | 'on' | 'pressFit' | 'seated' | 'gap' | 'wall';

export interface WayRow {
  readonly name: WayName;
  readonly title: string;
  readonly verdict: Verdict;
  readonly says: string;
  readonly cells: Readonly<Record<WayColumn, WayCell>>;
  /** Passes and heats, and the most that comes off and on at one place. */
  readonly work: string;
  readonly why: string;
  readonly done: string;
  readonly needs: string;
  readonly cautions: readonly string[];
  /** Across, mm: what the target becomes where this way is chosen; null: it stays as it is. */
  readonly ownTarget: number | null;
}

/** What each column counts, with its unit and whether it is across or per side. */
export function columnHeads(units: Units): Readonly<Record<WayColumn, string>> {
  return {
    target: `made to, ${units} across`,
    off: 'metal off',
    on: 'metal on',
    pressFit: `press fit, ${units} across: least, mean, most`,
    seated: 'seat held',
    gap: `worst gap, ${units} per side`,
    wall: `wall left, ${units} per side`,
  };
}

export function wayRows(ways: WaysEvaluation, units: Units): WayRow[] {
  return ways.outcomes.map((one, at): WayRow => {
    const advice = ways.advice.ways[at]!;
    // A bore that is round at last is pressed as tight as it is made.
    const exact = one.pressFit.greatest - one.pressFit.least < 1e-9;
    const measured = tellerOf(ways, units).bare;
    const fine = (mm: number) => size(mm, units === 'in' ? 4 : 3);
    const bare = exact ? fine : measured;
    const { pressFit, seated, gap } = one;
    const size = (mm: number, digits: number) =>
      Number.isNaN(mm) ? '–' : inUnits(mm, units).toFixed(digits);
    return {
      name: one.name,
      title: WAY_TITLES[one.name],
      verdict: advice.verdict,
      says: verdictWords(advice.verdict, one),
      cells: {
        target: {
          value: one.target,
          text: one.name === 'leave' ? 'as it is' : fine(one.target),
          note: one.name === 'oversize' ? `bushing ${fine(one.bushing)}` : '',
        },
        off: {
          value: one.off.mass,
          text: grams(one.off.mass),
          note: one.waits === null ? '' : 'likely, none of it yet',
        },
        on: { value: one.on.mass, text: grams(one.on.mass), note: '' },
        pressFit: {
          value: pressFit.least,
          text: minus(bare(pressFit.least)),
          note: exact ? '' : `${minus(bare(pressFit.mean))}\n${minus(bare(pressFit.greatest))}`,
        },
        seated: {
          value: seated.likely,
          text: percentOf(seated.likely),
          note: Number.isNaN(seated.least)
            ? 'measured anew first'
            : rangeOf(seated.least, seated.most),
        },
        gap: {
          value: gap.behind,
          text: bare(gap.behind),
          note: gap.behind > 0 ? leastPlace(one, (z) => formatDepth(z, units)) : '',
        },
        wall: { value: one.wallLeft, text: size(one.wallLeft, units === 'in' ? 2 : 1), note: '' },
      },
      work: workWords(one, ways, units),
      why: whyWords(one, advice, ways, units),
      done: doneWords(one, ways, units),
      needs: needsWords(ways.needs[one.name]),
      cautions: WAY_CAUTIONS[one.name],
      ownTarget: OWN_SIZE.includes(one.name) ? one.target : null,
    };
  });
}

/** `52 to 92 %`; '' where they are the same. */
function rangeOf(least: number, most: number): string {
  const [from, to] = [percentOf(least), percentOf(most)];
  return from === to ? '' : `${from.replace(' %', '')} to ${to}`;
}

/** A real minus sign, and none before a zero. */
export function minus(text: string): string {
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** Why there are no shims, or no larger bushing, among them; '' where there are. */
export function absentWords(ways: WaysEvaluation, units: Units): string {
  const has = (name: WayName) => ways.outcomes.some((one) => one.name === name);
  if (has('shim')) return '';
  if (!has('oversize')) {
    const size = tellerOf(ways, units).across(ways.cleanUp.diameter);
    return `All of the seat cleans up at ${size}: shims or a larger bushing have nothing to fill.`;
  }
  return `Shims all round would have to fill ${formatDepth(ways.toFill, units)} per side, more than ${ways.figures.shimLayers} layers of those at hand: bore it out and sleeve it.`;
}
