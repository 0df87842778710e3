/** The press fit of one bushing in sentences and as a table: page and report say the same. */
import type { Held, PressCase, PressMissing, PressPart } from '../evaluate/fit/press.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatLength } from '../job/units.ts';
import { BOUND_ONLY } from './beyondYield.ts';
import {
  forceText,
  pressSize,
  pressureBare,
  pressureText,
  pressureUnit,
  torqueText,
} from './loads.ts';
import { metalFaults, metalName } from './metalWords.ts';
import { nearClock } from './nearClock.ts';
import { looseWords, offWords } from './seatWords.ts';
import { minus } from './wayTable.ts';
import { percentOf } from './wayWords.ts';
import { type Written, written } from './written.ts';

export interface PressWords {
  /** What must be known before all else; most often none. */
  readonly alarms: readonly string[];
  readonly local: readonly string[];
  /** Why there is no table; null: there is one. */
  readonly missing: string | null;
  readonly rows: readonly PressRow[];
  readonly holds: readonly string[];
  readonly metals: readonly string[];
}

/** Cells at the least, mean and greatest local press fit. */
export interface PressRow {
  readonly what: string;
  readonly least: string;
  readonly mean: string;
  readonly greatest: string;
}

export function pressWords(part: PressPart, units: Units): PressWords {
  const text = written(units, part.local.give);
  return {
    alarms: alarms(part, units),
    local: localLines(part, text, units),
    missing: part.missing === null ? null : MISSING[part.missing],
    rows: rowsOf(part, text, units),
    holds: holdLines(part, units),
    metals: metalLines(part),
  };
}

const MISSING: Readonly<Record<PressMissing, string>> = {
  outside: 'Give the bushing’s outside diameter under Measure: the press fit follows.',
  inside:
    'Give the bushing’s inside diameter: pressure, stresses, close-in and press force follow.',
  'boss-size':
    'Give the outside diameter of the boss: pressure, stresses, close-in and press force follow.',
  bushing: 'The bushing is as large inside as it is outside, or larger: look at both of its sizes.',
  boss: 'The boss is no larger outside than the bushing that goes into it: look at its outside diameter.',
  size: 'The size of the bushing cannot be: look at its outside diameter.',
  material:
    'The stiffness of boss or bushing cannot be: look at the figures of their metals below.',
};

function alarms(part: PressPart, units: Units): string[] {
  const { cases, facts } = part;
  const out: string[] = [...facts.wrong];
  const off = offWords(part, units);
  if (off !== null) out.push(off);
  const loose = looseWords(part, units);
  if (loose !== null) out.push(`The bushing is loose: ${loose}`);
  if (cases !== null) out.push(...beyondLines(part, cases.greatest, units));
  return out;
}

/** As if the whole seat were as tight as its tightest place. */
function beyondLines({ yields, boss, bushing }: PressPart, most: PressCase, units: Units) {
  const says = (which: 'boss' | 'bushing', brittle: boolean) =>
    `At its tightest place the press fit is more than the ${which} bears: from ${formatAcross(yields[which], units)} on it ${brittle ? 'may crack' : 'gives for good instead of holding tighter'}. Take a smaller press fit.`;
  const said = [
    ...(most.bossLoad.share >= 1 ? [says('boss', boss.brittle)] : []),
    ...(most.bushingLoad.share >= 1 ? [says('bushing', bushing.brittle)] : []),
  ];
  return said.length === 0
    ? said
    : [...said, `Pressure, close-in, force and torque of this press fit are ${BOUND_ONLY}.`];
}

function localLines(part: PressPart, text: Written, units: Units): string[] {
  const { local, held, twoPoint, onlyTwoPoint } = part;
  if (Number.isNaN(local.least)) return [];
  const give =
    local.give > 0
      ? `, give or take ${text.plain(local.give)}`
      : ' (as it is planned: the bore is measured before it is pressed)';
  const share =
    held.least < held.most
      ? ` (${percentOf(held.least)} to ${percentOf(held.most)} as well as the wall is known)`
      : '';
  const round = local.greatest - local.least < 1e-9;
  return [
    round
      ? `Press fit, the same everywhere: ${text.across(local.mean)}.`
      : `Local press fit, twice what the bushing’s radius is over the wall’s: least ${text.across(local.least)} at ${nearClock(local.theta)}, ${formatDepth(local.z, units)} deep${give}; mean ${text.across(local.mean)}; most ${text.across(local.greatest)}.`,
    ...(Number.isNaN(held.likely)
      ? []
      : [`Before it is pressed in, ${percentOf(held.likely)} of the seat is tight${share}.`]),
    ...twoPointLines(twoPoint, onlyTwoPoint, local.least, text),
  ];
}

function twoPointLines(twoPoint: number, only: boolean, least: number, text: Written): string[] {
  if (Number.isNaN(twoPoint)) return [];
  const fooled =
    twoPoint > 0 && least < 0 ? ' By the diameters alone it would be tight everywhere.' : '';
  const blind = only
    ? ' Nothing else measured this bore: a three-lobed bore reads alike across at every clock position, and still touches at three places only. A swept indicator shows it, or the bushing blued and pushed in by hand.'
    : '';
  return [
    `Bushing less the largest diameter of the seat: ${text.across(twoPoint)}, which is all that a two-point gauge can tell.${fooled}${blind}`,
  ];
}

