/** How the bore's axis runs, in plain sentences; nothing where these readings show no centres. */
import type { BoreAxis } from '../bore/types.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearClock } from './nearClock.ts';
import { type Sentence, said } from './sentence.ts';
import { written } from './written.ts';

type Told = Extract<BoreAxis, { status: 'told' }>;

/** A lean or a bend that chance would bring about this often, or oftener, is not said to be there. */
const BY_CHANCE = 0.01;

/** What the centres are counted from. */
const FROM: Readonly<Record<Told['instrument'], string>> = {
  radius: 'the axis that the radii are read from',
  sweep: 'the spindle',
  wall: 'the outside of the boss',
  'two-point': 'the gauge',
};

export function axisSentences(axis: BoreAxis, length: number, units: Units): Sentence[] {
  if (axis.status === 'not-told') return [];
  return [leanSentence(axis, length, units), ...bendSentences(axis, units)];
}

function leanSentence({ lean, instrument }: Told, length: number, units: Units): Sentence {
  const give = 2 * lean.sd * length;
  const { plain } = written(units, give);
  const shift = plain(lean.slope * length);
  if (!(lean.chance < BY_CHANCE)) {
    return said(
      `Its axis keeps in line with ${FROM[instrument]}, as far as these readings can show: from end to end its centre shifts by `,
      shift,
      ` per side, within the give-or-take of ${plain(give)}.`,
    );
  }
  return said(
    `Its axis leans against ${FROM[instrument]}: from rim to bottom its centre shifts by `,
    shift,
    ` per side towards ${nearClock(lean.theta)}, give or take ${plain(give)}.`,
  );
}

function bendSentences({ straightness }: Told, units: Units): Sentence[] {
  if (straightness === null || !(straightness.chance < BY_CHANCE)) return [];
  const { distance, z, theta, sd } = straightness;
  const { plain } = written(units, 2 * sd);
  return [
    said(
      `Its axis is not straight: ${formatDepth(z, units)} deep the centre stands `,
      plain(distance),
      ` per side off the straight line that fits all best, towards ${nearClock(theta)}, give or take ${plain(2 * sd)}.`,
    ),
  ];
}
