/** A pin or a bushing as measured: the same surface as a bore's, without what only a bore has. */
import { NO_PATTERNS } from '../bore/patterns.ts';
import type { Patterns } from '../bore/patternTypes.ts';
import type { Check, Plugs, Remark, Sighting } from '../bore/types.ts';
import type { Feature, Survey } from '../job/schema.ts';

/** Pins and the outside of bushings: wear makes these smaller. */
export function isOutside(kind: Feature['kind']): boolean {
  return kind === 'pin' || kind === 'bushing-outside';
}

/** What an outside is told otherwise of than a hole. */
interface OfHole {
  readonly sightings: readonly Sighting[];
  readonly plugs: Plugs | null;
  readonly patterns: Patterns;
  readonly checks: readonly Check[];
  readonly blindSpots: readonly Remark[];
}

/** What the part itself says of its readings. */
export interface Outside {
  readonly stage: Survey['stage'];
  /** Depths at which it may step, mm: the ends of a pin's running stretches, which wear and are welded up alone. */
  readonly steps: readonly number[];
}

/** Of an outside nothing that is said of a hole: no plugs, no wear pattern of bores, no slip that happens at its wall. */
export function asOutside<T extends OfHole>(done: T, part: Outside): T {
  return {
    ...done,
    plugs: null,
    patterns: NO_PATTERNS,
    checks: done.checks.flatMap((one) => outsideCheck(one, done.sightings, part)),
    blindSpots: outsideSpots(done.sightings),
  };
}

/**
 * A slip of many readings at once stays what it is; what is at the wall of a hole is something else here. Of weld a slip of
 * typing that would make a reading larger is never said alone: taken for it, a low place would show on the lathe.
 */
function outsideCheck(
  check: Check,
  sightings: readonly Sighting[],
  { stage, steps }: Outside,
): Check[] {
  if (!check.suspect || Number.isNaN(check.expected)) return [check];
  const seen = sightings.find(({ row }) => row === check.row);
  const kind = seen?.instrument;
  const isSize = kind === 'radius' || kind === 'two-point';
  const low = stage === 'after-build-up' && isSize && seen!.value < check.expected;
  if (check.suggested !== null) {
    return low ? [{ ...check, slip: `${check.slip}, or ${LEFT_LOW}` }] : [check];
  }
  // Beyond a step nothing tells what a reading should be but others on the same piece.
  if (seen !== undefined && isAlone(seen.z, sightings, steps)) return [];
  return [{ ...check, slip: low ? LEFT_LOW : 'unexplained' }];
}

/** Weld is uneven, and a place that it left short is what the survey is for. */
const LEFT_LOW = 'a place that the weld left low';

/** True where no other depth was read between the same two steps. */
function isAlone(z: number, sightings: readonly Sighting[], steps: readonly number[]): boolean {
  const pieceOf = (at: number) => steps.filter((step) => step <= at).length;
  return sightings.every((one) => one.z === z || pieceOf(one.z) !== pieceOf(z));
}

function outsideSpots(sightings: readonly Sighting[]): Remark[] {
  if (sightings.length === 0) return [];
  const out: Remark[] = [];
  const clocks = new Set(sightings.map(({ theta }) => Math.round((theta % Math.PI) * 100)));
  if (clocks.size < 3) {
    out.push({
      kind: 'missing',
      text: 'Fewer than three clock pairs: an oval between them would not be seen. Read at 12, 1:30, 3 and 4:30.',
    });
  }
  out.push({
    kind: 'missing',
    text:
      'Across, wear on one side and on two read alike: feel for the step to the unworn end on both sides, or turn it in ' +
      'vee blocks under an indicator.',
  });
  return out;
}
