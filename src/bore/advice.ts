/**
 * Which way of mending is advised, by rules that are shown with the figures that met them or missed them. Starting values
 * by judgement, each the repairer's to change; the figure of the machine's maker comes before all of them.
 */
import type { WayName, WayOutcome } from './wayTypes.ts';

/** mm across, and shares of 1. */
export interface WayRules {
  /** How far the bore's axis may stand off the line of the others on its pin, per side, as a share of the running clearance. */
  readonly offShare: number;
  /** Local press fit that must be left everywhere once the high spots are ground. */
  readonly leastPress: number;
  /** Low spots over the target that may stay, across, and on less than which share of the seat. */
  readonly acceptLow: number;
  readonly acceptShare: number;
  /** Low spots that a squeeze closes, across. */
  readonly squeezeLow: number;
  /** Low spots that a larger bushing takes up, across. */
  readonly oversizeLow: number;
  /** Wall of the boss that must be left, as a share of the bore's diameter. */
  readonly wallShare: number;
}

/** One rule held against this bore. */
export interface RuleCheck {
  readonly rule: keyof WayRules;
  /** What it is on this bore, in the rule's own measure; NaN: not known. */
  readonly figure: number;
  readonly limit: number;
  readonly met: boolean;
}

/** What the bore calls for, by the first rule that is met. */
export type Call =
  | 'off-line'
  | 'nothing'
  | 'high-spots'
  | 'low-stays'
  | 'low-closes'
  | 'low-larger'
  | 'low-far';

/** Which ways answer a call, the first choice first. */
const ANSWERS: Readonly<Record<Call, readonly WayName[]>> = {
  // Bored, or cut again, on the line of all bores together.
  'off-line': ['sleeve', 'weld'],
  nothing: ['leave'],
  'high-spots': ['grind'],
  'low-stays': ['grind'],
  'low-closes': ['squeeze', 'oversize'],
  'low-larger': ['oversize', 'weld', 'shim'],
  'low-far': ['weld', 'sleeve'],
};

export type Verdict =
  | 'advised'
  /** Answers the call as well, but another one comes before it. */
  | 'second'
  /** Closed by a stop, or until something is answered. */
  | 'closed'
  /** Leaves too little of the boss. */
  | 'thin-wall'
  /** There is nothing for it to do. */
  | 'not-needed'
  /** Too little: low spots stay that are more than the rules allow. */
  | 'too-little'
  /** More work, or more metal gone, than the bore calls for. */
  | 'more-than-needed'
  /** Too much to close by heat. */
  | 'too-far'
  /** Round by itself, it would stand off the line of the others. */
  | 'off-line';

export interface WayAdvice {
  readonly name: WayName;
  readonly verdict: Verdict;
  readonly wall: RuleCheck;
}

export interface Advice {
  readonly call: Call;
  /** What would come first if nothing stood in its way. */
  readonly first: WayName;
  /** Null: none; somebody who is qualified looks at it. */
  readonly advised: WayName | null;
  readonly checks: readonly RuleCheck[];
  /** One for each outcome, in its order. */
  readonly ways: readonly WayAdvice[];
}

/** What stands in the way of some work, or of all of it. */
export interface Gates {
  /** No flame and no weld: a stop, or a question that is open. */
  readonly heat: boolean;
  /** No work at all. */
  readonly all: boolean;
}

/** Metal that is not worth taking off, per side: 0.0001 in. */
const NOTHING = 0.0025;

/**
 * @param outcomes the way that grinds and the one that leaves all as it is must be among them
 * @param off how far the planned axis stands off the line of the other bores, per side, as a share of the running
 *   clearance; NaN: no other bore, or not known
 */
