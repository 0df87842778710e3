/** Very many readings drawn together by place, so that the surface stays exact to solve and quick. */
import type { Sighting } from './types.ts';

/** Up to here every reading counts by itself. */
const MOST = 640;
/** Cells: 5 degrees by a fortieth of the length. A lobe of order 6 varies by at most 3.4 % of itself in one. */
const TURNS = 72;
const LAYERS = 40;
/** Never coarser than this, however many set-ups share the readings. */
const FEWEST_TURNS = 24;
const FEWEST_LAYERS = 4;

/**
 * Readings of one kind and set-up in one cell become their mean, with the standard deviation of a mean.
 * @returns the readings themselves where there are few
 */
export function thin(sightings: readonly Sighting[], length: number): readonly Sighting[] {
  if (sightings.length <= MOST) return sightings;
  let layers = LAYERS;
  let turns = TURNS;
  for (;;) {
    const cells = gather(sightings, length, turns, layers);
    const coarsest = layers === FEWEST_LAYERS && turns === FEWEST_TURNS;
    if (cells.size <= MOST || coarsest) return [...cells.values()].map(meanOf);
    layers = Math.max(FEWEST_LAYERS, Math.floor(layers * 0.8));
    turns = Math.max(FEWEST_TURNS, Math.floor(turns * 0.9));
  }
}

function gather(
  sightings: readonly Sighting[],
  length: number,
  turns: number,
  layers: number,
): Map<string, Sighting[]> {
  const cells = new Map<string, Sighting[]>();
  for (const s of sightings) {
    const turn = Math.floor((s.theta / (2 * Math.PI)) * turns);
    const layer = Math.min(layers - 1, Math.floor((s.z / length) * layers));
    const key = `${s.instrument} ${s.setup} ${turn} ${layer}`;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [s]);
    else cell.push(s);
  }
  return cells;
}

function meanOf(cell: readonly Sighting[]): Sighting {
  const n = cell.length;
  const mean = (f: (s: Sighting) => number) => cell.reduce((sum, s) => sum + f(s), 0) / n;
  return {
    ...cell[0]!,
    theta: mean((s) => s.theta),
    z: mean((s) => s.z),
    value: mean((s) => s.value),
    sd: Math.sqrt(mean((s) => s.sd ** 2) / n),
    sdStated: cell.every((s) => s.sdStated),
  };
}
