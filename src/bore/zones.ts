/** High and low zones of the deviation: where they peak, their core and the gaps in it, and where they feather to nothing. */

import { ALL_ROUND, type Arc, arcOf, arcWithin } from './arcOf.ts';
import { type Basins, basins } from './basins.ts';
import { gapsIn } from './gaps.ts';
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
  const share = cellShares(surface.grid);
  const highest = height[found.summits[0]!]!;
  const said = found.summits.filter(
    (k, i) => i < MOST_ZONES && height[k]! >= Math.max(least, WORTH_SAYING * highest),
  );
  // The summits come highest first.
  return said.map((_, hill) => zoneOf(surface, height, sd, kind, found, hill, share));
}

function zoneOf(
  surface: WearSurface,
  height: Field,
  sd: Field,
  kind: Zone['kind'],
  { label, summits }: Basins,
  hill: number,
  share: Float64Array,
): Zone {
  const { theta, z } = surface.grid;
  const columns = theta.length;
  const summit = summits[hill]!;
  const peak = height[summit]!;
  const side = kind === 'high' ? 1 : -1;
  const core = new Uint8Array(columns);
  const whole = new Uint8Array(columns);
  const row = Math.floor(summit / columns);
  let top = row;
  let bottom = row;
  let area = 0;
  let volume = 0;
  for (let k = 0; k < height.length; k++) {
    if (label[k] !== hill) continue;
    const at = Math.floor(k / columns);
    const cell = surface.mean[k]! * share[at]!;
    area += cell;
    // A layer inside the wall's radius is a little longer round, one outside it a little shorter.
    volume += height[k]! * cell * (1 + (side * height[k]!) / (2 * surface.mean[k]!));
    whole[k % columns] = 1;
    if (height[k]! < peak / 2) continue;
    core[k % columns] = 1;
    top = Math.min(top, at);
    bottom = Math.max(bottom, at);
  }
  const outer = arcOf(whole);
  const arc = outer.count < columns ? arcWithin(core, outer) : arcOf(core);
  const [outerFrom, outerTo] = ends(outer, columns) ?? opposite(arc, columns);
  return {
    kind,
    peak: kind === 'high' ? -peak : peak,
    theta: theta[summit % columns]!,
    z: z[row]!,
    give: 2 * sd[summit]!,
    from: theta[arc.from]!,
    to: theta[(arc.from + arc.count - 1) % columns]!,
    top: z[top]!,
    bottom: z[bottom]!,
    outerFrom: theta[outerFrom]!,
    outerTo: theta[outerTo]!,
    allRound: arc.count >= ALL_ROUND * columns,
    ...gapsIn({ label, share, theta, z }, { hill, summit }, { ...arc, top, bottom }),
    area,
    volume,
  };
}

/** First and last place; null where it goes all round. */
function ends({ from, count }: Arc, columns: number): [number, number] | null {
  return count < ALL_ROUND * columns ? [from, (from + count - 1) % columns] : null;
}

/** The place farthest from a stretch, for both its ends. */
function opposite({ from, count }: Arc, columns: number): [number, number] {
  const at = (from + count + Math.floor((columns - count) / 2)) % columns;
  return [at, at];
}