function rowsOf({ cases, boss, bushing }: PressPart, text: Written, units: Units): PressRow[] {
  if (cases === null) return [];
  const row = (what: string, of: (one: PressCase) => string): PressRow => ({
    what,
    least: of(cases.least),
    mean: of(cases.mean),
    greatest: of(cases.greatest),
  });
  const bare = (mpa: number) => pressureBare(mpa, units);
  const limit = (brittle: boolean) => (brittle ? 'tensile strength' : 'yield strength');
  const unit = pressureUnit(units);
  return [
    row(`Press fit that counts, ${units} across`, ({ fit }) => minus(text.bare(fit))),
    row(`Pressure between them, ${unit}`, ({ pressure }) => bare(pressure)),
    row(`Boss, pull round its bore, ${unit}`, (one) => bare(one.boss.hoopInside)),
    row(`Boss, pull round its outside, ${unit}`, (one) => bare(one.boss.hoopOutside)),
    row(`Boss, share of its ${limit(boss.brittle)}`, (one) => percentOf(one.bossLoad.share)),
    row(`Bushing, squeeze round its bore, ${unit}`, (one) => bare(-one.bushing.hoopInside)),
    row(`Bushing, squeeze round its outside, ${unit}`, (one) => bare(-one.bushing.hoopOutside)),
    row(`Bushing, share of its ${limit(bushing.brittle)}`, (one) =>
      percentOf(one.bushingLoad.share),
    ),
    row(`Bushing’s bore closes in by, ${units} across`, ({ closesIn }) => text.bare(closesIn)),
    row(`Boss grows outside by, ${units} across`, ({ grows }) => text.bare(grows)),
  ];
}

function holdLines(part: PressPart, units: Units): string[] {
  const { holds, cases, yields } = part;
  if (holds === null || cases === null) return [];
  const { low, high } = holds;
  const never = (mm: number) => (Number.isFinite(mm) ? formatAcross(mm, units) : 'no press fit');
  const held =
    high.force > 0
      ? [
          ...forceLines(part, units),
          `In place it holds at least ${forceText(low.force, units)} along, and ${torqueText(low.torque, units)} before it turns.`,
        ]
      : [];
  return [
    ...held,
    ...peakLines(part, units),
    `First to yield: the boss at ${never(yields.boss)}, the bushing at ${never(yields.bushing)}, were it as tight all round.`,
  ];
}

/** What pressing in takes by either sum; once where both write alike. */
function forceLines({ holds, sums, length, facts }: PressPart, units: Units): string[] {
  const { frictionLow: few, frictionHigh: much } = facts;
  const friction =
    few.value === much.value ? `friction ${few.value}` : `friction ${few.value} to ${much.value}`;
  const takes = ({ low, high }: Held) => rangeText(low.force, high.force, units);
  const { even, shape } = sums!;
  const over = `Pressed in cold over ${formatDepth(length, units)} of seat with ${friction}, it takes`;
  const evenly = 'were it to press evenly all round with the mean press fit';
  const said =
    shape === null
      ? `${over} ${takes(even)}, ${evenly}.`
      : takes(shape) === takes(even)
        ? `${over} ${takes(even)}.`
        : `${over} ${takes(shape)} by the bore’s real shape, and ${takes(even)} ${evenly}.`;
  return [`${said} Have a press of at least ${pressSize(holds!.high.force, units)}.`];
}

function rangeText(low: number, high: number, units: Units): string {
  const [from, to] = [forceText(low, units), forceText(high, units)];
  return from === to ? from : `${from} to ${to}`;
}

/** How hard it presses where it presses hardest: no sum of even rings tells that. */
function peakLines({ round, boss, bushing }: PressPart, units: Units): string[] {
  if (round === null || !(round.greatest.value > 0)) return [];
  const { value, theta, z } = round.greatest;
  const of = ({ material, brittle }: PressPart['boss']) =>
    `${percentOf(value / material.yield)} of the ${brittle ? 'tensile' : 'yield'} strength`;
  return [
    `By the bore’s real shape it presses hardest at ${nearClock(theta)}, ${formatDepth(z, units)} deep: ${pressureText(value, units)}, ${of(boss)} of the boss and ${of(bushing)} of the bushing. The table counts as if it were as tight all round.`,
  ];
}

function metalLines({ boss, bushing }: PressPart): string[] {
  return [
    `Reckoned with a boss of ${metalName(boss)} and a bushing of ${metalName(bushing)}.`,
    ...metalFaults(boss),
    ...metalFaults(bushing),
  ];
}

export const PRESS_CAUTIONS: readonly string[] = [
  'Hard steel splinters under a hammer, and under a press that tips: eye protection, nobody beside the work, a soft driver that pushes square, the boss held on its own face.',
  'These are figures of plain round rings. A lug, a slot or a weld on the boss makes it give elsewhere; the press fit that the maker of the machine states goes before them.',
];

/** The two published formulas for what roughness takes, which disagree; for reading, as the loss is typed. */
export function roughnessWords(units: Units): string {
  // Both walls as a hand-ground bore and a turned bushing usually are: Rz 6.3 µm, or 0.00025 in.
  const sum = 2 * 0.0063;
  const much = (share: number) => formatLength(share * sum, units, units === 'in' ? 5 : 4);
  return `Two published formulas differ fourfold: 0.8 × (Rz + Rz) across, as DIN 7190 has it, and 0.2 × (Rz + Rz) of other notes; Rz, the height of the roughness, is about 6 × Ra. With both walls at Rz 6.3 µm that is ${much(0.8)} or ${much(0.2)} across.`;
}
