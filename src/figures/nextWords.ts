/** What to read next, in sentences; the page and the command line say the same. */
import type { WhatNext } from '../bore/next.ts';
import type { NextReading } from '../bore/nextTypes.ts';
import { clockText, pairText } from '../job/clock.ts';
import { formatDepth, formatPerSide, inUnits } from '../job/units.ts';
import type { Units } from './steps.ts';

export interface NextSaid {
  /** `4:30–10:30 at 0.95 in deep`. */
  readonly place: string;
  /** `with the dial bore gauge; it would narrow the map from ±0.0012 to ±0.0009 in per side.` */
  readonly worth: string;
}

/** Nothing less than this share of the give-or-take is called narrower. */
const HARDLY = 0.005;

export function sayNext(next: NextReading, units: Units): NextSaid {
  const [theta = 0, z = 0] = [next.clocks[0], next.depths[0]];
  const clock = next.instrument === 'two-point' ? pairText(theta) : clockText(theta);
  return {
    place: `${clock} at ${formatDepth(z, units)} deep`,
    worth: `with ${named(next.name)}; it would ${narrowing(next, units)}.`,
  };
}

/** A set-up as one sentence: what to do all of, and what that would do. */
export function saySetup(next: NextReading, units: Units): string {
  const depths = next.depths.map((z) => formatDepth(z, units));
  const last = depths.pop();
  const what = next.instrument === 'wall' ? 'Wall thickness' : 'One set-up';
  return (
    `${what} with ${named(next.name)}, ${next.clocks.length} clock positions each at ` +
    `${depths.join(', ')} and ${last} deep, would ${narrowing(next, units)}.`
  );
}

/** Every reading told of as one sentence each, the best first; none where there is nothing to say. */
export function nextSentences({ readings, setups }: WhatNext, units: Units): string[] {
  const single = readings.map((one) => {
    const { place, worth } = sayNext(one, units);
    return `${place}, ${worth}`;
  });
  return [...single, ...setups.map((one) => saySetup(one, units))];
}

/** A gauge's name in a sentence: `the dial bore gauge`, but a name of its own stays as it is. */
function named(name: string): string {
  const own = /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
  return `the ${own}`;
}

/** Two standard deviations, the mean over the map. */
function narrowing({ before, after }: NextReading, units: Units): string {
  const share = (before - after) / before;
  const [from, to] = [give(before, units), give(after, units)];
  if (!(share > HARDLY)) return `hardly narrow the map (±${formatPerSide(2 * before, units)})`;
  if (from === to)
    return `narrow the map by ${Math.round(100 * share)} % (±${from} ${units} per side)`;
  return `narrow the map from ±${from} to ±${to} ${units} per side`;
}

function give(sd: number, units: Units): string {
  return inUnits(2 * sd, units).toFixed(units === 'in' ? 4 : 3);
}
