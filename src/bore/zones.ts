/** High and low zones of the deviation: where they peak, their core, and where they feather to nothing. */
import { type Basins, basins } from './basins.ts';
import { cellShares } from './removal.ts';
import type { Field, Removal, WearSurface, Zone } from './types.ts';

/** Less than this is on size, per side, mm: 0.0001 in. */
export const ON_SIZE = 0.0025;
/** A hill of its own rises this share of its height above the pass, and at least this much, mm. */
const PROMINENCE_SHARE = 0.3;
const PROMINENCE_LEAST = 0.004;
/** The same of what is planned, which no reading blurs, mm. */
const NO_HILL = 0.001;
/** Zones lower than this share of the highest are left unsaid. */
const WORTH_SAYING = 0.1;
const MOST_ZONES = 12;
/** A ring is one zone all round when its core covers at least this share of the clock. */
const ALL_ROUND = 0.95;

export function findZones(
  surface: WearSurface,
  removal: Pick<Removal, 'deviation' | 'likely' | 'sd'>,
): Zone[] {
  const high = removal.likely.map((t) => (t > 0 ? t : 0));
  const low = removal.deviation.map((e, k) => (e > 0 && !Number.isNaN(removal.likely[k]!) ? e : 0));
  const zones = [
    ...hills(surface, high, removal.sd, 'high', PROMINENCE_LEAST),
    ...hills(surface, low, removal.sd, 'low', PROMINENCE_LEAST),
  ];
  return worthSaying(zones);
}

/**
 * Where metal comes off, of any field of removal: per side, mm, NaN or 0 where none does.
 *
 * @param sd of the wall, for the give-or-take that each zone carries
 */
export function highZones(surface: WearSurface, removal: Field, sd: Field): Zone[] {
  const high = new Float64Array(removal.length);
  for (let k = 0; k < high.length; k++) if (removal[k]! > 0) high[k] = removal[k]!;
  return worthSaying(hills(surface, high, sd, 'high', NO_HILL));
}

function worthSaying(zones: readonly Zone[]): Zone[] {
  const greatest = Math.max(0, ...zones.map((zone) => Math.abs(zone.peak)));
  return zones
    .filter((zone) => Math.abs(zone.peak) >= WORTH_SAYING * greatest)
    .sort((a, b) => Math.abs(b.peak) - Math.abs(a.peak))
    .slice(0, MOST_ZONES);
}

function hills(
  surface: WearSurface,
  height: Field,
  sd: Field,
  kind: Zone['kind'],
  least: number,
): Zone[] {
  const columns = surface.grid.theta.length;
  const found = basins(height, columns, Math.min(ON_SIZE, least), (h) =>
    Math.max(PROMINENCE_SHARE * h, least),
  );
  return found.summits
    .map((summit, i) => zoneOf(surface, height, sd, kind, found, summit, i))
    .filter((zone) => Math.abs(zone.peak) >= least);
}

function zoneOf(
  surface: WearSurface,
  height: Field,
  sd: Field,
  kind: Zone['kind'],
  found: Basins,
  summit: number,
  index: number,
): Zone {
  const { theta, z } = surface.grid;
  const columns = theta.length;
  const it = summit % columns;
  const iz = (summit - it) / columns;
  const share = cellShares(surface.grid);
  const peak = height[summit]!;
  const side = kind === 'high' ? 1 : -1;
  const core = new Uint8Array(columns);
  let top = iz;
  let bottom = iz;
  let area = 0;
  let volume = 0;
  for (let k = 0; k < height.length; k++) {
    if (found.label[k] !== index) continue;
    const row = Math.floor(k / columns);
    const cell = surface.mean[k]! * share[row]!;
    area += cell;
    // A layer inside the wall's radius is a little longer round, one outside it a little shorter.
    volume += height[k]! * cell * (1 + (side * height[k]!) / (2 * surface.mean[k]!));
    if (height[k]! < peak / 2) continue;
    core[k % columns] = 1;
    top = Math.min(top, row);
    bottom = Math.max(bottom, row);
  }
  const inCore = (at: number) => core[at] === 1;
  const inHill = (at: number) => found.label[iz * columns + at] === index;
  const coreSpan = spread(columns, it, inCore);
  const hillSpan = spread(columns, it, inHill);
  return {
    kind,
    peak: kind === 'high' ? -peak : peak,
    theta: theta[it]!,
    z: z[iz]!,
    give: 2 * sd[summit]!,
    from: theta[coreSpan.from]!,
    to: theta[coreSpan.to]!,
    top: z[top]!,
    bottom: z[bottom]!,
    outerFrom: theta[hillSpan.from]!,
    outerTo: theta[hillSpan.to]!,
    allRound: coreSpan.count >= ALL_ROUND * columns,
    area,
    volume,
  };
}

/** The unbroken stretch of the clock round `start` in which `inside` holds. */
function spread(
  columns: number,
  start: number,
  inside: (at: number) => boolean,
): { from: number; to: number; count: number } {
  let back = 0;
  let ahead = 0;
  while (back + ahead < columns - 1 && inside((start + ahead + 1) % columns)) ahead++;
  while (back + ahead < columns - 1 && inside((start - back - 1 + columns) % columns)) back++;
  return {
    from: (start - back + columns) % columns,
    to: (start + ahead) % columns,
    count: back + ahead + 1,
  };
}
