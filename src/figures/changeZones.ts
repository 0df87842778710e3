/** Places where a bore changed most between two stages, as zones with a figure each. */
import type { SurveyEvaluation } from '../evaluate.ts';

type Zone = SurveyEvaluation['zones'][number];

/** As in `StageChange`. */
interface ChangeMap {
  readonly grid: NonNullable<SurveyEvaluation['surface']>['grid'];
  readonly radius: number;
  readonly change: Float64Array;
  readonly give: Float64Array;
}

const MOST = 4;
/** Two places nearer than this belong together: an angle, and a share of the length. */
const APART = Math.PI / 4;
const APART_DEEP = 0.35;

/** The largest changes beyond their give-or-take, the largest first. */
export function changeZones(found: ChangeMap): Zone[] {
  const { grid, change, give } = found;
  const columns = grid.theta.length;
  const length = grid.z[grid.z.length - 1]!;
  const order = Array.from(change.keys())
    .filter((k) => Math.abs(change[k]!) > give[k]!)
    .sort((a, b) => Math.abs(change[b]!) - Math.abs(change[a]!));
  const zones: Zone[] = [];
  for (const k of order) {
    if (zones.length === MOST) break;
    const theta = grid.theta[k % columns]!;
    const z = grid.z[Math.floor(k / columns)]!;
    const near = zones.some((zone) => {
      const turn = Math.abs(Math.atan2(Math.sin(theta - zone.theta), Math.cos(theta - zone.theta)));
      return turn < APART && Math.abs(z - zone.z) < APART_DEEP * length;
    });
    if (!near) zones.push(zoneAt(found, k));
  }
  return zones;
}

/** Its core is where at least half of the peak changed, in one piece along its row and along its column. */
function zoneAt({ grid, radius, change, give }: ChangeMap, k: number): Zone {
  const columns = grid.theta.length;
  const rows = grid.z.length;
  const it = k % columns;
  const iz = (k - it) / columns;
  const peak = change[k]!;
  const inside = (row: number, column: number) =>
    change[row * columns + (((column % columns) + columns) % columns)]! / peak >= 0.5;
  let [back, ahead, top, bottom] = [0, 0, iz, iz];
  while (back + ahead < columns - 1 && inside(iz, it + ahead + 1)) ahead++;
  while (back + ahead < columns - 1 && inside(iz, it - back - 1)) back++;
  while (top > 0 && inside(top - 1, it)) top--;
  while (bottom < rows - 1 && inside(bottom + 1, it)) bottom++;
  const thetaAt = (column: number) => grid.theta[(column + columns) % columns]!;
  const wide = (back + ahead + 1) * ((2 * Math.PI) / columns);
  const deep = grid.z[bottom]! - grid.z[top]!;
  // Taken for an oval patch of that arc and depth.
  const area = (Math.PI / 4) * wide * radius * deep;
  return {
    kind: peak < 0 ? 'high' : 'low',
    peak,
    theta: grid.theta[it]!,
    z: grid.z[iz]!,
    give: give[k]!,
    from: thetaAt(it - back),
    to: thetaAt(it + ahead),
    top: grid.z[top]!,
    bottom: grid.z[bottom]!,
    outerFrom: thetaAt(it - back),
    outerTo: thetaAt(it + ahead),
    allRound: back + ahead + 1 >= columns,
    gaps: [],
    patchy: false,
    area,
    volume: area * Math.abs(peak),
  };
}
