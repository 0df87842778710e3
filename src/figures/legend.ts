/** The key to the colours, as data. */
import { bandColours, bandReach, type Theme } from './colour.ts';
import { MAP_UNIT_NAME, type Steps } from './steps.ts';
import type { Wall } from './wall.ts';

export interface LegendFigure {
  /** From the highest metal to the lowest. */
  readonly bands: readonly string[];
  /** What is written at the edge between band i and band i + 1: `−2`, `+0.5`. */
  readonly edges: readonly string[];
  readonly unit: string;
  /** What copper and teal mean; null where the wall has none of it. */
  readonly high: Side | null;
  readonly low: Side | null;
}

interface Side {
  readonly words: string;
  /** The same in a word or two. */
  readonly short: string;
}

const WORDS: Readonly<Record<Wall['about'], { high: Side; low: Side }>> = {
  target: {
    high: { words: 'metal to take off', short: 'take off' },
    low: { words: 'low, short of metal', short: 'short' },
  },
  average: {
    high: { words: 'smaller than average', short: 'smaller' },
    low: { words: 'larger', short: 'larger' },
  },
};

export function legendFigure(steps: Steps, theme: Theme, about: Wall['about']): LegendFigure {
  const { levels, step, stepInUnits, units } = steps;
  const has = (sign: number) =>
    [0, levels.length].some((band) => sign * bandReach(band, steps) > 0);
  return {
    bands: bandColours(steps, theme),
    edges: levels.map((level) => signed(Math.round(level / step) * stepInUnits)),
    unit: `${MAP_UNIT_NAME[units]} per side`,
    high: has(-1) ? WORDS[about].high : null,
    low: has(1) ? WORDS[about].low : null,
  };
}

function signed(value: number): string {
  const text = String(Number(Math.abs(value).toPrecision(6)));
  return `${value < 0 ? '−' : '+'}${text}`;
}
