/** Each way of mending in sentences: what is done, what it comes to, and why it is advised or not. */
import type { Advice, RuleCheck, Verdict, WayAdvice } from '../bore/advice.ts';
import type { WayOutcome } from '../bore/wayTypes.ts';
import type { WaysEvaluation } from '../evaluate/ways.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatLength } from '../job/units.ts';
import { earned } from './amountWords.ts';
import { nearClock } from './nearClock.ts';
import { capital } from './sentence.ts';
import { likelyHigh, NO_PASS_YET } from './waitWords.ts';
import { RULES, TOOLS, VERDICTS, WAY_TITLES } from './wayNames.ts';
import { written } from './written.ts';

/** Two digits that count: a mass is an estimate of metal nobody has weighed. */
export function grams(mass: number): string {
  if (!(mass > 0)) return '0 g';
  const decimals = Math.min(2, 1 - Math.floor(Math.log10(mass)));
  return `${earned(mass, decimals)} g`;
}

/** To whole per cent, and never all or none of it where it is not. */
export function percentOf(share: number): string {
  if (Number.isNaN(share)) return '–';
  const whole = Math.round(100 * share);
  if (whole === 100 && share < 1) return 'over 99 %';
  return whole === 0 && share > 0 ? 'under 1 %' : `${whole} %`;
}

/** How a figure is told that is known as well as the size across at the largest place. */
export function tellerOf({ outcomes }: Pick<WaysEvaluation, 'outcomes'>, units: Units) {
  return written(units, groundOf(outcomes).pressFit.give);
}

/** What is done, in one or two sentences; '' where the title says it all. */
export function doneWords(one: WayOutcome, ways: WaysEvaluation, units: Units): string {
  const done = doing(one, ways, units);
  return one.waits === null ? done : `Once it is measured better: ${lower(done)}`;
}

function doing(one: WayOutcome, ways: WaysEvaluation, units: Units): string {
  const size = formatAcross(one.target, units);
  switch (one.name) {
    case 'grind':
      return `High spots down to ${size}; nothing is added.`;
    case 'squeeze':
      return squeezeWords(one, ways, units);
    case 'shim': {
      const layers = one.layers.map((t) => formatLength(t, units)).join(' + ');
      const order = one.layers.length > 1 ? ', the thickest against the wall' : '';
      return `Ground round to ${size}; then ${layers} of shim all round, per side${order}.`;
    }
    case 'oversize':
      return `Ground round to ${size}; a bushing made to suit, ${formatAcross(one.bushing, units)} outside.`;
    case 'sleeve':
      return `Bored to ${size}; a sleeve ${formatAcross(one.outside, units)} outside, ${formatLength(one.layers[0]!, units)} of wall, per side, around the bushing.`;
    case 'weld':
      return one.on.volume > 0
        ? `Weld ${ways.figures.weldOver === 'seat' ? 'over the whole seat' : 'on the low places'}, up to ${tellerOf(ways, units).perSide(one.on.greatest)}; then all of it down to ${size}.`
        : `Nothing is low; high spots down to ${size}.`;
    case 'leave':
      return `Nothing is taken off and nothing added; counted from ${size}.`;
  }
}

function squeezeWords({ squeeze, target }: WayOutcome, ways: WaysEvaluation, units: Units): string {
  if (squeeze === null || !(squeeze.closing > 0)) return 'There is nothing to close.';
  const { closing, upset, bentOver } = squeeze;
  const size = formatAcross(target, units);
  const { across, perSide } = tellerOf(ways, units);
  const bent =
    upset > 0
      ? `Bending alone, which keeps the mean size, would end ${perSide(Math.abs(bentOver))} ${bentOver > 0 ? 'over' : 'under'} the target at the largest place; the rest is hot metal that shortens in the jaws.`
      : 'Bending alone, which keeps the mean size, is enough.';
  return `Closed by up to ${across(closing)}, until the largest place ends under the target; then ground to ${size}. ${bent}`;
}

/** Less than this is on size, per side, mm: 0.0001 in. */
const ON_SIZE = 0.0025;

/** `Work: 4 passes; at most 0.002 in per side off.` */
export function workWords(one: WayOutcome, ways: WaysEvaluation, units: Units): string {
  const { perSide, bare } = tellerOf(ways, units);
  const { off, on, name, squeeze, waits } = one;
  const together = ways.together && name === 'grind';
  const all = together ? 'by this survey and those before it together, ' : '';
  if (waits !== null) {
    return `Work: no pass until it is measured better; ${all}${likelyHigh(waits, units)}, and that is not sure enough to grind. Measure there first.`;
  }
  // After a squeeze it lies between two limits.
  const [least, greatest] = [off.greatest, squeeze?.drawnIn.off.greatest ?? off.greatest].sort(
    (a, b) => a - b,
  );
  const from = bare(least!) === bare(greatest!) ? '' : `${bare(least!)} to `;
  const most = [
    greatest! > 0 ? `${from}${perSide(greatest!)} off` : '',
    on.greatest > 0 && name === 'weld' ? `${perSide(on.greatest)} on` : '',
  ].filter((part) => part !== '');
  const stays =
    name !== 'leave' && one.stays >= ON_SIZE
      ? ` ${capital(`${all}up to ${perSide(one.stays)} stays standing.`)}`
      : '';
  const alone = together ? 'by this survey alone ' : '';
  return `Work: ${stepsWords(one)}${most.length > 0 ? `; ${alone}at most ${most.join(', ')}` : ''}.${stays}`;
}

