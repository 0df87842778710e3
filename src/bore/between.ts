/**
 * Where a first pass takes metal half-way between the marks. A hollow that lies there unread is in no map, and the
 * give-or-take counts only such dents as this wall has shown: of 48 hollows of 0.03 to 0.15 mm put there in simulated bores the
 * first pass would have cut 25 deeper by more than 0.0125 mm; with one reading at the deepest, none by 0.001. So they are felt
 * for before it; later the gates read half-way.
 */
import { distinct } from './distinct.ts';
import { fieldAt } from './gate.ts';
import type { PassMatter } from './passes.ts';
import type { BetweenPlace } from './passTypes.ts';
import { SEATED } from './removal.ts';
import type { Field, Sighting } from './types.ts';
import { clocksTouched, NARROW_GAP } from './unseen.ts';

/** Places that are worked less than this share of the most lose little. */
const WORKED = 0.5;
/** Readings no farther apart than this were taken at one depth, mm. */
const SAME_DEPTH = 0.5;

/**
 * @param removal of the first pass after the survey, per side, mm
 * @returns the middles between neighbouring marks, round the clock and along the depth, and between the outermost and the
 *   faces, by depth and clock; none where marks
 *   stand so near that nothing that matters lies between
 */
export function betweenMarks(
  { surface: { grid }, places, radius }: PassMatter,
  removal: Field,
  sightings: readonly Sighting[],
): BetweenPlace[] {
  const least = WORKED * removal.reduce((most, one) => (one > most ? one : most), 0);
  if (!(least > 0) || sightings.length === 0) return [];
  const narrow = NARROW_GAP * radius;
  const clocks = clocksTouched(sightings);
  const depths = distinct(
    sightings.map(({ z }) => z),
    Number.POSITIVE_INFINITY,
    SAME_DEPTH,
  );
  const ends = [0, ...depths, grid.z[grid.z.length - 1]!];
  const middles = ends.slice(1).flatMap((z, i) => {
    const gap = z - ends[i]!;
    const halfway = i === 0 || i === ends.length - 2 ? ('face' as const) : ('depth' as const);
    return gap > narrow ? [{ z: z - gap / 2, halfway }] : [];
  });
  const halves = clocks.flatMap((at, i) => {
    const gap = (clocks[i + 1] ?? clocks[0]! + 2 * Math.PI) - at;
    return gap > NARROW_GAP ? [(at + gap / 2) % (2 * Math.PI)] : [];
  });
  const found: BetweenPlace[] = [];
  const add = (theta: number, z: number, halfway: BetweenPlace['halfway']) => {
    const takes = fieldAt(grid, removal, theta, z);
    const row = grid.z.reduce(
      (near, at, i) => (Math.abs(at - z) < Math.abs(grid.z[near]! - z) ? i : near),
      0,
    );
    const column = Math.round((theta / (2 * Math.PI)) * grid.theta.length) % grid.theta.length;
    if (places[row * grid.theta.length + column] === SEATED && takes >= least) {
      found.push({ theta, z, takes, halfway });
    }
  };
  for (const z of depths) for (const theta of halves) add(theta, z, 'clock');
  for (const { z, halfway } of middles) {
    for (const theta of [...clocks, ...halves]) add(theta, z, halfway);
  }
  return found.sort((a, b) => a.z - b.z || a.theta - b.theta);
}
