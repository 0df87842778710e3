/** What the ways of mending, their tools and their verdicts are called. */
import type { RuleCheck, Verdict } from '../bore/advice.ts';
import type { WayName } from '../bore/wayTypes.ts';
import type { WaysEvaluation } from '../evaluate/ways.ts';

export const WAY_TITLES: Readonly<Record<WayName, string>> = {
  grind: 'Grind high spots, keep the rest',
  squeeze: 'Squeeze with heat, then grind',
  shim: 'Grind round, then shim',
  oversize: 'Oversize bushing',
  sleeve: 'Bore out and sleeve',
  weld: 'Weld up and cut again',
  leave: 'Leave it as it is',
};

export const VERDICTS: Readonly<Record<Verdict, string>> = {
  advised: 'advised',
  second: 'would do as well',
  closed: 'closed',
  'thin-wall': 'too thin a wall',
  'not-needed': 'nothing to do',
  'too-little': 'not enough',
  'more-than-needed': 'more than needed',
  'too-far': 'too far to close',
  'off-line': 'leaves it off the line',
};

type Tool = WaysEvaluation['needs']['grind'][number]['tool'];

export const TOOLS: Readonly<Record<Tool, string>> = {
  cutter: 'a drum or a stone',
  strip: 'abrasive strip',
  shim: 'shim stock',
  torch: 'a torch and jaws',
  welder: 'a welder',
  'boring-bar': 'a boring bar',
  lathe: 'a lathe for the new part',
};

/** A rule as a sentence's two halves, around its limit. */
export const RULES: Readonly<Record<RuleCheck['rule'], readonly [string, string]>> = {
  offShare: [
    'The bushing’s axis stands off the line of the other bores, per side, by at most',
    ' of the running clearance',
  ],
  leastPress: ['With the high spots ground, the press fit is everywhere at least', ' across'],
  acceptLow: ['Low spots that may stay are at most', ' across over the target'],
  acceptShare: ['Low spots that may stay take up less than', ' of the seat'],
  squeezeLow: ['Low spots that a squeeze closes are at most', ' across over the target'],
  oversizeLow: ['Low spots that a larger bushing takes up are at most', ' across over the target'],
  wallShare: ['The wall of the boss that is left is at least', ' of the bore’s diameter'],
};

/** Usual cautions, for the way where they matter; common practice. */
export const WAY_CAUTIONS: Readonly<Record<WayName, readonly string[]>> = {
  grind: [
    'Eyes, lungs and ears covered, part clamped, wheel guarded and within its speed; grease away from the sparks.',
    'A flap wheel follows the hole and does not make it round. Stop short, let it cool, measure.',
  ],
  squeeze: [
    'A closed or greasy pocket bursts when it is heated: nothing is lit before the questions about heat are answered.',
    'Near red heat the bore can come out too small. Never iron, never an alloy that nobody knows.',
  ],
  shim: [
    'In one piece all round, its butt away from the load. A strip on one side alone works loose.',
    'See that the grease hole stays open.',
  ],
  oversize: [
    'Order or turn it to the bore as measured once it is round, not to this figure: grind first, measure, then size.',
    'Its hole closes as it goes in: check it against the pin.',
  ],
  sleeve: [
    'Bored, not ground by hand: a shop with a boring bar does it. Sharp chips, and a bar that turns: no gloves, no loose sleeves.',
    'The maker’s least wall comes before any share given here.',
  ],
  weld: [
    'Fire, fumes, closed pockets: nothing is struck before the questions about heat are answered.',
    'The bore closes and goes oval as it cools. Look for cracks cold, and again after a day or two.',
  ],
  leave: [
    'A bushing that is loose turns, and wears the bore on. Look again after 10 to 50 hours of work.',
    'Where the wall stands proud the press is harder than meant: never hammer on hard steel, press or draw it in.',
  ],
};
