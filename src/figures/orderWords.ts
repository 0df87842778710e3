/**
 * The order of the work of fitting a bore's bushings, as a checklist that follows what was worked out: each step with its
 * figures, and the cautions at the step where they matter. Common practice of the trade where no figure is computed.
 */
import type { BushingFit, FitFound } from '../evaluate/fit.ts';
import type { OnePin } from '../evaluate/onePin.ts';
import { clockTheta } from '../job/clock.ts';
import type { Feature, Job, Units } from '../job/schema.ts';
import { formatAcross, formatLength } from '../job/units.ts';
import { nearClock } from './nearClock.ts';
import { entrySteps } from './orderEntry.ts';
import { type Step, step } from './orderStep.ts';
import { orderStop } from './orderStop.ts';

/** @param onePin null: the job has but one bore */
export function orderSteps(
  found: FitFound,
  onePin: OnePin | null,
  job: Job,
  feature: Feature,
): Step[] {
  const { units } = job;
  const ready = readySteps(found, feature, units);
  const named = found.bushings.map((one, at) => ({ one, ...nameOf(found, one, at) }));
  const stops = named.flatMap(({ one, own, suffix }) => {
    const stop = orderStop(one, units);
    return stop === null ? [] : [step(`not-yet${suffix}`, `${own}${stop}`)];
  });
  if (stops.length > 0) {
    return [...ready, ...named.map((each) => measureStep(each, units)), ...stops];
  }
  return [
    ...ready,
    ...named.flatMap((each) => [
      measureStep(each, units),
      ...entrySteps(each.one, { ...each, job, feature }),
    ]),
    ...endSteps(found, onePin, feature, units),
  ];
}

/** Before any bushing goes in. */
function readySteps(found: FitFound, feature: Feature, units: Units): Step[] {
  const holes = feature.keepouts.filter(({ kind }) => kind === 'grease-hole');
  const washers = found.side.layers.filter(({ kind }) => kind === 'washers');
  const dressed = found.side.layers.filter(({ kind }) => kind === 'dressed');
  return [
    step(
      'clean',
      'Wipe bore and bushing dry, take off burrs with a fine stone, and let both come to one temperature before the last measurement.',
      'Grit between them tears the seat; a part that is warm from grinding reads large.',
    ),
    ...(holes.length === 0
      ? []
      : [
          step(
            'grease-before',
            `Check that grease comes through the hole ${holes.map(({ clock, face }) => atClock(clock, face)).join(' and ')}, and mark its clock position on the face.`,
            'It is checked again once the bushing is in: a passage that was covered or filled with chips cannot be seen later.',
          ),
        ]),
    ...dressed.map(({ face, thickness }) =>
      step(
        `dress-${face}`,
        `Dress face ${face} square, down to its lowest place: ${formatLength(-thickness, units, units === 'in' ? 3 : 2)} off where it stands highest.`,
        'Eyes and lungs covered, part clamped, wheel guarded.',
      ),
    ),
    ...washers.map(({ face, thickness }) =>
      step(
        `washers-${face}`,
        `Fix the rim washers on face ${face}, ${formatLength(thickness, units, units === 'in' ? 3 : 2)} together, before the bushing goes in.`,
        'They become the stop that the bushing ends against: fixed afterwards they would hang loose, or leave it at the wrong depth.',
      ),
    ),
  ];
}

function atClock(clock: string | undefined, face: 'A' | 'B'): string {
  const theta = clockTheta(clock, face);
  return Number.isNaN(theta) ? 'in the bore' : `at ${nearClock(theta)}`;
}

/** Told before and after the steps of one of several bushings. */
function nameOf({ bushings }: FitFound, { seated }: BushingFit, at: number) {
  return {
    own: bushings.length > 1 ? `${seated.name}: ` : '',
    suffix: at === 0 ? '' : `-${at + 1}`,
  };
}

interface Named {
  readonly one: BushingFit;
  readonly own: string;
  readonly suffix: string;
}

function measureStep({ one: { seated }, own, suffix }: Named, units: Units): Step {
  const finished =
    seated.wall.kind === 'measured'
      ? 'The bore is the one that was measured.'
      : 'Measure the finished bore before it, and compare it with the plan.';
  return step(
    `bushing${suffix}`,
    `${own}Measure the outside of the bushing at three places: ${formatAcross(seated.outside, units)} is what the fit goes by. ${finished}`,
    seated.wall.way === 'shim'
      ? 'Smooth and round its leading edge all round: a sharp edge shears the shim as it passes.'
      : 'Break its leading edge to a smooth chamfer, so that it cannot shave the bore.',
  );
}

/** Once every bushing is in. */
function endSteps(
  { side }: FitFound,
  onePin: OnePin | null,
  feature: Feature,
  units: Units,
): Step[] {
  const greased = feature.keepouts.some(({ kind }) => kind === 'grease-hole');
  const { shims, after } = side;
  const thin = (mm: number) => formatLength(mm, units, units === 'in' ? 3 : 2);
  const layers = (['A', 'B'] as const).filter((face) => (shims?.[face].length ?? 0) > 0);
  return [
    ...(greased
      ? [
          step(
            'grease-after',
            'Check once more that grease comes through, into the bushing’s own groove or hole.',
          ),
        ]
      : []),
    pinStep(onePin, units),
    ...(Number.isNaN(after.least)
      ? []
      : [
          step(
            'side',
            shims === null
              ? `Push the boss to one side and measure the side gap: ${thin(after.least)} is expected at the tightest place.`
              : `Put in the face shims, ${layers.map((face) => `${shims[face].map(thin).join(' + ')} beside face ${face}`).join(' and ')}, and measure the side gap: ${thin(shims.left.least)} is expected at the tightest place.`,
            'Keep fingers out of holes that are being lined up: use a bar, and hold the part on stands and not on a jack.',
          ),
        ]),
    step(
      'close',
      'Write down bore, bushing, clearance and side gap as they ended, and look again after 10 to 50 hours of work: bushing still, keeper tight, grease coming out all round.',
    ),
  ];
}

function pinStep(onePin: OnePin | null, units: Units): Step {
  const caution =
    'If it binds, find the tight place and open the bushing evenly there; do not turn the pin down.';
  if (onePin === null) {
    return step('pin', 'Push the pin through by hand, greased, and turn it: no hammer.', caution);
  }
  const { largest, pin } = onePin;
  const room = largest - pin;
  const expected = Number.isNaN(room)
    ? ''
    : room > 0
      ? ` ${formatAcross(room, units, units === 'in' ? 4 : 2)} of room is expected.`
      : ' As they stand it will not pass: see “Several bores on one pin” first.';
  return step(
    'pin',
    `Push the pin by hand through all bores together, greased, and turn it: no hammer.${expected}`,
    caution,
    'Bores that are each good alone can bind the pin together.',
  );
}
