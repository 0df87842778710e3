/**
 * A thick ring loaded by n lobes: how far its bore moves and how hard its wall is pulled.
 *
 * Michell's solution of the plane problem (1899): the stress function (A r^n + B r^-n + C r^(n+2) + D r^(2-n)) cos n theta
 * meets any load of n lobes on the bore and on the outside. Plane stress.
 */
import { solveInPlace } from '../num/linearSystem.ts';

export interface Ring {
  /** Radii of bore and outside, in one unit; only their ratio counts. */
  readonly bore: number;
  readonly outside: number;
  readonly poisson: number;
}

export interface LobeMoves {
  /** Outward move of the bore at the crest of the load: E u / (p a), with a the bore's radius. */
  readonly bore: number;
  /** Outward move of the outside at the crest: E u / (p a). */
  readonly outside: number;
  /** Hoop stress at the bore at the crest: s / p, positive pulls. */
  readonly hoop: number;
}

/**
 * A pressure p cos(n theta) on the bore or on the outside; positive presses on the metal at theta 0.
 *
 * @param n lobes, from 2
 * @returns all NaN where the outside is not larger than the bore
 */
export function lobeMoves(
  { bore, outside, poisson }: Ring,
  n: number,
  on: 'bore' | 'outside',
): LobeMoves {
  const b = outside / bore;
  const none = { bore: Number.NaN, outside: Number.NaN, hoop: Number.NaN };
  if (!(b > 1) || !Number.isFinite(b)) return none;
  // Terms that grow outwards count from the outside, or many lobes would drown the others in rounding.
  const even = ([A, B, C, D]: Four) => [A * b ** -n, B, C * b ** -n, D];
  const rows = [radial(n, 1), shear(n, 1), radial(n, b), shear(n, b)].map(even);
  const found = Float64Array.from([on === 'bore' ? -1 : 0, 0, on === 'outside' ? -1 : 0, 0]);
  if (!solveInPlace(Float64Array.from(rows.flat()), found, 4)) return none;
  const sum = (terms: Four) => even(terms).reduce((total, term, i) => total + term * found[i]!, 0);
  const move = (r: number) => (1 + poisson) * sum(moves(n, r, poisson));
  return { bore: move(1), outside: move(b), hoop: sum(hoops(n, 1)) };
}

type Four = readonly [number, number, number, number];

function radial(n: number, r: number): Four {
  return [
    -n * (n - 1) * r ** (n - 2),
    -n * (n + 1) * r ** (-n - 2),
    -(n + 1) * (n - 2) * r ** n,
    -(n + 2) * (n - 1) * r ** -n,
  ];
}

function shear(n: number, r: number): Four {
  return [
    n * (n - 1) * r ** (n - 2),
    -n * (n + 1) * r ** (-n - 2),
    n * (n + 1) * r ** n,
    -n * (n - 1) * r ** -n,
  ];
}

function hoops(n: number, r: number): Four {
  return [
    n * (n - 1) * r ** (n - 2),
    n * (n + 1) * r ** (-n - 2),
    (n + 1) * (n + 2) * r ** n,
    (n - 1) * (n - 2) * r ** -n,
  ];
}

/** Outward move times E / (1 + nu). */
function moves(n: number, r: number, poisson: number): Four {
  const k = (3 - poisson) / (1 + poisson);
  return [
    -n * r ** (n - 1),
    n * r ** (-n - 1),
    (k - n - 1) * r ** (n + 1),
    (k + n - 1) * r ** (1 - n),
  ];
}
