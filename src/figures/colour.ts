/**
 * The drawing's colours: copper for metal to take off, paper for right, teal for metal missing, one running into
 * the other; the contours step them. The further from right, the further from paper in lightness, so that the order is kept in black and
 * white; which side of right is told there by the lines (unbroken for high, dashed for low) and by signs.
 */
import { interpolateLab, lab, piecewise, rgb } from 'd3';
import type { Steps } from './steps.ts';

export type Theme = 'light' | 'dark' | 'sunlight';

/** Everything that a drawing needs besides the bands; CSS colours. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly ground: string;
  readonly frame: string;
  /** Where nothing is known of the wall. */
  readonly unknown: string;
  /** Lines on the pale bands and on the strong ones. */
  readonly lineOnPale: string;
  readonly lineOnStrong: string;
  readonly copperText: string;
  readonly tealText: string;
  /** Sides of the boss: rim, outside, cut face. */
  readonly boss: string;
  readonly bossCut: string;
}

const LIGHT: Palette = {
  paper: '#f7f0e3',
  ink: '#231d16',
  inkSoft: '#5f564a',
  ground: '#fffdf8',
  frame: '#8a7f70',
  unknown: '#dcd6ca',
  lineOnPale: '#1f1811',
  lineOnStrong: '#fff8ec',
  copperText: '#a2430c',
  tealText: '#0c626b',
  boss: '#d0c5b2',
  bossCut: '#b3a590',
};

const DARK: Palette = {
  paper: '#4a443a',
  ink: '#f4ecdd',
  inkSoft: '#b9ae9d',
  ground: '#23201b',
  frame: '#8a7f70',
  unknown: '#35312b',
  lineOnPale: '#fff4e2',
  lineOnStrong: '#14100b',
  copperText: '#f0955a',
  tealText: '#63c9c6',
  boss: '#8c8170',
  bossCut: '#6d6455',
};

/** Black on white, for a screen in the sun. */
const SUNLIGHT: Palette = {
  paper: '#ffffff',
  ink: '#000000',
  inkSoft: '#1c1c1c',
  ground: '#ffffff',
  frame: '#000000',
  unknown: '#e4e4e4',
  lineOnPale: '#000000',
  lineOnStrong: '#ffffff',
  copperText: '#8a3200',
  tealText: '#00474f',
  boss: '#d9d9d9',
  bossCut: '#b8b8b8',
};

const PALETTES: Readonly<Record<Theme, Palette>> = {
  light: LIGHT,
  dark: DARK,
  sunlight: SUNLIGHT,
};

/** From the first band beside paper to the farthest from right. */
const RAMPS: Readonly<Record<Theme, { high: readonly string[]; low: readonly string[] }>> = {
  light: {
    high: ['#f3d0ae', '#e3a872', '#cf7a3d', '#a54e16', '#66290a'],
    low: ['#cbe3df', '#93c6c5', '#4f9ba1', '#206c7b', '#0a4152'],
  },
  dark: {
    high: ['#7a4f30', '#ad6430', '#de8238', '#f9ab68', '#ffd9b0'],
    low: ['#3d6866', '#3e8b8c', '#4cb1b0', '#84d4cd', '#d9fbf4'],
  },
  sunlight: {
    high: ['#ffc58f', '#f2964a', '#d0681a', '#963d00', '#4f1d00'],
    low: ['#b5e3df', '#6fbfc0', '#2c929b', '#045f6e', '#002f3d'],
  },
};

export function paletteOf(theme: Theme): Palette {
  return PALETTES[theme];
}

/** Letters and lines of the flat drawings are so many times their usual size. */
const GROWN: Readonly<Record<Theme, number>> = { light: 1, dark: 1, sunlight: 1.5 };

export function grownBy(theme: Theme): number {
  return GROWN[theme];
}

/** How far from right a band lies, in whole steps: negative high, 0 paper, positive low. */
export function bandReach(band: number, steps: Steps): number {
  const { levels, step } = steps;
  const from = band > 0 ? levels[band - 1]! : Number.NEGATIVE_INFINITY;
  const to = band < levels.length ? levels[band]! : Number.POSITIVE_INFINITY;
  if (from > 0) return Math.round(from / step);
  if (to < 0) return Math.round(to / step);
  // A wall that is nowhere right has no band at zero: its first or last one is a step nearer than its only edge.
  if (Number.isFinite(to) && !Number.isFinite(from)) return Math.round(to / step) - 1;
  if (Number.isFinite(from) && !Number.isFinite(to)) return Math.round(from / step) + 1;
  return 0;
}

