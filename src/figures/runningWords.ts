/** How freely the pin runs once the bushing is pressed in, and what to open: the same for page and report. */
import type { PinSizes } from '../evaluate/fit/pinOf.ts';
import type { Installed, OpenAt, RunningPart } from '../evaluate/fit/running.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearHour, nearPair } from './nearClock.ts';
import { nearlyWords } from './runningShort.ts';
import { written } from './written.ts';

const NO_PIN =
  'Give the sizes of the pin, at three places and two ways round: how freely it runs follows.';
const NO_INSIDE = 'Give the bushing’s inside diameter: how freely the pin runs follows.';

export interface RunningWords {
  readonly said: readonly string[];
  /** What to open where it is tight; none where it need not be opened. */
  readonly open: readonly string[];
}

export function runningWords(part: RunningPart, units: Units): RunningWords {
  const { pin, free, installed, measured } = part;
  if (pin === null) return { said: [NO_PIN], open: [] };
  if (installed !== null && measured !== null) {
    return {
      said: [
        pinLine(pin, units),
        ...clearanceLines(installed, `Read once it was in (“${measured.survey}”)`, units),
        ...beforeLines(installed, measured, units),
        verdictLine(part, installed, units),
      ],
      open: openLines(installed, units),
    };
  }
  if (free === null) return { said: [pinLine(pin, units), NO_INSIDE], open: [] };
  const { across, plain } = written(units, Number.NaN);
  if (!(free.tightest > 0)) {
    const larger = `By their sizes the pin is ${across(-free.tightest)} larger than the bushing’s bore even before that goes in`;
    return {
      said: [pinLine(pin, units), `${larger}: check both, and that this pin runs here.`],
      open: [],
    };
  }
  const lines = [
    pinLine(pin, units),
    `Before the bushing goes in, it is ${plain(free.tightest)} to ${across(free.loosest)} larger than the pin.`,
  ];
  const safe = safeLine(part, units);
  if (installed === null) return { said: [...lines, ...safe], open: [] };
  return {
    said: [
      ...lines,
      ...clearanceLines(installed, 'Pressed in', units),
      ...safe,
      ...part.limits.wrong,
      verdictLine(part, installed, units),
    ],
    open: openLines(installed, units),
  };
}

function pinLine({ from, name, least, greatest, give, places }: PinSizes, units: Units): string {
  const { across, plain } = written(units, give);
  const source = {
    surveyed: `“${name}”, as measured,`,
    list: 'The pin',
    'other-list': `The pin as measured for “${name}”`,
  }[from];
  const size = least === greatest ? across(least) : `${plain(least)} to ${across(greatest)}`;
  const few =
    places < 3
      ? ' Measure it at three places and two ways round: a pin is seldom round where it ran.'
      : '';
  return `${source} is ${size}, give or take ${plain(give)}.${few}`;
}

/** What was worked out before it was measured, beside what was measured. */
function beforeLines(
  now: Installed,
  { computed, closedIn, closesIn }: NonNullable<RunningPart['measured']>,
  units: Units,
): string[] {
  const { across, plain } = written(units, now.give);
  const spread = ({ tightest, loosest }: Installed) =>
    `${plain(tightest.mm)} to ${across(loosest.mm)}`;
  const worked =
    computed === null
      ? []
      : [`Worked out before: ${spread(computed)}; measured now: ${spread(now)}.`];
  const less = Number.isNaN(closesIn) ? '' : `, where ${plain(closesIn)} was expected`;
  const closed = Number.isNaN(closedIn)
    ? []
    : closedIn < 0
      ? [`On average its bore reads ${across(-closedIn)} larger than as bought${less}: check both.`]
      : [`On average its bore is ${across(closedIn)} smaller than as bought${less}.`];
  return [...worked, ...closed];
}

