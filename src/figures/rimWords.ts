/** A worn rim face in words: how far below flush, how it leans, and which washers bring it back. */
import type { BuildUp } from '../evaluate/buildUp.ts';
import type { Units } from '../job/schema.ts';
import { formatLength } from '../job/units.ts';
import { nearClock } from './nearClock.ts';

type Rim = BuildUp['rims'][number]['rim'];

export function rimWords({ face, rim }: BuildUp['rims'][number], units: Units): string[] {
  const length = (mm: number) => formatLength(mm, units, units === 'in' ? 3 : 2);
  const { least, greatest, lean } = rim;
  const from =
    greatest.below > least.below
      ? `${length(least.below)} below flush at ${nearClock(least.theta)}, ${length(greatest.below)} at ${nearClock(greatest.theta)}`
      : `${length(least.below)} below flush`;
  const leaning =
    lean === null || !(lean.across > 0.005)
      ? ''
      : ` Taken as a plane it leans by ${length(lean.across)} over its width, lowest towards ${nearClock(lean.theta)}.`;
  return [
    `Face ${face}: ${from}.${leaning}`,
    `As it is, ${washers(rim.asItIs, length)}${rim.asItIs.gap > 0 ? `; under them ${length(rim.asItIs.gap)} stays open where the face is lowest` : ''}.`,
    ...(rim.asItIs.gap > 0
      ? [`Dressed square to its lowest place, ${washers(rim.dressed, length)}.`]
      : []),
  ];
}

function washers({ stack, standsOut }: Rim['asItIs'], length: (mm: number) => string): string {
  const out =
    Math.abs(standsOut) < 0.0005
      ? 'the bushing then ends flush'
      : standsOut > 0
        ? `the bushing then stands out ${length(standsOut)}`
        : `the bushing then ends ${length(-standsOut)} below`;
  return stack === null
    ? `no washer at hand is thin enough: ${out}`
    : `washers of ${stack.layers.map(length).join(' and ')} bring it back: ${out}`;
}