/** `4 passes`, `1 to 5 heats, then 3 to 5 passes`, `bored`. */
function stepsWords({ passes, squeeze, name, fewest }: WayOutcome): string {
  // Measured anew after the heat: then the passes are planned.
  const heats = squeeze === null ? '' : heatsWords(squeeze);
  const before = heats !== '' ? heats : name === 'weld' && passes !== 0 ? 'welding' : '';
  const grinding =
    fewest > 0
      ? `bored by machine: by hand it would be ${fewest} passes or more`
      : passesWords(passes, squeeze?.drawnIn.passes ?? passes);
  if (before !== '') return grinding === '' ? before : `${before}, then ${grinding}`;
  return grinding === '' ? 'none' : grinding;
}

/** `3 passes`, `3 to 5 passes`; '' none. NaN: bored. */
function passesWords(one: number, other: number): string {
  const count = (n: number) => (n === 1 ? '1 pass' : `${n} passes`);
  if (Number.isNaN(one)) return 'bored';
  if (Number.isNaN(other)) {
    return `${count(one)}, or bored by machine where it has drawn in most`;
  }
  if (one === other) return one === 0 ? '' : count(one);
  return `${Math.min(one, other)} to ${count(Math.max(one, other))}`;
}

function heatsWords({ heatsLeast, heatsMost }: NonNullable<WayOutcome['squeeze']>): string {
  if (!(heatsMost > 0)) return '';
  if (heatsLeast === heatsMost) return heatsLeast === 1 ? '1 heat' : `${heatsLeast} heats`;
  return `${heatsLeast} to ${heatsMost} heats`;
}

/** `Needs a drum or a stone (at hand) and abrasive strip (not in this shop).`; '' where nothing is. */
export function needsWords(needs: WaysEvaluation['needs']['grind']): string {
  if (needs.length === 0) return '';
  const HAVE = { yes: ' (at hand)', no: ' (not in this shop)', 'not-said': '' } as const;
  const each = needs.map(({ tool, have }) => TOOLS[tool] + HAVE[have]);
  const last = each.pop()!;
  return `Needs ${each.length > 0 ? `${each.join(', ')} and ` : ''}${last}.`;
}

/** Where the press fit is least: `6:00, 0.15 in deep`. */
export function leastPlace({ pressFit }: WayOutcome, deep: (z: number) => string): string {
  return Number.isNaN(pressFit.theta)
    ? ''
    : `${nearClock(pressFit.theta)}, ${deep(pressFit.z)} deep`;
}

/** The figure of a rule on this bore, in its own measure. */
export function ruleFigure(
  { rule, figure }: RuleCheck,
  ways: Pick<WaysEvaluation, 'outcomes'>,
  units: Units,
): string {
  return isShare(rule) ? percentOf(figure) : tellerOf(ways, units).plain(figure);
}

export function isShare(rule: RuleCheck['rule']): rule is 'acceptShare' | 'wallShare' | 'offShare' {
  return rule === 'acceptShare' || rule === 'wallShare' || rule === 'offShare';
}

/** `Low spots that may stay reach at most 0.0020 in, across, over the target: here 0.0168 in, missed.` */
export function sayRule(check: RuleCheck, ways: WaysEvaluation, units: Units): string {
  const [before, after] = RULES[check.rule];
  const limit = isShare(check.rule) ? percentOf(check.limit) : formatLength(check.limit, units);
  const here = ruleFigure(check, ways, units);
  return `${before} ${limit}${after}: here ${here}, ${check.met ? 'met' : 'missed'}.`;
}

const CALLS: Readonly<Record<Advice['call'], string>> = {
  'off-line':
    'Round by itself, this bore would stand off the line of the others and bind the pin. Line up its centre with the partner bore where there is metal enough; else line-bore it with the others, or weld in a new boss held on a dummy pin through all.',
  nothing: 'Nothing is worth grinding, and the bushing is tight everywhere as it is.',
  'high-spots': 'The high spots are all that is in the way.',
  'low-stays': 'The low spots are shallow and few enough to stay.',
  'low-closes': 'The low spots are more than may stay, and no more than a squeeze closes.',
  'low-larger': 'The low spots are more than a squeeze closes; a larger bushing takes them up.',
  'low-far': 'The low spots are more than a larger bushing takes up.',
};

/** What the next way does in place of the one that would come first. */
const INSTEAD: Readonly<Record<WayOutcome['name'], string>> = {
  grind: 'Grinding alone leaves the low spots.',
  squeeze: 'A squeeze closes the low spots as well.',
  shim: 'Shims all round take up the low spots as well.',
  oversize: 'A larger bushing takes up the low spots as well.',
  sleeve: 'A sleeve in a bore cut anew takes the place of the worn wall as well.',
  weld: 'Weld, cut again, fills the low spots as well.',
  leave: 'It stays as it is meanwhile.',
};

