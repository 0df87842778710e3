/** What a squeeze brought, and the shop's log of them, in words. */
import type { BuildUp } from '../evaluate/buildUp.ts';
import { pairText } from '../job/clock.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearPair } from './nearClock.ts';
import { type Written, written } from './written.ts';

export type HeatDone = NonNullable<BuildUp['heat']>;

export interface HeatWords {
  /** Where it is measured, and what stood there before. */
  readonly where: string;
  /** What it brought; none while nothing was measured. */
  readonly brought: readonly string[];
  readonly pairs: readonly PairWords[];
}

/** One pair of clock hours; across, without unit. */
export interface PairWords {
  readonly pair: string;
  readonly before: string;
  readonly after: string;
  /** How much it closed by: minus is wider than before. */
  readonly closed: string;
}

export interface LogRow {
  readonly when: string;
  readonly what: string;
  readonly moved: string;
  readonly stayed: string;
  readonly sprang: string;
  readonly drew: string;
}

export function heatWords(heat: HeatDone, give: number, units: Units): HeatWords {
  const text = written(units, give);
  const [way, other] = [nearPair(heat.jaws), nearPair(heat.jaws + Math.PI / 2)];
  return {
    where: `${formatDepth(heat.z, units)} deep, where it was to close most, it was ${text.across(heat.along)} along ${way} and ${text.bare(heat.between)} along ${other} before the squeeze (“${heat.before}”).`,
    brought: broughtWords(heat, text),
    pairs: (heat.brought?.across ?? []).map(({ theta, before, after }) => ({
      pair: pairText(theta),
      before: text.bare(before),
      after: text.bare(after),
      closed: minus(text, before - after),
    })),
  };
}

function broughtWords({ brought, jaws }: HeatDone, text: Written): string[] {
  if (brought === null) return [];
  const { moved, came, meanBefore, meanAfter, springShare } = brought;
  const says = [
    `Cold, it ${came >= 0 ? 'closed' : 'opened'} by ${text.across(Math.abs(came))} along ${nearPair(jaws)}.${meanLine(meanBefore - meanAfter, text)}`,
  ];
  if (moved > 0 && came >= 0) {
    says.push(
      springShare >= 0
        ? `Of the ${text.plain(moved)} that the jaws moved in, ${percent(springShare, 0)} sprang back.`
        : `That is more than the ${text.plain(moved)} that the jaws moved in: look at both figures again. Springback is not learned from it.`,
    );
  }
  return says;
}

function meanLine(drew: number, text: Written): string {
  if (Number.isNaN(drew)) return '';
  return ` The mean ${drew >= 0 ? 'drew in' : 'grew'} by ${text.across(Math.abs(drew))}.`;
}

/** `–` where it is not known. */
function percent(share: number, digits: number): string {
  return Number.isNaN(share)
    ? '–'
    : `${(100 * share)
        .toFixed(digits)
        .replace(/^-(?=0\.?0*$)/, '')
        .replace('-', '−')} %`;
}

function minus(text: Written, mm: number): string {
  return text.bare(mm).replace('-', '−');
}

export function logRows({ squeeze: { log } }: BuildUp['facts'], units: Units): LogRow[] {
  const text = written(units, Number.NaN);
  return log.map(({ when, note, asked, came, meanBefore, meanAfter }) => ({
    when: when.slice(0, 10),
    what: note,
    moved: text.bare(asked),
    stayed: minus(text, came),
    sprang: percent(asked > 0 ? 1 - came / asked : Number.NaN, 0),
    drew: percent((meanBefore - meanAfter) / meanBefore, 2),
  }));
}

/** What the log is worth so far; empty where nothing stands in it. */
export function logWords({ facts, learned: { springs, upset } }: BuildUp): string {
  const { length } = facts.squeeze.log;
  if (length === 0) return '';
  const counted = (count: number) => (count === length ? 'all' : count === 0 ? 'none' : `${count}`);
  return `${length === 1 ? 'One squeeze stands' : `${length} squeezes stand`} in this shop’s log: ${counted(springs)} of them ${springs === 1 ? 'tells' : 'tell'} how much springs back, ${counted(upset)} how far the mean draws in. One or two widen the usual range; from three on they stand for themselves, and the figures above are taken from them.`;
}