/** Walls of fewer steps do not use the whole ramp, so that a nearly right bore does not look dreadful. */
const FULL_AT = 4;
/** Below 1 a little wear shows more: half of the ramp is spent on the first 40 % of the way. */
const BEND = 0.75;

/** Between which distances from right the ramp is spent, mm per side. */
function reachOf(steps: Steps): { from: number; to: number } {
  const { levels, step } = steps;
  const sizes = Array.from({ length: levels.length + 1 }, (_, band) =>
    Math.abs(bandReach(band, steps)),
  );
  // A wall that is nowhere right spends the ramp on the steps that it has.
  const near = Math.max(1, Math.min(...sizes));
  const far = Math.max(near + FULL_AT - 1, ...sizes);
  return { from: (near - 1) * step, to: (far + 0.5) * step };
}

/** The colour of a deviation of `e` mm; both sides share one scale: as far from right is as strong. */
export function colourOf(steps: Steps, theme: Theme): (e: number) => string {
  const { from, to } = reachOf(steps);
  const { paper } = PALETTES[theme];
  const high = piecewise(interpolateLab, [paper, ...RAMPS[theme].high]);
  const low = piecewise(interpolateLab, [paper, ...RAMPS[theme].low]);
  return (e) => {
    const share = Math.min(1, Math.max(0, (Math.abs(e) - from) / (to - from))) ** BEND;
    return rgb(e < 0 ? high(share) : low(share)).formatHex();
  };
}

/** The colours of a wall in a row, evenly over its deviations. */
export interface Ramp {
  /** Deviations of the first and the last colour, mm per side. */
  readonly from: number;
  readonly to: number;
  readonly colours: readonly string[];
}

export function colourRamp(steps: Steps, theme: Theme, count: number): Ramp {
  return keptFor(ramps, `${nameOf(steps, theme)} ${count}`, () => findRamp(steps, theme, count));
}

/** Colours found before: while the size wanted is moved the steps seldom change. */
const ramps = new Map<string, Ramp>();
const lines = new Map<string, readonly string[]>();
const MOST_KEPT = 16;

const nameOf = ({ step, levels }: Steps, theme: Theme) => `${theme} ${step} ${levels.join(' ')}`;

function keptFor<T>(kept: Map<string, T>, name: string, find: () => T): T {
  const found = kept.get(name) ?? find();
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(name, found);
  return found;
}

function findRamp(steps: Steps, theme: Theme, count: number): Ramp {
  const { levels, step } = steps;
  const from = (levels[0] ?? 0) - step;
  const to = (levels[levels.length - 1] ?? 0) + step;
  const colour = colourOf(steps, theme);
  const colours = Array.from({ length: count }, (_, i) =>
    colour(from + ((to - from) * i) / (count - 1)),
  );
  return { from, to, colours };
}

/** Relative luminance as WCAG 2.2 defines it. */
function luminance(colour: string): number {
  const { r, g, b } = rgb(colour);
  const linear = (c: number) =>
    c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4;
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
}

/** Contrast ratio as WCAG 2.2 defines it, 1 to 21. */
export function contrast(a: string, b: string): number {
  const [dark, pale] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (pale + 0.05) / (dark + 0.05);
}

/** Whichever of the palette's two line colours stands out better against every one of the grounds. */
export function lineOver(grounds: readonly string[], theme: Theme): string {
  const { lineOnPale, lineOnStrong } = PALETTES[theme];
  const least = (line: string) => Math.min(...grounds.map((ground) => contrast(line, ground)));
  return least(lineOnPale) >= least(lineOnStrong) ? lineOnPale : lineOnStrong;
}

/** Distance between two colours in CIE Lab (1976), where about 2 can just be told side by side. */
export function difference(a: string, b: string): number {
  const one = lab(a);
  const two = lab(b);
  return Math.hypot(one.l - two.l, one.a - two.a, one.b - two.b);
}

/** Line colour of each level, seen against the wall's colour there. */
export function levelColours(steps: Steps, theme: Theme): readonly string[] {
  return keptFor(lines, nameOf(steps, theme), () => {
    const colour = colourOf(steps, theme);
    return steps.levels.map((level) => lineOver([colour(level)], theme));
  });
}
