/**
 * Give-or-take of the cylinders through the whole measured depth. Each rests on a few places of the wall, and on other places
 * as the wall turns out otherwise: so it is found again on many walls that the readings leave possible, to first order in the
 * heights, and told as twice the root of the mean square of what that comes to beside the mean surface's.
 */
import { minimaxStep, type Rows } from '../num/minimaxStep.ts';
import { seededRandom } from '../num/random.ts';
import { TERMS } from './instruments.ts';
import { LEVELS } from './plugs.ts';
import { meanCoefficients, type Posterior } from './posterior.ts';
import { drawOut, harmonics } from './surface.ts';
import { valueFree } from './valueFree.ts';
import { wallDraws } from './wallDraws.ts';

/** mm, two standard deviations; NaN where it cannot be told. */
export interface Gives {
  /** Of the diameters, across. */
  readonly average: number;
  readonly zone: number;
  readonly entering: number;
  readonly around: number;
  /** Of how far apart the zone's two cylinders are, per side. */
  readonly range: number;
}

export interface PlugGives {
  /** All that is unknown. */
  readonly all: Gives;
  /** Were the lobes to which no instrument responds as they are taken to be; null: every lobe is seen. */
  readonly seen: Gives | null;
}

/** So many walls tell a give-or-take to about 7 %. */
const WALLS = 100;
/** Angles at which a wall is looked at: as many as the surface has. */
const TURNS = 120;
/** Holds the axis where the wall leaves it open; far below any height, which are about 1. */
const HELD = 1e-9;

const keptWalls = valueFree<readonly Float64Array[] | null>();

/**
 * @param from first and last measured depth, mm, apart from each other
 * @param count of walls that are looked at
 * @returns null where rounding leaves nothing to draw from
 */
export function plugGives(
  p: Posterior,
  from: number,
  to: number,
  count: number = WALLS,
): PlugGives | null {
  const depths = Float64Array.from(
    { length: LEVELS },
    (_, i) => from + ((to - from) * i) / (LEVELS - 1),
  );
  const walls = keptWalls(p, `${from} ${to} ${count}`, () =>
    wallDraws(p, depths, count, seededRandom(1)),
  );
  if (walls === null) return null;
  const mean = meanCoefficients(p, depths);
  const { seen } = p.design;
  const blind = Array.from({ length: TERMS }, (_, c) => c > 0 && !seen.includes((c + 1) >> 1));
  return {
    all: givesOf(mean, walls),
    seen: blind.includes(true)
      ? givesOf(
          mean,
          walls.map((wall) => wall.map((off, i) => (blind[i % TERMS] ? 0 : off))),
        )
      : null,
  };
}

/** @param mean LEVELS * TERMS coefficients, mm; each of the walls less it */
function givesOf(mean: Float64Array, walls: readonly Float64Array[]): Gives {
  const theta = Float64Array.from({ length: TURNS }, (_, i) => (2 * Math.PI * i) / TURNS);
  const basis = harmonics(theta);
  const sizes = sizer();
  const at = sizes(drawOut(mean, basis));
  const squares = at.map(() => 0);
  for (const wall of walls) {
    const radii = drawOut(
      wall.map((off, i) => mean[i]! + off),
      basis,
    );
    sizes(radii).forEach((size, i) => {
      squares[i] = squares[i]! + (size - at[i]!) ** 2;
    });
  }
  const [average, zone, entering, around, range] = squares.map(
    (sum) => 2 * Math.sqrt(sum / walls.length),
  ) as Sizes;
  return { average, zone, entering, around, range };
}

/** Three diameters and the average's, across, and the zone's width, per side, mm, in the order of `Gives`. */
type Sizes = [average: number, zone: number, entering: number, around: number, range: number];

/** Sizes of a wall of LEVELS * TURNS radii, mm: shift and lean of an axis are straight in the heights. */
function sizer(): (radii: Float64Array) => Sizes {
  const out = rowsOf([1], 4);
  const inside = rowsOf([-1], 4);
  const both = rowsOf([1, -1], 5);
  const held = new Map<Rows, readonly number[]>();
  const least = (rows: Rows, b: Float64Array) => {
    const h = Float64Array.from({ length: rows.unknowns ** 2 }, (_, i) =>
      i % (rows.unknowns + 1) === 0 ? HELD : 0,
    );
    const step = minimaxStep({ ...rows, b }, h, held.get(rows) ?? []);
    if (step !== null) held.set(rows, step.held);
    return step;
  };
  return (radii) => {
    const middle = radii.reduce((sum, r) => sum + r, 0) / radii.length;
    const unit = radii.reduce((most, r) => Math.max(most, Math.abs(r - middle)), 0);
    if (!(unit > 0)) return [2 * middle, 2 * middle, 2 * middle, 2 * middle, 0];
    const up = radii.map((r) => (r - middle) / unit);
    const down = up.map((height) => -height);
    const around = least(out, up);
    const entering = least(inside, down);
    const ways = new Float64Array(2 * up.length);
    ways.set(up);
    ways.set(down, up.length);
    const zone = least(both, ways);
    return [
      2 * middle,
      2 * (middle + unit * (zone?.x[4] ?? Number.NaN)),
      2 * (middle - unit * (entering?.level ?? Number.NaN)),
      2 * (middle + unit * (around?.level ?? Number.NaN)),
      2 * unit * (zone?.level ?? Number.NaN),
    ];
  };
}

/** How the heights of every place, outward for 1 and inward for -1, change with shift, lean and, as the fifth, the radius. */
function rowsOf(sides: readonly number[], unknowns: 4 | 5): Rows {
  const count = sides.length * LEVELS * TURNS;
  const a = new Float64Array(count * unknowns);
  let at = 0;
  for (const side of sides) {
    for (let level = 0; level < LEVELS; level++) {
      const along = (2 * level) / (LEVELS - 1) - 1;
      for (let i = 0; i < TURNS; i++, at += unknowns) {
        const [x, y] = [Math.sin((2 * Math.PI * i) / TURNS), Math.cos((2 * Math.PI * i) / TURNS)];
        a.set([-side * x, -side * y, -side * x * along, -side * y * along], at);
        if (unknowns === 5) a[at + 4] = -side;
      }
    }
  }
  return { a, b: new Float64Array(count), count, unknowns };
}
