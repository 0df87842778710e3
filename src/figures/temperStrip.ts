/** The colours of clean steel over its heat, as a strip with what tables differ by, and marks for this fit. */
import type { Heat } from '../evaluate/fit/heat.ts';
import { degreesOf } from '../job/heatFacts.ts';
import type { Units } from '../job/schema.ts';
import { inDegrees } from '../job/temperature.ts';
import { degreesName } from './degrees.ts';
import { colourSaid, HAND_WARM, TEMPER_COLOURS } from './temperColours.ts';

export interface TemperStripFigure {
  readonly unit: string;
  /** Ends of the axis and figures under it, in the unit. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  readonly colours: readonly {
    readonly name: string;
    readonly shade: string;
    readonly least: number;
    readonly most: number;
  }[];
  /** Boss as heated, and what it may have; the style tells them apart. */
  readonly marks: readonly {
    readonly name: string;
    readonly at: number;
    readonly kind: 'is' | 'limit';
  }[];
  readonly words: string;
}

const [COLD, HOT] = [60, 360];

/** @returns null where no heat is used */
export function temperStrip(
  { chosen, limits, hardened }: Heat,
  units: Units,
): TemperStripFigure | null {
  if (chosen === null || !(chosen.off > HAND_WARM)) return null;
  const of = (celsius: number) => inDegrees(celsius, degreesOf(units));
  const held = (celsius: number) => of(Math.min(Math.max(celsius, COLD), HOT));
  return {
    unit: degreesName(units),
    from: of(COLD),
    to: of(HOT),
    ticks: units === 'in' ? [200, 300, 400, 500, 600] : [100, 150, 200, 250, 300, 350],
    colours: TEMPER_COLOURS.map(({ name, shade, least, most }) => ({
      name,
      shade,
      least: of(least),
      most: of(most),
    })),
    marks: [
      { name: 'boss as heated', at: held(chosen.off), kind: 'is' },
      { name: 'most for this boss', at: held(limits.boss), kind: 'limit' },
      ...(hardened
        ? [{ name: 'most for the bushing', at: held(limits.bushing), kind: 'limit' as const }]
        : []),
    ],
    words: `Colours of clean steel by temperature; the boss as heated shows ${colourSaid(chosen.off)}.`,
  };
}