/** A way's verdict as it is told: one that may not be begun yet says so. */
export function verdictWords(verdict: Verdict, { waits }: Pick<WayOutcome, 'waits'>): string {
  const says = VERDICTS[verdict];
  return waits !== null && (verdict === 'advised' || verdict === 'second')
    ? `${says}, once it is measured better`
    : says;
}

/** The advice in two sentences: what the bore calls for, and which way answers it. */
export function adviceWords({
  advice,
  outcomes,
}: Pick<WaysEvaluation, 'advice' | 'outcomes'>): string {
  const { call, first, advised } = advice;
  if (advised === null) {
    return `${CALLS[call]} No way that answers is open here: ask somebody who is qualified, as said below.`;
  }
  const before =
    advised === first ? '' : ` ${WAY_TITLES[first]} would come first, and is not open.`;
  const way = lower(WAY_TITLES[advised]);
  return outcomes.some(({ name, waits }) => name === advised && waits !== null)
    ? `${CALLS[call]}${before} ${NO_PASS_YET} Advised once it is: ${way}.`
    : `${CALLS[call]}${before} Advised: ${way}.`;
}

const lower = (text: string) => text[0]!.toLowerCase() + text.slice(1);

/** One sentence why a way is advised, or is not. */
export function whyWords(
  one: WayOutcome,
  { verdict, wall }: WayAdvice,
  ways: WaysEvaluation,
  units: Units,
): string {
  const { advice, rules, outcomes } = ways;
  const plain = (mm: number) => formatLength(mm, units);
  const { plain: measured } = tellerOf(ways, units);
  switch (verdict) {
    case 'advised':
      return one.name === advice.first
        ? CALLS[advice.call]
        : `${WAY_TITLES[advice.first]} would come first, and is not open. ${INSTEAD[one.name]}`;
    case 'second':
      return advice.advised === null
        ? 'Would answer, were it open.'
        : `${WAY_TITLES[advice.advised]} comes before it.`;
    case 'closed':
      return closedWords(ways);
    case 'thin-wall':
      return `Leaves ${formatDepth(one.wallLeft, units)} of the boss per side, ${percentOf(wall.figure)} of the bore’s diameter, and ${percentOf(wall.limit)} is asked for: ask somebody qualified.`;
    case 'not-needed':
      return one.name === 'grind'
        ? `${ways.together ? 'By this survey alone nothing' : 'Nothing'} stands proud of the target.`
        : one.name === 'weld'
          ? 'No place is low.'
          : 'The largest place is under the target already.';
    case 'off-line':
      return 'Makes it round about a centre that stands off the line of the others.';
    case 'too-far':
      return `Low spots of ${measured(2 * groundOf(outcomes).gap.over)} across are more than the ${plain(rules.squeezeLow)} that a squeeze is trusted with.`;
    case 'more-than-needed':
      return moreWords(one, outcomes);
    case 'too-little':
      return littleWords(one, ways, units);
  }
}

function closedWords({ stops, asks }: WaysEvaluation): string {
  if (stops.some(({ closes }) => closes === 'all')) return 'Closed by the stop below.';
  if (stops.length > 0) return 'Closed: a stop stands in the way of heat.';
  return `Closed until the questions about heat are answered; ${asks.length} ${asks.length === 1 ? 'is' : 'are'} open.`;
}

const groundOf = (outcomes: readonly WayOutcome[]) =>
  outcomes.find(({ name }) => name === 'grind')!;

function moreWords(one: WayOutcome, outcomes: readonly WayOutcome[]): string {
  const ground = groundOf(outcomes);
  const off =
    one.off.mass > ground.off.mass
      ? ` ${grams(one.off.mass)} comes off, where grinding takes ${grams(ground.off.mass)}.`
      : '';
  return `More than this bore calls for.${off}`;
}

function littleWords(one: WayOutcome, { rules, outcomes }: WaysEvaluation, units: Units): string {
  const { gap, lowShare, waits } = groundOf(outcomes);
  const plain = (mm: number) => formatLength(mm, units);
  const { plain: measured } = tellerOf({ outcomes }, units);
  if (one.name === 'leave' && one.pressFit.greatest > one.outside - one.target) {
    const proud = (one.pressFit.greatest - (one.outside - one.target)) / 2;
    if (waits !== null) {
      return `${capital(likelyHigh(waits, units))}: the bushing would press there alone.`;
    }
    return `Up to ${measured(proud)} per side stands proud of the target: the bushing would press there alone.`;
  }
  if (one.name === 'oversize' || one.name === 'shim') {
    return `Low spots of ${measured(2 * gap.over)} across are more than the ${plain(rules.oversizeLow)} that it is trusted with.`;
  }
  return `Leaves low spots of up to ${measured(2 * gap.over)} across on ${percentOf(lowShare)} of the seat; ${plain(rules.acceptLow)} on less than ${percentOf(rules.acceptShare)} may stay.`;
}
