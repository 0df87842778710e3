/** The drawing in three dimensions in words, for whoever cannot see it. */
import { clockText } from '../job/clock.ts';
import type { ShownCircles } from './circles.ts';
import type { Fit } from './fit.ts';
import type { PieceFigure } from './piece.ts';

export interface SceneSaid {
  /** `Looking in at face A`. */
  readonly view: string;
  /** `wear drawn ×30`. */
  readonly factor: string;
  /** Names of what is laid over the bore. */
  readonly laid: readonly string[];
  readonly zones: boolean;
  readonly circles: ShownCircles | null;
  readonly fit: Fit | null;
  /** Where the bushing presses, in sentences; none where that is not shown. */
  readonly pressed: readonly string[];
  /** Which of bushing and pressure is left out where one would hide the other; null: neither. */
  readonly leftOut: 'bushing' | 'pressure' | null;
  /** Name of the stage that is outlined; null none. */
  readonly ghost: string | null;
  /** The place pointed at, as it is read out; null none. */
  readonly place: string | null;
}

/** What is said where one of the two gives way. */
export const LEFT_OUT = {
  bushing: {
    key: 'bushing left out of the half',
    words: 'The bushing is left out of the half, so that the wall it presses on is seen.',
  },
  pressure: {
    key: 'pressure: in half and flat',
    words: 'The bushing hides where it presses: cut in half or rolled out it is seen.',
  },
} as const;

/** Each sentence ends in a full stop. */
export function sceneWords(piece: PieceFigure, said: SceneSaid): string[] {
  const { view, factor, laid, circles, fit, ghost, place } = said;
  return [
    `The bore in three dimensions. ${view}, ${factor}.`,
    `The cut line is at ${clockText(piece.shape.cut)}.`,
    ...(laid.length > 0 ? [`Shown on it: ${laid.join('; ')}.`] : []),
    ...(said.zones && piece.zones.length > 0 ? [zonesSaid(piece)] : []),
    ...(circles === null ? [] : [circlesSaid(circles)]),
    ...(fit === null ? [] : [fitSaid(fit)]),
    ...(said.leftOut === null ? [] : [LEFT_OUT[said.leftOut].words]),
    ...said.pressed,
    ...(ghost === null ? [] : [`Dashed outline: the stage “${ghost}”.`]),
    ...(place === null ? [] : [`Pointed at: ${place}.`]),
  ];
}

function zonesSaid({ zones, steps }: PieceFigure): string {
  const unit = steps.units === 'in' ? 'Thou' : 'Hundredths of a millimetre';
  const list = zones.map(({ text, theta }) => `${text} at ${clockText(theta)}`);
  return `${unit} per side, minus is to come off: ${list.join(', ')}.`;
}

function circlesSaid({ circles, deep }: ShownCircles): string {
  const list = circles.map(({ name, size }) => `${name} ${size}`);
  return `Circles at ${deep} deep, across: ${list.join(', ')}.`;
}

function fitSaid({ pin, insideKnown, bushings }: Fit): string {
  const what = bushings.length > 1 ? 'The bushings are' : 'The bushing is';
  const wall = insideKnown ? '' : ', with a wall as is usual, since the inside is not given';
  return `${what} drawn in place${wall}; ${pin === null ? 'no pin is known' : 'the pin is in'}.`;
}
