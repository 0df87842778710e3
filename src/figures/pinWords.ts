/** The plan of a pin or shaft in sentences: its size, what is missing where, the lathe's centres, build-up. */
import type { Zone } from '../bore/types.ts';
import type { PinPlan } from '../evaluate/pinTypes.ts';
import { decimalsFor } from '../job/digits.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatLength, formatPerSide } from '../job/units.ts';
import { earned } from './amountWords.ts';
import { nearClock } from './nearClock.ts';
import { beadWords, grams } from './weldWords.ts';
import { zonePeak, zoneWhere } from './zoneWords.ts';

type Centring = PinPlan['kept'];

const FROM: Readonly<Record<PinPlan['finished']['from'], string>> = {
  typed: 'as you said',
  'new-size': 'its new size',
  bore: 'the smallest hole less the running clearance',
  largest: 'its own largest mean size, since no new size is given',
};

/** The finished size and what it leaves in the holes. */
function pinSizeWords(plan: PinPlan, units: Units): string[] {
  const { finished, holes, fromBore, clearance } = plan;
  const lines = [`Finished size ${formatAcross(finished.mm, units)}: ${FROM[finished.from]}.`];
  for (const { name, size, from } of holes) {
    const how =
      from === 'bought'
        ? ', as bought; pressing it in closes it, so measure it in place'
        : ', as measured';
    const left = size - finished.mm;
    lines.push(
      left > 0
        ? `In ${name} (${formatLength(size, units)} across${how}) it then runs with ${formatAcross(left, units)} of clearance.`
        : `It would not go into ${name} (${formatLength(size, units)} across${how}): the finished size is too large for it.`,
    );
  }
  if (fromBore > 0 && finished.from !== 'bore') {
    lines.push(
      `The smallest hole less ${formatAcross(clearance, units)} of clearance would make it ${formatAcross(fromBore, units)}.`,
    );
  }
  return lines;
}

/** `0.0037 in per side short, give or take 0.0015`; proud where it is below nothing. */
function shortWords(short: number, give: number, units: Units, at = ''): string {
  const digits = decimalsFor(give, units);
  const doubt = Number.isNaN(give) ? '' : `, give or take ${bare(give, units, digits)}`;
  const figure = formatPerSide(Math.abs(short), units, digits);
  return short > 0 ? `${figure} short${at}${doubt}` : `${figure} above it${at}${doubt}`;
}

function bare(mm: number, units: Units, digits: number): string {
  return formatLength(mm, units, digits).split(' ')[0]!;
}

/** Where it is low, zone by zone, and where it may be. */
function pinZoneWords(plan: PinPlan, units: Units): string[] {
  const { low, unsure, length, stage } = plan;
  const where = (zone: Zone) => zoneWhere(zone, length, units);
  const at = (zone: Zone) => ` at ${zonePeak(zone, length, units)}, where it is most`;
  const again = stage === 'built-up' ? ': weld again here before the lathe' : '';
  return [
    ...low.map(
      (zone) => `${where(zone)}: ${shortWords(zone.peak, zone.give, units, at(zone))}${again}.`,
    ),
    ...unsure.map(
      (zone) =>
        `${where(zone)}: may be low by up to ${formatPerSide(zone.peak, units, decimalsFor(zone.give, units))}${at(zone)}: measure it again before you trust it.`,
    ),
  ];
}

/** What a survey says against the finished size: worn, or welded up and to be turned. */
function pinStateWords(plan: PinPlan, units: Units): string[] {
  const { stage, lands, sideSeen, shifted, finished } = plan;
  const { low, unsure, worst } = plan[plan.chosen];
  const share = (part: number) => `${Math.max(1, Math.round(100 * part))} %`;
  const lines: string[] = [];
  if (stage === 'worn') {
    lines.push(
      worst.short > 0
        ? `Against the finished size it is ${shortWords(worst.short, worst.give, units)}, at ${nearClock(worst.theta)}, ${formatDepth(worst.z, units)} deep, where most is missing.`
        : 'No place that runs is under the finished size.',
    );
  } else if (!(low > 0) && !(unsure > 0)) {
    lines.push(
      'Every place that runs stands above the finished size by more than its give-or-take: it cleans up.',
    );
  } else {
    if (low > 0)
      lines.push(
        `Not yet ready for the lathe: ${share(low)} of what runs is still under the finished size and would not clean up${plan.chosen === 'kept' ? ' on the centres that it has' : ''}. ${
          plan.chosen === 'kept' && shifted.diameter - 2 * shifted.give > finished.mm
            ? 'Centred anew as said below, all of it cleans up without more weld; else weld there again first.'
            : 'Weld there again first.'
        }`,
      );
    if (unsure > 0)
      lines.push(
        `${share(unsure)} of it stands nearer to the finished size than its give-or-take: not sure to clean up.`,
      );
    const high = 1 - low - unsure;
    if (high > 0) lines.push(`${Math.floor(100 * high)} % is high enough.`);
  }
  if (!sideSeen) {
    lines.push(
      'These readings are diameters: a low on one side and a pin that stands off its centres read alike. Both sides are taken to be alike; turn it between centres under an indicator, and they are told apart.',
    );
  }
  const unread = lands.flatMap(({ facts, edges }) =>
    edges
      .filter(({ measured }) => !measured)
      .map(
        ({ z }) => `${formatDepth(z, units)} deep${facts.name === '' ? '' : ` (${facts.name})`}`,
      ),
  );
  if (unread.length > 0) {
    lines.push(
      `No reading near the ${unread.length === 1 ? 'edge' : 'edges'} at ${unread.join(', ')}: edges and shoulders are where weld is short first. Read there all round.`,
    );
  }
  return lines;
}

