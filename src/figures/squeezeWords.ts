/** A squeeze with heat in words: between which sizes it can end, and, once heat is allowed, how it is set up. */
import type { BuildUp } from '../evaluate/buildUp.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearPair } from './nearClock.ts';
import { capital } from './sentence.ts';
import { type Written, written } from './written.ts';

export type Squeeze = NonNullable<BuildUp['squeeze']>;

export interface SqueezeWords {
  /** What is wanted, and the two limits: no step. */
  readonly ends: readonly string[];
  /** Jaws, grip, heat and how far to move: a step with heat. */
  readonly steps: readonly string[];
  readonly depths: readonly DepthWords[];
  readonly cold: readonly ColdWords[];
}

/** One measured depth; sizes across without unit, largest and least. */
export interface DepthWords {
  readonly depth: string;
  readonly before: string;
  /** `–` where nothing is to close. */
  readonly close: string;
  readonly bent: string;
  readonly upset: string;
}

/** One pair of clock positions at one depth: what it should read cold, across. */
export interface ColdWords {
  readonly depth: string;
  readonly pair: string;
  readonly range: string;
}

/** What the sizes measured cold belong to. */
export const COLD =
  'Measured cold, once the jaws have moved all of that way, and as much as one heat may have drawn it in, it should read between these; each heat more draws it in more';

/** Flame shrinking of plain steel, °C: dull to low red (field practice). */
const HEATS = { least: 540, most: 700 } as const;

/** What is to be said of a heat that is not the usual one; '' where it is. */
export function heatWarning({
  value: celsius,
  refused,
}: BuildUp['facts']['squeeze']['heat']): string {
  if (refused !== null) {
    return `“${refused}” is no heat that steel is squeezed at; ${heatText(celsius)} counts until then.`;
  }
  const usual = `Plain steel is shrunk at ${heatText(HEATS.least)} to ${heatText(HEATS.most)}, dull to low red`;
  if (celsius > HEATS.most) {
    return `${heatText(celsius)} is too hot. ${usual}: hotter, it scales, its grain coarsens, and the bore can come out far too small.`;
  }
  if (celsius < HEATS.least) {
    return `${heatText(celsius)} is little heat. ${usual}: cooler, it is nearly as strong as cold, and springs back or cracks rather than stays.`;
  }
  return '';
}

export const NO_SQUEEZE =
  'No place is so far over the target that a squeeze is worth a heat: every one is within 0.0005 in (0.013 mm) across of where it should end.';

export function squeezeWords(
  squeeze: Squeeze,
  { facts: { squeeze: given } }: BuildUp,
  survey: SurveyEvaluation,
  units: Units,
): SqueezeWords {
  const text = written(units, giveOf(survey));
  return {
    ends: [
      ...endsWords(squeeze, given.under.mm, text, units),
      ...[heatWarning(given.heat)].filter((warning) => warning !== ''),
    ],
    steps: stepWords(squeeze, given, text, units),
    depths: depthWords(squeeze, survey, text, units),
    cold: squeeze.cold.map(({ theta, z, least, most }) => ({
      depth: formatDepth(z, units),
      pair: nearPair(theta),
      range: `${text.bare(least)} to ${text.bare(most)}`,
    })),
  };
}

/** The widest give-or-take of a diameter, across, mm; 0: none is known. */
export function giveOf({ sections }: SurveyEvaluation): number {
  return Math.max(0, ...sections.map(({ give }) => give).filter((give) => give > 0));
}

