/** The passes in words that can be followed with a grinder in the hand and a gauge on the bench. */
import type { Expected, GatePlace, Left, Pass } from '../bore/passTypes.ts';
import type { Zone } from '../bore/types.ts';
import type { Passes } from '../evaluate/passes.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth, formatPerSide } from '../job/units.ts';
import { earned } from './amountWords.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { NO_PASS_YET, waitsWords } from './waitWords.ts';
import { type Written, written } from './written.ts';
import { feather, zonePeak, zoneWhere } from './zoneWords.ts';

/** What is shown wherever the passes are. */
export const GRINDING_CAUTIONS: readonly string[] = [
  'Eyes, ears and lungs covered; the part clamped; the guard on and the wheel rated for the speed of the machine. The makers of tool and machine and the local code come first.',
  'Grease, hoses, seals and anything that burns away from the sparks; nothing closed or greasy behind the bore.',
  'Mark the clock hours on the metal, seen looking in at face A, before the first spark: a map read from the wrong face grinds the wrong side.',
  'Ground metal is warm and reads large: wipe it, let it cool to the gauge’s own temperature, then measure.',
];

/** `Pass 2: 0.0016 in per side at most, 1.2 g of metal`. */
export function passTitle(pass: Pass, number: number, units: Units): string {
  return `Pass ${number}: ${passAmount(pass, units)}`;
}

/** `0.0016 in per side at most, 1.2 g of metal`. */
export function passAmount({ greatest, mass }: Pass, units: Units): string {
  return `${formatPerSide(greatest, units)} at most, ${grams(mass)} of metal`;
}

function grams(mass: number): string {
  return mass < 0.05 ? 'less than 0.1 g' : `${earned(mass, mass < 10 ? 1 : 0)} g`;
}

/** `2:30 to 3:30, rim to 0.70 in deep` and `take off 0.0021 in per side at 3:00 at the rim, where it is most; feather …`. */
export function passZone(
  zone: Zone,
  length: number,
  units: Units,
): { where: string; what: string } {
  return {
    where: zoneWhere(zone, length, units),
    what: `take off ${formatPerSide(-zone.peak, units)} at ${zonePeak(zone, length, units)}, where it is most${feather(zone)}.`,
  };
}

/** How a pass is held back beside its figures: what only a gate can allow, and what wants a gentle tool. */
export function passConditions({ beyondDoubt, byStrip, between }: Pass, units: Units): string[] {
  const gate =
    'It ends nearer to the target than today’s readings tell: only if the gate before it allows it.';
  const strip = 'The last 0.001 in (0.025 mm) across: with abrasive strip, by hand.';
  return [
    ...(between.length > 0 ? [betweenWords(between, units)] : []),
    ...(beyondDoubt ? [gate] : []),
    ...(byStrip ? [strip] : []),
  ];
}

/** Between the marks of the first survey nothing is known of a hollow. */
function betweenWords(between: Pass['between'], units: Units): string {
  const depths = (of: 'depth' | 'face') => {
    const said = between
      .filter(({ halfway }) => halfway === of)
      .map(({ z }) => formatDepth(z, units));
    return [...new Set(said)].join(', ');
  };
  const among = depths('depth');
  const beyond = depths('face');
  const round = [
    ...(among === '' ? [] : [`${among} deep, half-way between the depths that were read`]),
    ...(beyond === ''
      ? []
      : [`${beyond} deep, half-way from the outermost depth that was read to the face`]),
  ].map((place, i) => `${i === 0 ? ', and round' : ', and'} at ${place}`);
  return `Before this pass, machine at rest, burrs gone and wall clean, feel with a fingertip all over where it takes metal, between your marks too${round.join('')}. A hollow there is in no map, and would be cut deeper: read it where it is deepest, and enter that first.`;
}

/** Of the passes after the first. */
export const LATER =
  'Passes after the next one are what to expect if each gate finds what was planned; each is worked out anew from what you read at the gate before it.';

/** What a gate says first: whatever the gauge. */
export const GATE =
  'Gate: stop, wipe, let it cool, and measure these places. Read half-way between your marks too, round the clock and along the depth: that shows a dent before it is ground deeper. Enter all of it as the next stage: earlier readings still count, and the passes that are left are worked out anew.';

/** One line a place and instrument. */
export function gateLines({ gate }: Pick<Pass, 'gate'>, units: Units): string[] {
  return gate.flatMap((place) => place.expected.map((one) => gateLine(place, one, units)));
}

const WHY: Readonly<Record<GatePlace['why'], string>> = {
  most: 'most comes off here',
  near: 'nearest to the target',
  control: 'not worked, to check the others by',
};