/** What the lathe would get out of it about either pair of centres. */
function pinCentreWords(plan: PinPlan, units: Units): string[] {
  const { kept, shifted, moved, sideSeen, pin, finished } = plan;
  const size = (one: Centring) => {
    const digits = decimalsFor(2 * one.give, units);
    return `cleans up everywhere at ${formatAcross(one.diameter, units, digits)}, give or take ${bare(2 * one.give, units, digits)}, held by ${nearClock(one.theta)}, ${formatDepth(one.z, units)} deep`;
  };
  const far = Math.max(moved[0].by, moved[1].by);
  const lines = [`On the centres that it has, it ${size(kept)}.`];
  if (!(far > 0.0025)) {
    lines.push(
      sideSeen
        ? 'Shifting the centres would gain nothing: they stand where it cleans up best.'
        : 'Where better centres would stand is not told by diameters.',
    );
  } else {
    const move = ({ by, theta }: PinPlan['moved'][number], end: string) =>
      `${formatLength(by, units)} towards ${nearClock(theta)} at ${end}`;
    lines.push(
      `Centred anew where it cleans up best, it ${size(shifted)}: shift the work ${move(moved[0], 'face A')} and ${move(moved[1], 'face B')}, from the old axis.`,
      'Shifted centres carry threads, keeper slots and whatever is not turned along with them, out of true by as much: see that those can bear it.',
    );
  }
  const best = Math.max(kept.diameter, shifted.diameter);
  if (best < finished.mm && pin.lands.length > 0 && plan.stage === 'built-up') {
    lines.push(
      'Neither reaches the finished size: it needs more weld whichever way it is centred.',
    );
  }
  return lines;
}

/** Metal on and off again. */
function pinMetalWords({ stage, deposit, facts, turnOff, lands }: PinPlan, units: Units): string[] {
  const { allowance } = facts.weld;
  // What is welded up already gets more only where it is low.
  const over = stage === 'built-up' ? 'low' : facts.weld.over;
  if (!(deposit.mass > 0))
    return ['Nothing is to be welded on: no place is under the finished size.'];
  const where =
    over === 'seat'
      ? `over ${lands.length === 1 ? 'the whole of what runs' : `all ${lands.length} running stretches`}`
      : 'where it is low only';
  return [
    `Built up ${where}, to ${formatPerSide(allowance.mm, units, 3)} above the finished size for turning: ${grams(deposit.mass)} of metal (${earned(deposit.volume, -1)} mm³), at most ${formatPerSide(deposit.greatest, units, 3)} thick. So each place gets what it is short and ${formatPerSide(allowance.mm, units, 3)} more.`,
    beadWords(deposit, facts.weld, units),
    `Turned off again: ${grams(turnOff.mass)} (${earned(turnOff.volume, -1)} mm³) where it is welded no higher than that.`,
  ];
}

export interface LandRow {
  readonly key: string;
  readonly name: string;
  readonly place: string;
  readonly worst: string;
  readonly edges: readonly [string, string];
  readonly low: string;
}

/** The stretches side by side: most that is short, both edges, share that is under the size. */
export function landRows({ lands }: PinPlan, units: Units): LandRow[] {
  return lands.map(({ facts, runsIn, worst, edges, low, unsure }, i) => {
    const edge = (at: number) => {
      const { short, give, theta, measured } = edges[at]!;
      return `${signed(short, give, units)} at ${nearClock(theta)}${measured ? '' : ', not read'}`;
    };
    const name = facts.name === '' ? 'whole pin' : facts.name;
    return {
      key: `${facts.id} ${i}`,
      name: runsIn === null ? name : `${name}, in ${runsIn}`,
      place: `${formatDepth(facts.from, units)} to ${formatDepth(facts.to, units)}`,
      worst: `${signed(worst.short, worst.give, units)} at ${nearClock(worst.theta)}, ${formatDepth(worst.z, units)} deep`,
      edges: [edge(0), edge(1)],
      low: `${Math.round(100 * low)} %${unsure > 0 ? ` (+${Math.max(1, Math.round(100 * unsure))} % unsure)` : ''}`,
    };
  });
}

/** The sign is the action: minus is to come off, plus is short. */
function signed(short: number, give: number, units: Units): string {
  if (Number.isNaN(short)) return '–';
  const digits = decimalsFor(give, units);
  const figure = bare(Math.abs(short), units, digits);
  const doubt = Number.isNaN(give) ? '' : ` ± ${bare(give, units, digits)}`;
  return `${Number(figure) === 0 ? '' : short > 0 ? '+' : '−'}${figure}${doubt}`;
}

export const LAND_HEADS = [
  'running stretch',
  'deep',
  'most short',
  'edge to A',
  'edge to B',
  'under the size',
] as const;

/** All that the plan says, in the order in which it is read. */
export function pinWordGroups(
  plan: PinPlan,
  units: Units,
): { readonly head: string; readonly lines: readonly string[] }[] {
  return [
    { head: 'Size', lines: pinSizeWords(plan, units) },
    {
      head: plan.stage === 'worn' ? 'Worn' : 'Welded up',
      lines: [...pinStateWords(plan, units), ...pinZoneWords(plan, units)],
    },
    { head: 'Centres', lines: pinCentreWords(plan, units) },
    { head: 'Build-up', lines: pinMetalWords(plan, units) },
  ];
}
