/** How the shape between the readings is filled in, in plain words: what was learned, what was stated, what is usual. */
import type { Smoothness } from '../bore/types.ts';
import type { Typed } from '../job/schema.ts';
import { inUnits } from '../job/units.ts';
import type { Units } from './steps.ts';

export interface Filled {
  /** Depth over which the shape keeps its likeness, and the dents to be expected per side, one standard deviation. */
  readonly smooth: Typed;
  readonly dents: Typed;
  /** `learned from the readings`, `as you said`, `usual: too few readings to learn from`. */
  readonly smoothFrom: string;
  readonly dentsFrom: string;
  /** `the gauges are taken to repeat to 1.1 times their figure`. */
  readonly gauges: string;
}

/** Factors on a gauge's figure that are not told apart from 1. */
const AS_STATED = 0.05;

export function filledWords(smoothness: Smoothness, units: Units): Filled {
  const { length, local, noise, fixed, given } = smoothness;
  const from = (stated: boolean) =>
    stated
      ? 'as you said'
      : fixed
        ? 'usual: too few readings to learn from'
        : 'learned from the readings';
  return {
    // A length to two digits and dents to one: they are found no better.
    smooth: { text: String(Number(inUnits(length, units).toPrecision(2))), unit: units },
    dents: { text: dentsText(inUnits(local, units), units), unit: units },
    smoothFrom: from(given?.length !== undefined),
    dentsFrom: from(given?.local !== undefined),
    gauges: gaugeWords(noise, fixed),
  };
}

function dentsText(size: number, units: Units): string {
  return Number(size.toPrecision(1)).toFixed(units === 'in' ? 4 : 3);
}

function gaugeWords(noise: number, fixed: boolean): string {
  if (fixed || Math.abs(noise - 1) < AS_STATED) {
    return 'the gauges are taken to repeat as well as their figure says';
  }
  return `the gauges are taken to repeat to ${noise.toFixed(1)} times their figure`;
}

/** As one sentence. */
export function sayFilled(smoothness: Smoothness, units: Units): string {
  const { smooth, dents, smoothFrom, dentsFrom, gauges } = filledWords(smoothness, units);
  const dented =
    smoothFrom === dentsFrom
      ? `and local dents of about ${dents.text} ${units} per side expected (${dentsFrom})`
      : `(${smoothFrom}) and local dents of about ${dents.text} ${units} per side expected (${dentsFrom})`;
  return (
    `Between the readings the shape is filled in as smooth to about ${smooth.text} ${units} along the depth ` +
    `${dented}; ${gauges}.`
  );
}
