/** Weld build-up in words: how much metal, and, once heat is allowed, in which order it goes on. */
import type { BuildUp } from '../evaluate/buildUp.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import { hourText } from '../job/clock.ts';
import type { Units } from '../job/schema.ts';
import { formatLength, formatPerSide } from '../job/units.ts';
import { earned } from './amountWords.ts';
import { zonePeak, zoneWords } from './zoneWords.ts';

export interface WeldWords {
  readonly metal: readonly string[];
  /** Preheat, order, cooling: steps with heat. */
  readonly steps: readonly string[];
  /** Places lower than finished size and allowance; none where all of the seat is high enough. */
  readonly low: readonly string[];
}

export function weldWords(
  { weld, facts }: BuildUp,
  stage: 'as-found' | 'built-up',
  length: number,
  units: Units,
): WeldWords {
  return {
    metal: metalWords(weld, facts.weld, units),
    steps: stepWords(weld, facts.weld.steel.known),
    low: stage === 'built-up' ? lowWords(weld, facts.weld.allowance.mm, length, units) : [],
  };
}

/** A survey of weld as it cooled asks what is still too low; before there is weld, all of it is. */
export function weldStage({ sections }: SurveyEvaluation, stage: string): 'as-found' | 'built-up' {
  return stage === 'after-build-up' && sections.length > 0 ? 'built-up' : 'as-found';
}

function metalWords(
  { deposit }: BuildUp['weld'],
  weld: BuildUp['facts']['weld'],
  units: Units,
): string[] {
  const { allowance, over } = weld;
  const where = over === 'seat' ? 'over the whole seat' : 'where it is low only';
  if (!(deposit.mass > 0)) {
    return [`Welded ${where}, nothing is asked for: no place is lower than the finished size.`];
  }
  return [
    `Welded ${where}, up to ${formatPerSide(allowance.mm, units, 3)} above the finished size: ${grams(deposit.mass)} of metal (${earned(deposit.volume, -1)} mm³), at most ${formatPerSide(deposit.greatest, units, 3)} thick.`,
    beadWords(deposit, weld, units),
  ];
}

/** Beads, layers and electrodes, as one sentence or two. */
export function beadWords(
  deposit: BuildUp['weld']['deposit'],
  { beadHeight, beadWidth, overlap, electrode }: BuildUp['facts']['weld'],
  units: Units,
): string {
  const bead = `${formatLength(beadHeight.mm, units, 2)} high and ${formatLength(beadWidth.mm, units, 2)} wide`;
  return `With beads ${bead}, each lapping ${Math.round(overlap.value)} % over the one before: ${counted(deposit.stringers, 'stringer', 'stringers')} along the axis side by side, in ${counted(deposit.layers, 'layer', 'layers')}. About ${counted(deposit.electrodes, 'electrode', 'electrodes')} of ${electrode.toFixed(1)} mm; have ${grams(deposit.toBuy)} at hand, stubs and losses counted.`;
}

/** `532 g`; one decimal below ten. */
export function grams(mass: number): string {
  return `${earned(mass, mass < 10 ? 1 : 0)} g`;
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Of the International Institute of Welding, as in EN 1011-2 and AWS D1.1. */
const FORMULA =
  'the carbon equivalent C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15 (International Institute of Welding)';
const BANDS =
  'below 0.40 % none where it is thin, to 0.45 % 100 °C, to 0.60 % 150 to 200 °C, above that more than 200 °C and slow cooling, as commonly published.';
const FIRST =
  'The code’s own table, the mill sheet and the filler maker come first, and thick or stiff parts want more.';

/** Stringers named before "and so on". */
const NAMED = 12;

function stepWords(
  { order, preheat, equivalent }: BuildUp['weld'],
  known: BuildUp['facts']['weld']['steel']['known'],
): string[] {
  return [
    preheatWords(preheat, equivalent, known),
    `Stringers along the axis, skipping round the clock to spread the pull: ${orderWords(order)}, seen from face A. Restart on the bead before, never in a crater; clean every bead to bright metal.`,
    'Low-hydrogen electrodes from a dry oven or a fresh tin. Keep the grease hole and the faces clear of spatter.',
    'Let it cool slowly under a blanket, never in water or wind. The bore closes and goes oval: assume nothing of its shape, and measure every place cold.',
    'Look for cracks when it is cold, and again after 24 to 48 hours: cracks from hydrogen come late. No place may be lower than the finished size and the allowance, or it will not clean up.',
  ];
}

/** `12, 6, 3, 9, 1 and so on round`. */
export function orderWords(order: readonly number[]): string {
  const hours = order
    .slice(0, NAMED)
    .map((theta) => hourText((Math.round((theta * 24) / Math.PI) * Math.PI) / 24));
  return `${hours.join(', ')}${order.length > NAMED ? ' and so on round' : ''}`;
}

export function preheatWords(
  preheat: BuildUp['weld']['preheat'],
  equivalent: number,
  known: BuildUp['facts']['weld']['steel']['known'],
): string {
  if (preheat === null) {
    const why =
      known === 'nothing'
        ? 'What the steel is made of is not known'
        : 'The carbon equivalent is not told yet';
    return `${why}: have it tested, or take the careful side, which is 150 to 200 °C (300 to 390 °F) of preheat, low-hydrogen electrodes and slow cooling (judgement), by a written procedure of a welder who answers for it and by the local code. Once it is known, preheat goes by ${FORMULA}: ${BANDS} ${FIRST}`;
  }
  const heat =
    preheat.least === 0
      ? 'no preheat where it is thin'
      : Number.isNaN(preheat.most)
        ? `at least ${both(preheat.least)} and slow cooling`
        : preheat.most > preheat.least
          ? `${both(preheat.least)} to ${both(preheat.most)}`
          : `about ${both(preheat.least)}`;
  const from = known === 'parts' ? `, by ${FORMULA}` : '';
  return `Preheat at a carbon equivalent of ${equivalent.toFixed(2)} %${from}: ${heat}, as commonly published. ${FIRST}`;
}

function both(celsius: number): string {
  return `${celsius} °C (${Math.round((celsius * 1.8 + 32) / 5) * 5} °F)`;
}

function lowWords(
  { low, lowShare }: BuildUp['weld'],
  allowance: number,
  length: number,
  units: Units,
): string[] {
  const over = formatPerSide(allowance, units, 3);
  if (!(lowShare > 0)) {
    return [`Every place of the seat stands at least ${over} above the finished size.`];
  }
  const share = Math.max(1, Math.round(100 * lowShare));
  return [
    `${share} % of the seat is lower than the finished size and ${over}: it would not clean up.`,
    ...low.map((zone) => {
      const { where, amount } = zoneWords(zone, length, units);
      return `${where}: ${amount} too low at ${zonePeak(zone, length, units)}, where it is most; ${grams(zone.mass)} of weld in ${counted(zone.layers, 'layer', 'layers')}.`;
    }),
  ];
}
