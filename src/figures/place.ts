/** A place on the wall in one line of words; the map, the scene and the notebook all say it with this. */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { clockText } from '../job/clock.ts';
import { decimalsFor } from '../job/digits.ts';
import { formatDepth, inUnits } from '../job/units.ts';
import { fromMiddle } from './bend.ts';
import type { Units } from './steps.ts';
import { type Wall, wallAt, wallOf } from './wall.ts';

export interface Place {
  readonly theta: number;
  readonly z: number;
}

type Keepout = BoreFacts['keepouts'][number];

export const KEEPOUT_NAMES: Readonly<Record<Keepout['kind'], string>> = {
  'grease-hole': 'grease hole',
  chamfer: 'chamfer',
  groove: 'groove',
  thread: 'thread',
  face: 'face',
  other: 'keep off',
};

/**
 * One line for a place: `3:00, 0.40 in deep: take off 0.0031 in per side, give or take 0.0004`.
 *
 * The give-or-take is two standard deviations. Where no target is known the deviation is from the average
 * round, and the line says so. Nothing of the wall known there: `not known`.
 *
 * @param pressed how hard a bushing presses there, where that is shown
 */
export function sayPlace(
  { survey, facts }: { survey: SurveyEvaluation; facts: BoreFacts },
  place: Place,
  units: Units,
  pressed: string | null = null,
): string {
  const where = `${clockText(place.theta)}, ${formatDepth(place.z, units)} deep`;
  const keepout = facts.keepouts.find((one) => covers(one, place, facts));
  const wall = wallOf(survey);
  const said = wall === null ? 'not known' : sayDeviation(wall, place, units);
  const alone = keepout ? ` (${KEEPOUT_NAMES[keepout.kind]}: leave alone)` : '';
  return `${where}: ${said}${alone}${pressed === null ? '' : `; ${pressed}`}`;
}

function sayDeviation(wall: Wall, place: Place, units: Units): string {
  const { deviation, give } = wallAt(wall, place.theta, place.z);
  if (!Number.isFinite(deviation)) return 'not known';
  const decimals = decimalsFor(give, units);
  const figure = inUnits(Math.abs(deviation), units).toFixed(decimals);
  const text = `${figure} ${units}`;
  const doubt = Number.isFinite(give)
    ? `, give or take ${inUnits(give, units).toFixed(decimals)}`
    : '';
  if (Number(figure) === 0) return `${NOTHING[wall.about]}${doubt}`;
  return `${sayAmount(deviation, text, wall.about)}${doubt}`;
}

const NOTHING: Readonly<Record<Wall['about'], string>> = {
  target: 'on size',
  average: 'as the average round',
  change: 'unchanged',
};

function sayAmount(deviation: number, text: string, about: Wall['about']): string {
  if (about === 'average') {
    return `${text} per side ${deviation < 0 ? 'smaller' : 'larger'} than the average round`;
  }
  if (about === 'change') {
    return deviation < 0 ? `closed in by ${text} per side` : `${text} per side of metal gone`;
  }
  return deviation < 0 ? `take off ${text} per side` : `${text} per side short`;
}

/** True where a place lies in a keepout; its width is taken round the wall. */
function covers(keepout: Keepout, place: Place, facts: BoreFacts): boolean {
  if (!(place.z >= keepout.from && place.z <= keepout.to)) return false;
  if (Number.isNaN(keepout.theta)) return true;
  const apart = Math.abs(fromMiddle(place.theta, keepout.theta + Math.PI));
  return apart * (sizeOf(facts) / 2) <= keepout.width / 2;
}

/** A diameter to take arc lengths on, mm: the new size, else the bushing's; NaN where neither is known. */
function sizeOf(facts: BoreFacts): number {
  return Number.isFinite(facts.nominal.mm) ? facts.nominal.mm : facts.bushingOutside.mm;
}
