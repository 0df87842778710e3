import { type CircleFit, fitCircle } from '../geometry/circle.ts';
import { type ConeFit, fitCone } from '../geometry/cone.ts';
import { type CylinderFit, fitCylinder } from '../geometry/cylinder.ts';
import { type FitFailure, failureInWords } from '../geometry/ending.ts';
import { filterFailureInWords } from '../geometry/filter.ts';
import { longWaves } from '../geometry/longWaves.ts';
import {
  type MinimaxCircle,
  maximumInscribedCircle,
  minimumCircumscribedCircle,
  minimumZoneCircle,
} from '../geometry/minimaxCircle.ts';
import { type MinimaxCone, minimumZoneCone } from '../geometry/minimaxCone.ts';
import {
  type MinimaxCylinder,
  maximumInscribedCylinder,
  minimumCircumscribedCylinder,
  minimumZoneCylinder,
} from '../geometry/minimaxCylinder.ts';
import { type Points, readPoints } from './pointsCsv.ts';

/** As typed on the command line. */
export interface FitOptions {
  feature: string;
  criterion: string;
  /** of the points; the report is in the same unit */
  units: string;
  /** undulations per revolution above which a circle's points are smoothed first */
  filter?: string | undefined;
}

type Fitted = CircleFit | MinimaxCircle | CylinderFit | MinimaxCylinder | ConeFit | MinimaxCone;

/** What `fit` prints as JSON; the figures are told in geometry/fitted.ts. */
export type FitReport = {
  feature: string;
  criterion: string;
  units: string;
  /** undulations per revolution, where the points were smoothed first */
  filter?: number;
  /** how many points were read */
  points: number;
} & Exclude<Fitted, FitFailure>;

type Fit = (...columns: Coordinates) => Fitted;
type Coordinates = [x: Float64Array, y: Float64Array, z: Float64Array];

/** Every fit there is: by feature, the columns it needs; by criterion, the fit. */
const FITS: Readonly<Record<string, { columns: string; criteria: Readonly<Record<string, Fit>> }>> =
  {
    circle: {
      columns: 'x,y',
      criteria: {
        'least-squares': fitCircle,
        'minimum-zone': minimumZoneCircle,
        'maximum-inscribed': maximumInscribedCircle,
        'minimum-circumscribed': minimumCircumscribedCircle,
      },
    },
    cylinder: {
      columns: 'x,y,z',
      criteria: {
        'least-squares': fitCylinder,
        'minimum-zone': minimumZoneCylinder,
        'maximum-inscribed': maximumInscribedCylinder,
        'minimum-circumscribed': minimumCircumscribedCylinder,
      },
    },
    cone: {
      columns: 'x,y,z',
      criteria: { 'least-squares': fitCone, 'minimum-zone': minimumZoneCone },
    },
  };

const UNITS = ['mm', 'in'];

/**
 * Fits a feature to points in CSV.
 *
 * @param csv text or bytes in UTF-8: header `x,y` (or `clock,radius`) for a circle, `x,y,z` (or
 *   `clock,depth,radius`) for a cylinder or a cone, then one point a line
 * @returns the report, or one sentence (without a full stop) that says what is at fault and what
 *   would be right
 */
export function runFit(
  csv: Uint8Array | string,
  options: FitOptions,
): FitReport | { error: string } {
  const unknown = unknownFit(options);
  if (unknown !== null) return { error: unknown };
  const { feature, criterion, units } = options;
  const kind = FITS[feature]!;
  const fitPoints = kind.criteria[criterion]!;
  const points = readPoints(csv);
  if ('error' in points) return points;
  const wrong = wrongColumns(points, feature, kind.columns);
  if (wrong !== null) return { error: wrong };
  const cutoff = options.filter === undefined ? null : Number(options.filter);
  const columns = cutoff === null ? points.columns : smoothed(points.columns, cutoff);
  if ('error' in columns) return columns;
  const fitted = fitPoints(...(columns as Coordinates));
  if (fitted.status !== 'ok') return { error: failureInWords(fitted, feature) };
  const { status, ...rest } = fitted;
  const filter = cutoff === null ? {} : { filter: cutoff };
  return { feature, criterion, units, ...filter, points: columns[0]!.length, status, ...rest };
}

function smoothed([x, y]: Float64Array[], cutoff: number): Float64Array[] | { error: string } {
  const found = longWaves(x!, y!, cutoff);
  if (found.status === 'ok') return [found.x, found.y];
  if (found.status === 'not-fitted') return { error: failureInWords(found.failure, 'circle') };
  return { error: filterFailureInWords(found.failure, cutoff) };
}

/** Why these options ask for a fit that there is not, in one sentence without a full stop; null where there is. */
export function unknownFit({ feature, criterion, units, filter }: FitOptions): string | null {
  const known = Object.hasOwn(FITS, feature) && Object.hasOwn(FITS[feature]!.criteria, criterion);
  if (!known) return `no fit of feature "${feature}" by criterion "${criterion}"; ${available()}`;
  if (!UNITS.includes(units)) return `no unit "${units}"; units are ${UNITS.join(' or ')}`;
  if (filter === undefined) return null;
  if (feature !== 'circle') return `--filter smooths round profiles, and a ${feature} is none`;
  if (Number(filter) > 0 && Number.isFinite(Number(filter))) return null;
  return `--filter takes undulations per revolution, such as 15 or 50, and not "${filter}"`;
}

/** The other headers that the same columns may have. */
const ABOUT_DATUM: Readonly<Record<string, string>> = {
  'x,y': 'clock,radius',
  'x,y,z': 'clock,depth,radius',
};

function wrongColumns({ names, header }: Points, feature: string, wanted: string): string | null {
  if (names.join(',') === wanted) return null;
  return `line 1: a ${feature} needs the columns ${wanted} (or ${ABOUT_DATUM[wanted]}), and the header is ${header}`;
}

function available(): string {
  const each = Object.entries(FITS).map(
    ([feature, { criteria }]) => `${feature} by ${Object.keys(criteria).join(', ')}`,
  );
  return `there are: ${each.join('; ')}`;
}