function clearanceLines(
  { tightest, loosest, largest, room, give }: Installed,
  when: string,
  units: Units,
): string[] {
  const { across, plain, perSide } = written(units, give);
  const at = (one: Installed['tightest']) =>
    `across ${nearPair(one.theta)}, ${formatDepth(one.z, units)} deep`;
  const lines = [
    `${when}, it clears the pin by ${plain(tightest.mm)} across at the tightest (${at(tightest)}) and by ` +
      `${plain(loosest.mm)} across at the loosest (${at(loosest)}), give or take ${plain(give)}.`,
  ];
  if (room < tightest.mm - UNLIKE) {
    lines.push(
      `Diameters do not tell all: the largest straight pin that goes through is ${across(largest.diameter)}, which leaves ` +
        `${plain(room)} across for this one.`,
    );
  }
  const least = Math.min(tightest.mm, room);
  if (least > 0) {
    lines.push(
      `For grease that leaves ${perSide(least / 2)} all round with the pin in the middle.`,
    );
  }
  return lines;
}

/** Below this a lobed hole and an oval one are told alike, mm across. */
const UNLIKE = 0.0025;

function safeLine({ safe }: RunningPart, units: Units): string[] {
  if (Number.isNaN(safe)) return [];
  const { across, plain } = written(units, Number.NaN);
  const rule = 'Should all of the press fit close its bore, as shops plan for to be safe,';
  return safe > 0
    ? [`${rule} ${across(safe)} would be left at the tightest.`]
    : [`${rule} the pin would not go in: it would be ${plain(-safe)} across too large.`];
}

function verdictLine(
  { limits, measured }: RunningPart,
  installed: Installed,
  units: Units,
): string {
  const { verdict } = installed;
  const { across } = written(units, Number.NaN);
  const least = across(limits.least.mm);
  switch (verdict) {
    case 'stuck':
      return `The pin does not go in. At least ${least} is wanted: open the bushing’s bore as told below.`;
    case 'tight':
      return `That is tighter than the ${least} wanted at the least: open the bushing’s bore as told below.`;
    case 'near':
      return `That is as near to the ${least} wanted at the least as can be told: ${nearlyWords(installed, measured !== null, units)}`;
    case 'worn':
      return (
        `That is past the limit of ${across(limits.worn.mm)} at which a joint counts as worn out: the pin or the bushing ` +
        'is not the right one.'
      );
    case 'wide':
      return `That is looser than the ${across(limits.most.mm)} wanted at the most when new, and short of worn out.`;
    case 'good':
      return `That is as wanted: ${least} at the tightest, ${across(limits.most.mm)} at the loosest when new.`;
  }
}

function openLines({ open }: Installed, units: Units): string[] {
  if (open === null || open.hours.length === 0) return [];
  const { across, perSide } = written(units, Number.NaN);
  const stretches = grouped(open.hours).map((hours) => {
    const most = Math.max(...hours.map((one) => one.most));
    const from = Math.min(...hours.map((one) => one.from));
    const to = Math.max(...hours.map((one) => one.to));
    return `${clocks(hours)}, ${formatDepth(from, units)} to ${formatDepth(to, units)} deep: up to ${perSide(most)}.`;
  });
  return [
    `Hone the bushing’s bore evenly until a straight bar of ${across(open.to)} goes through by hand; never turn the pin down.`,
    ...stretches,
    'Wipe the bore and the grease hole clean of grit before the pin goes in, and measure again at two depths and three ways round.',
  ];
}

function clocks(hours: readonly OpenAt[]): string {
  if (hours.length === 12) return 'All round';
  const [first, last] = [nearHour(hours[0]!.theta), nearHour(hours.at(-1)!.theta)];
  return first === last ? `At ${first} o’clock` : `${first} to ${last} o’clock`;
}

/** Hours that follow one another, across 12 too. */
function grouped(hours: readonly OpenAt[]): OpenAt[][] {
  const out: OpenAt[][] = [];
  for (const one of hours) {
    const last = out.at(-1);
    if (last !== undefined && one.theta - last.at(-1)!.theta < NEXT) last.push(one);
    else out.push([one]);
  }
  const [first, last] = [out[0], out.at(-1)];
  if (first === undefined || last === undefined || out.length === 1) return out;
  const over12 = first[0]!.theta < NEXT / 2 && last.at(-1)!.theta > 2 * Math.PI - NEXT;
  return over12 ? [[...last, ...first], ...out.slice(1, -1)] : out;
}

/** A little more than an hour. */
const NEXT = (1.1 * Math.PI) / 6;
