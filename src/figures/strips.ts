/**
 * The wall's profile through one place, beside the map: round the clock at its depth, and down the depth at its clock
 * position. Both strips have one scale that stays while the place moves, so that profiles can be compared.
 */
import { ticks } from 'd3';
import { linearAt, turned } from './sample.ts';
import { MAP_UNIT, middleOfField, type Units } from './steps.ts';
import { scaleOf, type Wall } from './wall.ts';

export interface StripPoint {
  /** mm along the strip: from the map's left edge, or from the rim. */
  readonly along: number;
  /** Per side, mm; negative stands proud. NaN is not known. */
  readonly deviation: number;
  /** Give-or-take, mm; NaN is not known. */
  readonly give: number;
}

export interface StripScale {
  /** Ends of the scale, per side, mm; `from` is the proud side. Zero lies within. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

const COLUMNS = 144;
const ROWS = 48;
/** Share of the range that the usual give-or-take may add at either end. */
const MOST_GIVE = 0.25;
/** A wall that is right all over still gets a scale: units of the map. */
const LEAST_RANGE = 1;

/** @returns null where nothing of the wall is known */
export function stripScale(wall: Wall, units: Units): StripScale | null {
  const { least, greatest } = scaleOf(wall);
  if (!(least <= greatest)) return null;
  const unit = MAP_UNIT[units];
  const [low, high] = [Math.min(0, least), Math.max(0, greatest)];
  const range = Math.max(high - low, LEAST_RANGE * unit);
  const room = Math.min(middleOfField(wall.give) || 0, MOST_GIVE * range) + 0.06 * range;
  const [from, to] = [low - room, high + room];
  return {
    from,
    to,
    ticks: ticks(from / unit, to / unit, 4).map((value) => ({
      value: value * unit,
      text: signed(value),
    })),
  };
}

function signed(value: number): string {
  if (Math.abs(value) < 1e-9) return '0';
  return `${value < 0 ? '−' : '+'}${Number(Math.abs(value).toPrecision(6))}`;
}

/** All round at one depth, from the cut clockwise back to it. */
export function stripRound(wall: Wall, cut: number, z: number): StripPoint[] {
  return Array.from({ length: COLUMNS + 1 }, (_, i) => {
    const turn = (2 * Math.PI * i) / COLUMNS;
    return pointOf(wall, turn * wall.radius, turned(cut + turn), z);
  });
}

/** From the rim to the bottom at one clock position. */
export function stripDown(wall: Wall, theta: number): StripPoint[] {
  return Array.from({ length: ROWS + 1 }, (_, i) => {
    const z = (wall.length * i) / ROWS;
    return pointOf(wall, z, theta, z);
  });
}

function pointOf(wall: Wall, along: number, theta: number, z: number): StripPoint {
  return {
    along,
    deviation: linearAt(wall.grid, wall.deviation, theta, z),
    give: linearAt(wall.grid, wall.give, theta, z),
  };
}

/** Where places of a strip are in its box, px: along it, and across it by their deviation, held to the box. */
export interface StripRun {
  run(mm: number): number;
  rise(mm: number): number;
}

/** @param length mm of wall that the strip runs over; `upright`: it runs down */
export function stripRun(
  scale: StripScale,
  length: number,
  box: { readonly width: number; readonly height: number },
  upright: boolean,
): StripRun {
  const [far, high] = upright ? [box.height, box.width] : [box.width, box.height];
  const share = (mm: number) => (mm - scale.from) / (scale.to - scale.from);
  const hundredths = (px: number) => Math.round(100 * px) / 100;
  return {
    run: (mm) => hundredths((mm / length) * far),
    rise: (mm) => hundredths(Math.min(1, Math.max(0, share(mm))) * high),
  };
}
