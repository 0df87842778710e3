/**
 * A thick ring loaded by n lobes: how far its bore and its outside move and how hard its wall is pulled.
 *
 * Michell's solution of the plane problem (1899): the stress function (A r^n + B r^-n + C r^(n+2) + D r^(2-n)) cos n theta
 * meets any load of n lobes on the bore and on the outside. Even pressure (n = 0) is Lamé's; one lobe is `sideways.ts`.
 * Plane stress.
 */
import { solveInPlace } from '../num/linearSystem.ts';
import { type LobeMoves, oneLobe } from './sideways.ts';

export interface Ring {
  /** Radii of bore and outside, in one unit; only their ratio counts. Outside Infinity: an endless plate. */
  readonly bore: number;
  readonly outside: number;
  readonly poisson: number;
}

/**
 * A pressure p cos(n theta) on the bore or on the outside; positive presses on the metal at theta 0.
 *
 * @param n lobes, a whole number from 0. For n = 1, see `sideways.ts` for what holds against the load
 * @returns all NaN where the outside is not larger than the bore; for a load on an outside without end, and for one lobe
 *   in an endless plate, which nothing holds
 */
export function lobeMoves(
  { bore, outside, poisson }: Ring,
  n: number,
  on: 'bore' | 'outside',
): LobeMoves {
  const b = outside / bore;
  const none = { bore: Number.NaN, outside: Number.NaN, hoop: Number.NaN };
  if (!(b > 1) || !(n >= 0) || !(on === 'bore' || Number.isFinite(b))) return none;
  if (n === 0) return evenly(b, poisson, on);
  if (n === 1) return Number.isFinite(b) ? oneLobe(b, poisson, on) : none;
  const rows = [radial(n, 1, 1 / b), shear(n, 1, 1 / b), radial(n, b, 1), shear(n, b, 1)];
  const found = Float64Array.from([on === 'bore' ? -1 : 0, 0, on === 'outside' ? -1 : 0, 0]);
  if (!solveInPlace(Float64Array.from(rows.flat()), found, 4)) return none;
  const sum = (terms: Four) => terms.reduce((total, term, i) => total + term * found[i]!, 0);
  const move = (r: number, share: number) => (1 + poisson) * sum(moves(n, r, share, poisson));
  return {
    bore: move(1, 1 / b),
    outside: Number.isFinite(b) ? move(b, 1) : 0,
    hoop: sum(hoops(n, 1, 1 / b)),
  };
}

/** Lamé's ring, radii 1 and b. */
function evenly(b: number, poisson: number, on: 'bore' | 'outside'): LobeMoves {
  const hoop = (1 + b ** -2) / (1 - b ** -2);
  const far = 2 / (b - 1 / b);
  if (on === 'bore') return { bore: hoop + poisson, outside: far, hoop };
  return { bore: -b * far, outside: -b * (hoop - poisson), hoop: -b * far };
}

// `share` is r of the outside's radius. A and C, which grow outwards, count as A b^(2-n) and C b^-n: with many lobes
// they would drown the others in rounding else.
type Four = readonly [number, number, number, number];

function radial(n: number, r: number, share: number): Four {
  return [
    -n * (n - 1) * share ** (n - 2),
    -n * (n + 1) * r ** (-n - 2),
    -(n + 1) * (n - 2) * share ** n,
    -(n + 2) * (n - 1) * r ** -n,
  ];
}

function shear(n: number, r: number, share: number): Four {
  return [
    n * (n - 1) * share ** (n - 2),
    -n * (n + 1) * r ** (-n - 2),
    n * (n + 1) * share ** n,
    -n * (n - 1) * r ** -n,
  ];
}

function hoops(n: number, r: number, share: number): Four {
  return [
    n * (n - 1) * share ** (n - 2),
    n * (n + 1) * r ** (-n - 2),
    (n + 1) * (n + 2) * share ** n,
    (n - 1) * (n - 2) * r ** -n,
  ];
}

/** Outward move times E / (1 + nu). */
function moves(n: number, r: number, share: number, poisson: number): Four {
  const k = (3 - poisson) / (1 + poisson);
  return [
    -n * r * share ** (n - 2),
    n * r ** (-n - 1),
    (k - n - 1) * r * share ** n,
    (k + n - 1) * r ** (1 - n),
  ];
}
