/** Every part of the joint side by side: rows of figures with their give-or-take, and what they come to in words. */
import type { Evaluation } from '../evaluate.ts';
import { decimalsFor } from '../job/digits.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth, inUnits } from '../job/units.ts';
import { mirrorWords } from './mirrorWords.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { written } from './written.ts';

type Joint = Evaluation['joint'];
type Part = Joint['parts'][number];
type Wall = Joint['walls'][number];

/** A figure with its give-or-take below it; `where` names clock position and depth. Empty: not known. */
export interface Cell {
  readonly figure: string;
  readonly give: string;
  readonly where: readonly string[];
}

export interface JointRow {
  readonly id: string;
  readonly name: string;
  /** Which readings these are. */
  readonly of: string;
  readonly cells: readonly Cell[];
}

/** Heads of the columns, in the order of a row's cells. All across but `worn`. */
export const SIZE_HEADS = ['new', 'least', 'mean', 'greatest'] as const;
export const WEAR_HEADS = ['worn, per side', 'out-of-round', 'taper'] as const;

const EMPTY: Cell = { figure: '–', give: '', where: [] };

/** Sizes now beside new. */
export function sizeRows({ parts }: Joint, units: Units): JointRow[] {
  return parts.map((part) => {
    const { size, newSize, newFrom } = part;
    const earned = newFrom === 'typed' ? Number.NaN : size.greatest.give;
    const fresh: Cell = {
      figure: written(units, earned).bare(newSize),
      give: '',
      where: newFrom === 'unworn-end' ? ['its own', 'largest'] : [],
    };
    const now = [size.least, size.mean, size.greatest].map((one) => cell(one, units));
    return { ...headOf(part), cells: [fresh, ...now] };
  });
}

/** How far worn, out of round and tapered. */
export function wearRows({ parts }: Joint, units: Units): JointRow[] {
  return parts.map((part) => {
    const { size, worn } = part;
    const most =
      worn === null
        ? EMPTY
        : cell({ ...worn.perSide, theta: worn.theta, z: worn.z }, units, !worn.oneSided);
    return {
      ...headOf(part),
      cells: [most, cell(size.outOfRound, units), taperCell(size.taper, units)],
    };
  });
}

function headOf({ id, name, survey }: Part): Pick<JointRow, 'id' | 'name' | 'of'> {
  return { id, name, of: survey === '' ? 'typed without places' : survey };
}

interface Figure {
  readonly mm: number;
  readonly give: number;
  readonly theta?: number;
  readonly z?: number;
}

/** @param pair a line across the clock is named, else one position */
function cell({ mm, give, theta, z }: Figure, units: Units, pair = true): Cell {
  if (!Number.isFinite(mm)) return EMPTY;
  const { bare } = written(units, give);
  const clock =
    theta === undefined || Number.isNaN(theta) ? '' : pair ? nearPair(theta) : nearClock(theta);
  const deep = z === undefined || Number.isNaN(z) ? '' : `${formatDepth(z, units)} deep`;
  return {
    figure: bare(mm).replace('-', '−'),
    give: Number.isFinite(give) ? `± ${bare(give)}` : '',
    where: [clock, deep].filter((one) => one !== ''),
  };
}

/** One compact machine's manual sets this share of the wall as the limit (published there); the maker's figure wins. */
const WALL_LIMIT = 0.5;

/** By how much one end is larger than the other, and which: where it is positive the size grows inward from face A. */
function taperCell({ mm, give }: Figure, units: Units): Cell {
  const found = cell({ mm: Math.abs(mm), give }, units);
  const told = Number(found.figure) > 0;
  return told ? { ...found, where: [mm < 0 ? 'larger at A' : 'larger at B'] } : found;
}