function gateLine({ theta, z, why }: GatePlace, one: Expected, units: Units): string {
  const say = written(units, one.give);
  const across = one.instrument === 'two-point';
  const place =
    one.instrument === 'three-leg'
      ? 'the three-leg gauge'
      : across
        ? nearPair(theta)
        : nearClock(theta);
  const where = `${place}, ${formatDepth(z, units)} deep (${WHY[why]})`;
  return `${where}: ${readsWords(one, why, say)}.`;
}

function readsWords(one: Expected, why: GatePlace['why'], say: Written): string {
  const { instrument, before, after, stop } = one;
  if (instrument === 'sweep' || instrument === 'wall') return changeWords(one, why, say);
  const size = instrument === 'radius' ? say.perSide : say.across;
  if (why === 'control') {
    return `should still read ${size(before)}; if not, look for heat, dirt or a gauge that has moved`;
  }
  if (size(before) === size(after)) return `should still read ${size(before)}`;
  const plan = `reads ${size(before)} now, should read ${size(after)}`;
  if (size(stop) === size(after)) return `${plan}, and no more`;
  return `${plan}; from ${size(stop)} on, stop here whatever the map asks`;
}

function changeWords(
  { instrument, after, stop }: Expected,
  why: GatePlace['why'],
  say: Written,
): string {
  const what = instrument === 'wall' ? 'the wall' : 'the needle';
  if (why === 'control') return `${what} should not have changed, in the same set-up`;
  if (say.bare(Math.abs(after)) === say.bare(0))
    return `${what} should read as before, in the same set-up`;
  const way = (mm: number) =>
    instrument === 'wall'
      ? `${say.perSide(Math.abs(mm))} thinner`
      : `${say.perSide(Math.abs(mm))} ${mm < 0 ? 'lower' : 'higher'}`;
  const plan = `${what} should read ${way(after)} than before, in the same set-up`;
  if (way(stop) === way(after)) return `${plan}, and no more`;
  return `${plan}; from ${way(stop)} on, stop here whatever the map asks`;
}

/** What is said where there is no pass; '' where there is one. */
export function noPassWords({ passes, waits, left }: Passes['plan']): string {
  if (passes.length > 0) return '';
  if (waits !== null) return NO_PASS_YET;
  return left.length === 0
    ? 'Nothing is left to grind to this target.'
    : 'No pass can be given as things stand:';
}

/** True where the strip comes next, or after the passes that are planned. */
export function isFinished({ plan, done }: Passes): boolean {
  return plan.passes.length > 0 || (done > 0 && plan.waits === null);
}

/** The last pass; no metal is counted in it. */
export function finishWords({ plan, tool }: Passes, units: Units): string {
  const strip = tool.kind === 'strip' ? 'finer strip' : 'abrasive strip';
  const left =
    plan.left.length > 0
      ? 'where nothing is listed as left standing'
      : `what is left is ${formatPerSide(plan.leftMost, units)} or less`;
  return `Finish: ${strip} by hand, ${left}. Try the bushing or a plug with a thin film of marking blue, break the edges at rim and grease hole, wash out the grit. No metal is counted here.`;
}

export function leftWords(left: Left, { tool }: Passes, units: Units): string {
  const { theta, z, most, why } = left;
  const where = `${nearClock(theta)}, ${formatDepth(z, units)} deep`;
  if (why === 'doubt') return `${where}: ${waitsWords(left, units)}.`;
  const how = {
    tool: tool.rigid
      ? `the ${tool.name} does not get there: it would cut beside it. Take something smaller or narrower`
      : `the ${tool.name} does not get there`,
    slope:
      'there is no room to blend it out beside metal that must stay. Allow a steeper run-out, or scrape it',
  }[why];
  return `${where}: ${formatPerSide(most, units)} stays standing; ${how}.`;
}

/** How the tool works, where that is not plain from its figures; '' else. */
export function toolWords({ tool, plan }: Passes, bore: number): string {
  if (!tool.rigid) {
    const that =
      tool.kind === 'scraper' ? 'A scraper takes' : `A ${tool.name} follows the hole and takes`;
    return `${that} metal where it is pressed, high or low: it makes nothing round by itself. The map says where, the hand does it.`;
  }
  if (!(tool.diameter.mm < bore)) {
    return `A ${tool.name} of that size does not enter this bore.`;
  }
  return plan.passes.length === 0
    ? ''
    : 'It is led along the bore, its axis with the bore’s, and rides on the high spots.';
}
