import { fitCircle } from '../geometry/circle.ts';
import { fitCylinder } from '../geometry/cylinder.ts';
import { type FitFailure, failureInWords } from '../geometry/ending.ts';
import type { Deviation } from '../geometry/search.ts';
import { type Points, readPoints } from './pointsCsv.ts';

/** As typed on the command line. */
export interface FitOptions {
  feature: string;
  criterion: string;
  /** of the points; the report is in the same unit */
  units: string;
}

/** What `fit` prints as JSON. */
export type FitReport = {
  feature: string;
  criterion: string;
  units: string;
  /** how many points were read */
  points: number;
  status: 'ok';
} & Place & {
    diameter: number;
    /** per side, positive away from the axis */
    deviation: Deviation;
    /** rows, from 0, of the least and the greatest deviation */
    contacts: number[];
    iterations: number;
    conditioning: number;
  };

type Place =
  | { center: [number, number] }
  | { axis: { point: [number, number, number]; direction: [number, number, number] } };

type Fitted = FitFailure | (Place & Omit<FitReport, 'feature' | 'criterion' | 'units' | 'points'>);

/** Every fit there is: by feature, the columns it needs; by criterion, the fit. */
const FITS: Readonly<
  Record<
    string,
    { header: string; criteria: Readonly<Record<string, (columns: Float64Array[]) => Fitted>> }
  >
> = {
  circle: {
    header: 'x,y',
    criteria: { 'least-squares': ([x, y]) => fitCircle(x!, y!) },
  },
  cylinder: {
    header: 'x,y,z',
    criteria: { 'least-squares': ([x, y, z]) => fitCylinder(x!, y!, z!) },
  },
};

const UNITS = ['mm', 'in'];

/**
 * Fits a feature to points in CSV.
 *
 * @param csvText header `x,y` for a circle, `x,y,z` for a cylinder, then one point a line
 * @returns the report, or one sentence (without a full stop) that says what is at fault and what
 *   would be right
 */
export function runFit(csvText: string, options: FitOptions): FitReport | { error: string } {
  const unknown = unknownFit(options);
  if (unknown !== null) return { error: unknown };
  const { feature, criterion, units } = options;
  const kind = FITS[feature]!;
  const fitPoints = kind.criteria[criterion]!;
  const points = readPoints(csvText);
  if ('error' in points) return points;
  const wrong = wrongColumns(points, feature, kind.header);
  if (wrong !== null) return { error: wrong };
  const fitted = fitPoints(points.columns);
  if (fitted.status !== 'ok') return { error: failureInWords(fitted, feature) };
  const { status, ...rest } = fitted;
  const count = points.columns[0]!.length;
  return { feature, criterion, units, points: count, status, ...rest };
}

/** Why these options ask for a fit that there is not, in one sentence without a full stop; null where there is. */
export function unknownFit({ feature, criterion, units }: FitOptions): string | null {
  const known = Object.hasOwn(FITS, feature) && Object.hasOwn(FITS[feature]!.criteria, criterion);
  if (!known) return `no fit of feature "${feature}" by criterion "${criterion}"; ${available()}`;
  return UNITS.includes(units) ? null : `no unit "${units}"; units are ${UNITS.join(' or ')}`;
}

function wrongColumns({ names }: Points, feature: string, header: string): string | null {
  const given = names.join(',');
  if (given === header) return null;
  return `line 1: a ${feature} needs the columns ${header}, and the header is ${given}`;
}

function available(): string {
  const each = Object.entries(FITS).map(
    ([feature, { criteria }]) => `${feature} by ${Object.keys(criteria).join(', ')}`,
  );
  return `there are: ${each.join('; ')}`;
}
