/** The key to the colours, as data. */
import { bandColours, type Theme } from './colour.ts';
import { MAP_UNIT_NAME, type Steps } from './steps.ts';
import type { Wall } from './wall.ts';

export interface LegendFigure {
  /** From the highest metal to the lowest. */
  readonly bands: readonly string[];
  /** What is written at the edge between band i and band i + 1: `−2`, `+0.5`. */
  readonly edges: readonly string[];
  readonly unit: string;
  readonly high: string;
  readonly low: string;
  /** The same in a word or two. */
  readonly shortHigh: string;
  readonly shortLow: string;
}

type Words = Pick<LegendFigure, 'high' | 'low' | 'shortHigh' | 'shortLow'>;

const WORDS: Readonly<Record<Wall['about'], Words>> = {
  target: {
    high: 'metal to take off',
    low: 'low, short of metal',
    shortHigh: 'take off',
    shortLow: 'short',
  },
  average: {
    high: 'smaller than average',
    low: 'larger',
    shortHigh: 'smaller',
    shortLow: 'larger',
  },
};

export function legendFigure(steps: Steps, theme: Theme, about: Wall['about']): LegendFigure {
  const { levels, step, stepInUnits, units } = steps;
  return {
    bands: bandColours(steps, theme),
    edges: levels.map((level) => signed(Math.round(level / step) * stepInUnits)),
    unit: `${MAP_UNIT_NAME[units]} per side`,
    ...WORDS[about],
  };
}

function signed(value: number): string {
  const text = String(Number(Math.abs(value).toPrecision(6)));
  return `${value < 0 ? '−' : '+'}${text}`;
}
