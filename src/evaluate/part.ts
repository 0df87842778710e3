/** A pin or a bushing as measured: the same surface as a bore's, without what only a bore has. */
import { NO_PATTERNS } from '../bore/patterns.ts';
import type { Patterns } from '../bore/patternTypes.ts';
import type { Check, Plugs, Remark, Sighting } from '../bore/types.ts';
import type { Feature } from '../job/schema.ts';

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

/** Of an outside nothing that is said of a hole: no plugs, no wear pattern of bores, no slip that happens at its wall. */
export function asOutside<T extends OfHole>(done: T): T {
  return {
    ...done,
    plugs: null,
    patterns: NO_PATTERNS,
    checks: done.checks.map((one) =>
      one.suspect && one.suggested === null ? { ...one, slip: 'unexplained' } : one,
    ),
    blindSpots: outsideSpots(done.sightings),
  };
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