export function advise(
  outcomes: readonly WayOutcome[],
  rules: WayRules,
  gates: Gates,
  off = Number.NaN,
): Advice {
  const ground = outcomes.find(({ name }) => name === 'grind')!;
  const checks = [...offCheck(rules, off), ...checksOf(ground, rules)];
  const call = callOf(ground, checks);
  const walls = new Map(outcomes.map((one) => [one.name, wallCheck(one, rules)]));
  const open = (name: WayName) =>
    walls.has(name) && !gates.all && !(gates.heat && isHot(name)) && !isThin(walls.get(name)!);
  const advised = ANSWERS[call].find(open) ?? null;
  const ways = outcomes.map((one): WayAdvice => {
    const wall = walls.get(one.name)!;
    const verdict =
      one.name === advised ? 'advised' : verdictOf(one, { call, gates, thin: isThin(wall) });
    return { name: one.name, verdict, wall };
  });
  return { call, first: ANSWERS[call][0]!, advised, checks, ways };
}

function isHot(name: WayName): boolean {
  return name === 'squeeze' || name === 'weld';
}

/** A wall that is not known is no reason against anything. */
function isThin({ figure, met }: RuleCheck): boolean {
  return !Number.isNaN(figure) && !met;
}

function wallCheck({ wallLeft, target }: WayOutcome, { wallShare }: WayRules): RuleCheck {
  const figure = wallLeft / target;
  return { rule: 'wallShare', figure, limit: wallShare, met: figure >= wallShare };
}

function offCheck({ offShare }: WayRules, off: number): RuleCheck[] {
  return Number.isNaN(off)
    ? []
    : [{ rule: 'offShare', figure: off, limit: offShare, met: off <= offShare }];
}

function checksOf(ground: WayOutcome, rules: WayRules): RuleCheck[] {
  const low = 2 * ground.gap.over;
  const atMost = (rule: keyof WayRules, figure: number): RuleCheck => ({
    rule,
    figure,
    limit: rules[rule],
    met: figure <= rules[rule],
  });
  const { least } = ground.pressFit;
  return [
    { rule: 'leastPress', figure: least, limit: rules.leastPress, met: least >= rules.leastPress },
    atMost('acceptLow', low),
    {
      ...atMost('acceptShare', ground.lowShare),
      met: ground.lowShare < rules.acceptShare,
    },
    atMost('squeezeLow', low),
    atMost('oversizeLow', low),
  ];
}

function callOf(ground: WayOutcome, checks: readonly RuleCheck[]): Call {
  const met = (rule: keyof WayRules) => checks.some((one) => one.rule === rule && one.met);
  if (checks.some(({ rule, met: on }) => rule === 'offShare' && !on)) return 'off-line';
  if (met('leastPress')) return ground.off.greatest > NOTHING ? 'high-spots' : 'nothing';
  if (met('acceptLow') && met('acceptShare')) return 'low-stays';
  if (met('squeezeLow')) return 'low-closes';
  return met('oversizeLow') ? 'low-larger' : 'low-far';
}

/** From the least work to the most: what answers a call is too little for the next, and more than needed for the last. */
const LADDER: readonly Call[] = [
  'nothing',
  'high-spots',
  'low-stays',
  'low-closes',
  'low-larger',
  'low-far',
];

function verdictOf(
  one: WayOutcome,
  at: {
    readonly call: Call;
    readonly gates: Gates;
    readonly thin: boolean;
  },
): Verdict {
  const { name } = one;
  if (at.thin) return 'thin-wall';
  if (at.gates.all || (at.gates.heat && isHot(name))) return 'closed';
  if (at.call === 'off-line') return ANSWERS['off-line'].includes(name) ? 'second' : 'off-line';
  if (isIdle(one)) return 'not-needed';
  if (ANSWERS[at.call].includes(name)) return 'second';
  const step = LADDER.indexOf(at.call);
  const answers = LADDER.map((call, i) => ({ i, with: ANSWERS[call] }));
  const highest = Math.max(
    ...answers.flatMap(({ i, with: ways }) => (ways.includes(name) ? i : [])),
  );
  if (highest < step) return name === 'squeeze' ? 'too-far' : 'too-little';
  return 'more-than-needed';
}

/** True where the way would do nothing to this bore. */
function isIdle({ name, off, on, squeeze }: WayOutcome): boolean {
  if (name === 'grind') return !(off.greatest > NOTHING);
  if (name === 'squeeze') return !((squeeze?.closing ?? 0) > 0);
  return name === 'weld' && !(on.volume > 0);
}
