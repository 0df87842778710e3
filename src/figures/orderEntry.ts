/** The steps of the order of work in which one bushing goes in: warmed, chilled, pressed, and measured once it sits. */
import type { BushingFit } from '../evaluate/fit.ts';
import { hotWork } from '../job/safety.ts';
import type { Feature, Job, Units } from '../job/schema.ts';
import { formatAcross } from '../job/units.ts';
import { clockWords } from './clockWords.ts';
import { forceText } from './loads.ts';
import { type Step, step } from './orderStep.ts';
import { CHILLED_IN, slipWords } from './slipWords.ts';

/** @param suffix told after each step's own name, so that those of two bushings are apart */
export function entrySteps(
  one: BushingFit,
  { job, feature, own, suffix }: { job: Job; feature: Feature; own: string; suffix: string },
): Step[] {
  const { seated } = one;
  const { units } = job;
  return [
    step(
      `stop${suffix}`,
      `${own}Set a stop or a collar so that it ends ${endWords(feature, seated.id, units)}${feature.keepouts.some(({ kind }) => kind === 'grease-hole') ? ', and mark the line of its grease hole on its end' : ''}.`,
      'Without a stop it is driven until it looks right, and cannot be drawn back.',
    ),
    ...slipSteps(one, job, own, suffix),
    pressStep(one, units, own, suffix),
    step(
      `inside${suffix}`,
      `${own}Measure its inside once it is in and all is cold, at two depths and three angles: ${insideWords(one, units)}`,
    ),
  ];
}

/** Heat and cold, as they were chosen; nothing of heat before its questions are answered. */
function slipSteps(one: BushingFit, job: Job, own: string, suffix: string): Step[] {
  const { heat, clock, seated } = one;
  const { chosen } = heat;
  if (heat.fault !== null || chosen === null) return [];
  const { open } = hotWork(job.safety);
  const slip = slipWords(one, job.units);
  const cold = chosen.row.cold !== 'as-it-is';
  if (slip.hot && !open) {
    return [
      step(
        `slip${suffix}`,
        `${own}The way that is chosen above warms the boss: the step is told once the questions about heat under Plan are answered.`,
      ),
    ];
  }
  if (!slip.hot && !cold) return [];
  const [says = ''] = slip.chosen;
  const seconds = clockWords(clock, heat, seated, job.units).says[1] ?? '';
  return [
    ...(cold
      ? [
          step(
            `cold${suffix}`,
            `${own}Chill the bushing ${CHILLED_IN[chosen.row.cold]}, dry and wrapped, until it is cold through.`,
            'Cold burns: dry gloves, covered eyes, and moving air; what boils off pushes out the air in a pit or a closed room.',
          ),
        ]
      : []),
    step(`slip${suffix}`, `${own}${says} ${seconds}`.trim(), ...slip.cautions),
  ];
}

function pressStep({ press }: BushingFit, units: Units, own: string, suffix: string): Step {
  const force = press.holds?.high.force ?? Number.NaN;
  const pressed = force > 0 ? ` Pressed without heat it may take ${forceText(force, units)}.` : '';
  return step(
    `press${suffix}`,
    `${own}Put it in square, in one go, and hold it against the stop until it grips.${pressed}`,
    'If it stops half-way, press it on or pull it out at once, while it still moves; do not heat it where it sits.',
    'Never strike hardened steel with a steel hammer: chips fly. Eyes and hands covered; keep out of the line of a press or a pulling screw.',
  );
}

function endWords(feature: Feature, id: string, units: Units): string {
  const bushing = feature.bushings.find((one) => one.id === id);
  const face = bushing?.seat.face ?? 'A';
  const text = bushing?.seat.standOut?.text.trim() ?? '';
  if (text === '') return `flush with face ${face}, or just below it, as its maker says`;
  const unit = bushing?.seat.standOut?.unit ?? units;
  const below = /^[-−]/.test(text);
  return `${text.replace(/^[-−+]/, '')} ${unit} ${below ? 'below' : 'out of'} face ${face}`;
}

/**
 * The bushing's inside once it sits, across, mm: as it really presses, mean and least, which the running clearance goes by; as
 * the thick-ring formula has it; and were all of the press fit to go into it, as the safe clearance has it. NaN not known.
 */
export function insideAfter({ seated, press, round, running, heat }: BushingFit) {
  const { hole } = round.fit ?? { hole: null };
  const { safe, pin } = running;
  return {
    mean: hole?.mean ?? Number.NaN,
    least: hole?.least.mm ?? Number.NaN,
    formula: press.cases === null ? Number.NaN : seated.inside - press.cases.mean.closesIn,
    safe:
      pin === null || Number.isNaN(safe)
        ? seated.inside - Math.max(0, heat.press)
        : safe + pin.greatest,
  };
}

function insideWords(one: BushingFit, units: Units): string {
  const { seated } = one;
  if (!(seated.inside > 0)) return 'write the figures down; its inside before that is not given.';
  const { mean, least, formula, safe } = insideAfter(one);
  const across = (mm: number) => formatAcross(mm, units);
  if (mean > safe) {
    const tightest =
      across(least) === across(mean) ? '' : ` on the mean, ${across(least)} at the tightest`;
    return `${across(mean)} is expected${tightest}, and ${across(safe)} where all of the press fit goes into it.`;
  }
  return formula > safe
    ? `${formatAcross(formula, units)} is expected, and ${formatAcross(safe, units)} where all of the press fit goes into it.`
    : `it was ${formatAcross(seated.inside, units)} before, and closes in by up to the whole press fit.`;
}
