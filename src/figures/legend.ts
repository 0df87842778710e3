/** The key to the colours, as data. */
import { bandReach, colourRamp, type Theme } from './colour.ts';
import { MAP_UNIT_NAME, type Steps } from './steps.ts';
import type { Wall } from './wall.ts';

export interface LegendFigure {
  /** Evenly from the highest metal to the lowest. */
  readonly colours: readonly string[];
  /** Where the contours lie on that way, as shares, and what is written there: `−2`, `+0.5`. */
  readonly edges: readonly { readonly share: number; readonly text: string }[];
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

/** Colours that the key runs through. */
const COLOURS = 33;

const WORDS: Readonly<Record<Wall['about'], { high: Side; low: Side }>> = {
  target: {
    high: { words: 'metal to take off', short: 'take off' },
    low: { words: 'low, short of metal', short: 'short' },
  },
  average: {
    high: { words: 'smaller than average', short: 'smaller' },
    low: { words: 'larger', short: 'larger' },
  },
  change: {
    high: { words: '− closed in or built up', short: '− closed' },
    low: { words: '+ metal gone', short: '+ gone' },
  },
};

export function legendFigure(steps: Steps, theme: Theme, about: Wall['about']): LegendFigure {
  const { levels, step, stepInUnits, units } = steps;
  const has = (sign: number) =>
    [0, levels.length].some((band) => sign * bandReach(band, steps) > 0);
  const { from, to, colours } = colourRamp(steps, theme, COLOURS);
  return {
    colours,
    edges: levels.map((level) => ({
      share: (level - from) / (to - from),
      text: signed(Math.round(level / step) * stepInUnits),
    })),
    unit: `${MAP_UNIT_NAME[units]} per side`,
    high: has(-1) ? WORDS[about].high : null,
    low: has(1) ? WORDS[about].low : null,
  };
}

function signed(value: number): string {
  const text = String(Number(Math.abs(value).toPrecision(6)));
  return `${value < 0 ? '−' : '+'}${text}`;
}