function endsWords(
  { plan, goal, upset }: Squeeze,
  under: number,
  text: Written,
  units: Units,
): string[] {
  const { most, jaws, rows } = plan;
  const way = nearPair(jaws);
  const between = nearPair(jaws + Math.PI / 2);
  const worst = rows.reduce((a, b) => (b.short > a.short ? b : a));
  const learned =
    upset.count > 0
      ? ` (from ${upset.count === 1 ? 'one squeeze' : `${upset.count} squeezes`} of this shop)`
      : '';
  const says = [
    `Judge by the largest place: it is ${text.across(plan.largest)} now and should end at ${text.plain(goal)}, which is ${text.plain(under)} across under the target; the rest is ground back.`,
    `By bending alone the mean is kept, and ${between} opens by as much as ${way} closes: ${at(most.z, units)} the bore ends between ${text.bare(most.bent.least)} and ${text.across(most.bent.largest)}, mean ${text.bare(most.bent.mean)}. It can end no larger.`,
    `Hot metal held in jaws also draws in, the mean by ${text.bare(upset.least)} to ${text.plain(upset.most)} across with a heat${learned}: the same place may then end between ${text.bare(most.upset.least)} and ${text.across(most.upset.largest)}, mean ${text.bare(most.upset.mean)}. It can come out too small, and is ground back then.`,
  ];
  if (worst.short > 0) {
    says.push(
      `Bending cannot bring all of it there: ${at(worst.z, units)} the mean itself is too large, and ${text.across(worst.short)} stays over. Only drawing in brings that, heat by heat; else shim it, or fit an oversize bushing.`,
    );
  }
  return says;
}

function at(z: number, units: Units): string {
  return `at ${formatDepth(z, units)} deep`;
}

function stepWords(
  { plan, springs, move, heats }: Squeeze,
  given: BuildUp['facts']['squeeze'],
  text: Written,
  units: Units,
): string[] {
  const { grip, most, jaws } = plan;
  const [way, between] = [nearPair(jaws), nearPair(jaws + Math.PI / 2)];
  const turned = plan.rows.some(({ short }) => short > 0);
  const says = [
    `Set the jaws across ${way}, and grip the boss from ${formatDepth(grip.from, units)} to ${formatDepth(grip.to, units)} deep only: that is where it is to close. Heat the two sides between, at ${between}, evenly, to about ${heatText(given.heat.value)}.`,
    `${capital(at(most.z, units))} it is to close by ${text.across(most.close)} along ${way}, measured cold; less elsewhere, as the table says.`,
  ];
  if (springs === null || move === null) {
    says.push(
      'How far it springs back cannot be estimated without the outside of the boss: give it under Measure. Until then squeeze in small steps, and measure each cold.',
    );
  } else {
    const from =
      springs.count > 0
        ? ` from ${springs.count === 1 ? 'one squeeze' : `${springs.count} squeezes`} of this shop`
        : ` from the ring and the steel’s strength when hot, ${given.yield.value} MPa cold (EN 1993-1-2, table 3.1)`;
    says.push(
      `Besides, when the jaws let go it springs back ${text.bare(springs.least)} to ${text.across(springs.most)}, an estimate${from}: so move the jaws in by ${text.bare(move.least)} to ${text.across(move.most)} while it is hot, the smaller figure first, and hold until no red shows in the shade.`,
    );
  }
  says.push(
    `One heat usually brings a part of it: count on ${heats.least === heats.most ? heats.least : `${heats.least} to ${heats.most}`} ${heats.most === 1 ? 'heat' : 'heats'}. The same line gives nothing more a second time: heat beside it.`,
  );
  if (turned) {
    says.push(
      'Once it is round and still too large, turn the jaws a quarter between heats, so that it draws in and stays round; measure cold after each.',
    );
  }
  return says;
}

function heatText(celsius: number): string {
  return `${Math.round(celsius / 10) * 10} °C (${Math.round((celsius * 1.8 + 32) / 10) * 10} °F)`;
}

function depthWords(
  { plan }: Squeeze,
  survey: SurveyEvaluation,
  text: Written,
  units: Units,
): DepthWords[] {
  const first = plan.rows[0]!.z;
  const last = plan.rows[plan.rows.length - 1]!.z;
  return survey.sections
    .filter(({ z }) => z >= first && z <= last)
    .map(({ z }) => {
      const row = plan.rows.reduce((a, b) => (Math.abs(b.z - z) < Math.abs(a.z - z) ? b : a));
      const ends = ({ largest, least }: typeof row.bent) =>
        `${text.bare(largest)} / ${text.bare(least)}`;
      return {
        depth: formatDepth(z, units),
        before: ends(row.before),
        close: row.close > 0 ? text.bare(row.close) : '–',
        bent: ends(row.bent),
        upset: ends(row.upset),
      };
    });
}
