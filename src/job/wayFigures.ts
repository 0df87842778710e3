/** The figures of the ways of mending: as the repairer typed them, else where one starts. */
import type { Decisions, Typed, Units, WayFigure, WayShare } from './schema.ts';
import { lengthMm } from './units.ts';

/**
 * Starting values, by judgement where nothing else is said: in inches, in millimetres. The machine maker's figure wins.
 */
const USUAL: Readonly<Record<WayFigure, readonly [string, string]>> = {
  oversizeStep: ['0.001', '0.02'],
  sleeveWall: ['0.125', '3'],
  // Common practice for a weld that is machined again.
  weldAllowance: ['0.125', '3'],
  squeezeUnder: ['0.002', '0.05'],
  heatLeast: ['0.002', '0.05'],
  heatMost: ['0.010', '0.25'],
  leastPress: ['0.001', '0.025'],
  acceptLow: ['0.002', '0.05'],
  squeezeLow: ['0.006', '0.15'],
  oversizeLow: ['0.020', '0.5'],
  shimLeast: ['0.010', '0.25'],
  turnDownMost: ['0.030', '0.75'],
};

/** Per cent. */
const USUAL_SHARE: Readonly<Record<WayShare, string>> = {
  acceptShare: '33',
  wallShare: '20',
  offShare: '50',
};

/** Shim stock as it is commonly sold, where the shop has not said: inch sheet, and DIN 988 in millimetres. */
const USUAL_STOCK: Readonly<Record<Units, readonly string[]>> = {
  in: ['0.001', '0.002', '0.003', '0.004', '0.005', '0.010', '0.015', '0.020', '0.025', '0.031'],
  mm: ['0.1', '0.15', '0.2', '0.3', '0.5', '1.0'],
};

export function usualWayFigure(key: WayFigure, units: Units): Typed {
  return { text: USUAL[key][units === 'in' ? 0 : 1], unit: units };
}

export function usualWayShare(key: WayShare): string {
  return USUAL_SHARE[key];
}

/** Limits that a shop may set to nothing at all; the others are sizes and steps. */
const MAY_BE_NONE: ReadonlySet<WayFigure> = new Set([
  'squeezeUnder',
  'leastPress',
  'acceptLow',
  'squeezeLow',
  'oversizeLow',
  'turnDownMost',
]);

export function mayBeNone(key: WayFigure): boolean {
  return MAY_BE_NONE.has(key);
}

/** mm; a text that is no length, or too small for what it is, counts for nothing. */
export function wayFigureMm({ wayFigures }: Decisions, key: WayFigure, units: Units): number {
  const typed = lengthMm(wayFigures?.[key]);
  const counts = mayBeNone(key) ? typed >= 0 : typed > 0;
  return counts ? typed : lengthMm(usualWayFigure(key, units));
}

/** 0 to 1. */
export function wayShare({ wayShares }: Decisions, key: WayShare): number {
  const typed = readPercent(wayShares?.[key] ?? '');
  return Number.isNaN(typed) ? readPercent(USUAL_SHARE[key]) : typed;
}

/** `33`, `33 %`, `12,5`: a share of 1; NaN: none from 0 to 100. */
export function readPercent(text: string): number {
  const found = /^\s*(\d+(?:[.,]\d*)?|[.,]\d+)\s*%?\s*$/.exec(text);
  if (found === null) return Number.NaN;
  const share = Number(found[1]!.replace(',', '.')) / 100;
  return share <= 1 ? share : Number.NaN;
}

export function usualStock(units: Units): number[] {
  return USUAL_STOCK[units].map((text) => lengthMm({ text, unit: units }));
}
