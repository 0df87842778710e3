/**
 * What changed of a bore between two stages: one map of the difference, in one frame. Per side; positive where metal is
 * gone, negative where it came in or on.
 */
import type { SurveyEvaluation } from '../evaluate.ts';
import { leastChange } from '../geometry/leastChange.ts';
import { changeZones } from './changeZones.ts';
import { drawAs, type Wall, wallOf } from './wall.ts';

export interface StageChange {
  readonly before: SurveyEvaluation;
  readonly after: SurveyEvaluation;
  readonly grid: Wall['grid'];
  /** Of the wall, mm. */
  readonly radius: number;
  /** mm per side, row by row as the grid; NaN not known in one of the two. */
  readonly change: Float64Array;
  /** Two standard deviations of it: the variances of both stages add. */
  readonly give: Float64Array;
  /** Two standard deviations of a change across, at a place and the one opposite, for what the gauges respond to. */
  readonly giveAcross: Float64Array;
  /** False: the centres of the two are not tied to one another, and they are laid so that least changes. */
  readonly tied: boolean;
  /** False: diameters alone, which do not tell on which of two opposite sides something changed. */
  readonly sideTold: boolean;
}

/** One sentence why two stages of a bore cannot be laid over each other; null where they can. */
export function notComparable(a: SurveyEvaluation, b: SurveyEvaluation): string | null {
  const bare = [a, b].find(({ surface }) => surface === null);
  if (bare !== undefined) {
    return `“${bare.name}” has no shape yet to compare: it needs readings that can be used.`;
  }
  const fitted = [a, b].filter(({ stage }) => stage === 'fitted');
  if (fitted.length === 1) {
    return `“${fitted[0]!.name}” is of the bushing’s own bore, and the other of the boss: nothing moved between them.`;
  }
  const [one, other] = [a.surface!.grid, b.surface!.grid];
  const lengths = [one, other].map(({ z }) => z[z.length - 1]!);
  const alike =
    one.theta.length === other.theta.length &&
    one.z.length === other.z.length &&
    Math.abs(lengths[0]! - lengths[1]!) < 1e-6;
  return alike
    ? null
    : `“${a.name}” and “${b.name}” were taken as bores of different length: they cannot be laid over each other.`;
}

const known = new WeakMap<SurveyEvaluation, WeakMap<SurveyEvaluation, StageChange>>();

/** @param before, after two stages that are comparable, the earlier one first */
export function stageChange(before: SurveyEvaluation, after: SurveyEvaluation): StageChange {
  const of = known.get(before) ?? new WeakMap<SurveyEvaluation, StageChange>();
  known.set(before, of);
  const found = of.get(after) ?? findChange(before, after);
  of.set(after, found);
  return found;
}

function findChange(before: SurveyEvaluation, after: SurveyEvaluation): StageChange {
  const { grid, sdSeen } = before.surface!;
  const seenAfter = after.surface!.sdSeen;
  const [a, b] = [wallOf(before)!, wallOf(after)!];
  const tied = [before, after].every(
    ({ target, removal }) =>
      removal !== null &&
      target !== null &&
      target.centreRule !== 'free' &&
      target.centreRule !== 'least-cut',
  );
  const from = a.deviation.map((e) => e + a.radius);
  const to = b.deviation.map((e) => e + b.radius);
  const laid = tied ? to : laidOver(grid, from, to);
  const columns = grid.theta.length;
  const half = columns / 2;
  const opposite = (k: number) => k - (k % columns) + ((k + half) % columns);
  const seenAcross = (sd: Float64Array, k: number) => sd[k]! + sd[opposite(k)]!;
  return {
    before,
    after,
    grid,
    radius: b.radius,
    change: laid.map((r, k) => r - from[k]!),
    give: a.give.map((give, k) => Math.hypot(give, b.give[k]!)),
    giveAcross: sdSeen.map(
      (_, k) => 2 * Math.hypot(seenAcross(sdSeen, k), seenAcross(seenAfter, k)),
    ),
    tied,
    sideTold: [before, after].every(({ surface }) => surface!.seenLobes.some((n) => n % 2 === 1)),
  };
}

/** The second wall about the axis from which least of it differs from the first. */
function laidOver(grid: Wall['grid'], before: Float64Array, after: Float64Array): Float64Array {
  let laid = after;
  let [x, y, leanX, leanY] = [0, 0, 0, 0];
  // The second round takes what the first one's straight lines left of a large move.
  for (let round = 0; round < 2; round++) {
    const move = leastChange({ ...grid, before, after: laid });
    [x, y, leanX, leanY] = [x + move.x, y + move.y, leanX + move.leanX, leanY + move.leanY];
    const columns = grid.theta.length;
    laid = after.map((r, k) => {
      const theta = grid.theta[k % columns]!;
      const z = grid.z[Math.floor(k / columns)]!;
      return Math.hypot(r * Math.sin(theta) - x - leanX * z, r * Math.cos(theta) - y - leanY * z);
    });
  }
  return laid;
}

/** The change as a survey to be drawn: its map in place of the wall's, without target and zones of work. */
export function drawnChange(found: StageChange): SurveyEvaluation {
  const { after, grid, radius, change, give } = found;
  const { length } = wallOf(after)!;
  const drawn: SurveyEvaluation = {
    ...after,
    target: null,
    removal: null,
    seating: null,
    plugs: null,
    next: { readings: [], setups: [] },
    zones: changeZones(found),
  };
  drawAs(drawn, { grid, length, radius, deviation: change, give, about: 'change' });
  return drawn;
}