/** Play, wall, mirror, and what the table cannot show; one plain sentence or two each. */
export function jointSentences(joint: Joint, units: Units): string[] {
  return [
    ...joint.fresh.map((one) => freshWords(one, units)).filter((text) => text !== ''),
    ...joint.plays.map((one) => playWords(one, units)),
    ...joint.unread.map(
      (name) =>
        `The play now of “${name}” is not known: add the old bushing from the menu and read its inside.`,
    ),
    ...joint.walls.map((one) => wallWords(one, units)),
    ...joint.mirrors.map(mirrorWords),
    ...(joint.parts.filter(({ kind }) => kind === 'bore').length > 1
      ? [
          'Readings of each bore by itself do not show whether all stand on one axis: a straight bar through all of them, ' +
            'with feelers on four sides at each, does.',
        ]
      : []),
  ];
}

function freshWords(one: Joint['fresh'][number], units: Units): string {
  const { plain } = written(units, Number.NaN);
  const parts = [
    one.outside > 0 ? `${plain(one.outside)} across outside` : '',
    one.inside > 0 ? `${plain(one.inside)} across inside` : '',
    one.wall > 0 ? `wall ${plain(one.wall)}` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `New for “${one.bore}”, as bought: ${parts.join(', ')}.`;
}

function playWords(one: Joint['plays'][number], units: Units): string {
  const { loosest, tightest, by, hole, pin } = one;
  const figure = ({ mm, give, theta }: typeof loosest) => {
    const say = written(units, give);
    const at = by === 'clock' && !Number.isNaN(theta) ? ` along ${nearPair(theta)}` : '';
    return `${say.plain(mm)} across${at}, give or take ${say.bare(give)}`;
  };
  const how =
    by === 'clock'
      ? 'Both are compared clock position by clock position, the pin lying as marked.'
      : 'It is greatest less least and least less greatest: the clock positions of the pin are not known.';
  const seized =
    tightest.mm + tightest.give < 0 ? ' Less than nothing is no play: check both sizes.' : '';
  return `Play now of “${hole}” on “${pin}”: ${figure(loosest)}, at its loosest; ${figure(tightest)}, at its tightest. ${how}${seized}`;
}

function wallWords(one: Wall, units: Units): string {
  const { least, mean, fresh, lost, name, oneSided, leastOneSide, from } = one;
  const say = written(units, least.give);
  const where = `${oneSided ? nearClock(least.theta) : nearPair(least.theta)}, ${formatDepth(least.z, units)} deep`;
  const stood = from === 'measured' ? '' : ' (its outside taken from the new bushing)';
  const other =
    oneSided || !(least.mm - leastOneSide > least.give)
      ? ''
      : ` If all of it went on one side, ${say.plain(leastOneSide)}.`;
  const share = fresh > 0 ? ` ${lostWords(lost, least.give / fresh)}` : '';
  return (
    `Wall of “${name}”${stood}: ${say.plain(mean.mm)} on the mean, ${say.plain(least.mm)} at its thinnest ` +
    `(${where}${oneSided ? '' : ', both sides alike'}), give or take ${say.bare(least.give)}.${other}${share}`
  );
}

function lostWords(lost: number, give: number): string {
  const percent = (share: number) => `${Math.max(0, Math.round(100 * share))} %`;
  const limit =
    lost - give > WALL_LIMIT
      ? 'that is past the half at which one compact machine’s manual has it replaced'
      : lost + give < WALL_LIMIT
        ? 'one compact machine’s manual has it replaced at half'
        : 'that is about the half at which one compact machine’s manual has it replaced';
  return `${percent(lost)} of the new wall is gone there, give or take ${percent(Math.max(0.01, give))}; ${limit}; the maker’s own figure wins.`;
}

/** Wall of each old bushing beside the new one's, for the small table. */
export function wallRows({ walls }: Joint, units: Units): JointRow[] {
  return walls.map((one) => ({
    id: `wall ${one.name}`,
    name: one.name,
    of: '',
    cells: [
      one.fresh > 0
        ? {
            ...EMPTY,
            figure: inUnits(one.fresh, units).toFixed(decimalsFor(one.least.give, units)),
          }
        : EMPTY,
      cell(one.mean, units),
      cell(one.least, units, !one.oneSided),
    ],
  }));
}
