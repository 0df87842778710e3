/** What these readings cannot tell, each with the cheapest reading that would. Plain sentences. */
import type { Remark, Sighting } from './types.ts';

const HALF_TURN = Math.PI;
/** Two clock positions nearer than this (2 degrees) are one. */
const SAME_CLOCK = 0.035;

const missing = (text: string): Remark => ({ kind: 'missing', text });

/** @param deepText how a depth is written for the reader */
export function blindSpots(
  sightings: readonly Sighting[],
  length: number,
  deepText: (z: number) => string,
): Remark[] {
  if (sightings.length === 0) return [];
  return [
    ...sideRemarks(sightings),
    ...clockRemarks(sightings),
    ...depthRemarks(sightings, length, deepText),
  ];
}

/** Fewer equal readings than this may be chance with a coarse gauge. */
const EQUAL_BY_CHANCE = 5;

/** Readings from which no shape can be believed, in one sentence; nothing where they are sound. */
export function faults(sightings: readonly Sighting[]): Remark[] {
  const [first] = sightings;
  if (first === undefined) return [];
  const fault = (text: string): Remark[] => [{ kind: 'fault', text }];
  if (sightings.length === 1) {
    return fault(
      'One reading is a size and not a shape: read at three depths, at 12, 1:30, 3 and 4:30 or at all six pairs.',
    );
  }
  if (sightings.every((s) => s.theta === first.theta && s.z === first.z)) {
    return fault(
      'All readings are at one place, which is a size and not a shape: read at other clock positions and depths.',
    );
  }
  if (sightings.length > EQUAL_BY_CHANCE && sightings.every((s) => s.value === first.value)) {
    return fault(
      `All ${sightings.length} readings are the same to the last digit, which a real bore hardly ever gives: ` +
        'check that the gauge moves freely, and read again.',
    );
  }
  return [];
}

function sideRemarks(sightings: readonly Sighting[]): Remark[] {
  const kinds = new Set(sightings.map((s) => s.instrument));
  const only = (kind: Sighting['instrument']) => kinds.size === 1 && kinds.has(kind);
  if (only('two-point')) {
    return [
      missing(
        'Diameters cannot show which side is worn, nor three- or five-lobed shapes. A dial indicator swept ' +
          'round at three depths would show both; wall thickness at each clock hour would show the side.',
      ),
    ];
  }
  if (only('three-leg')) {
    return [
      missing(
        'A three-leg gauge reads the mean of an oval at every turn: this bore may be oval and these readings ' +
          'could not show it. Read across at 12, 1:30, 3 and 4:30 with a two-point gauge.',
      ),
    ];
  }
  if ([...kinds].every((kind) => kind === 'sweep' || kind === 'wall')) {
    return [
      missing(
        'These readings show shape but not size. One diameter at any depth would give the size.',
      ),
    ];
  }
  return [];
}

function clockRemarks(sightings: readonly Sighting[]): Remark[] {
  const twoPoint = sightings.filter((s) => s.instrument === 'two-point');
  if (twoPoint.length !== sightings.length) return [];
  const clocks = distinct(
    twoPoint.map((s) => s.theta % HALF_TURN),
    HALF_TURN,
  );
  if (clocks.length === 1) {
    return [
      missing(
        'One clock position only: how far out of round this bore is cannot be known. Read at least at 12, 1:30, ' +
          '3 and 4:30.',
      ),
    ];
  }
  if (clocks.length === 2) {
    return [
      missing(
        'Two clock positions only: an oval whose long way lies between them would be invisible. Read the two ' +
          'halfway between as well; six pairs are better.',
      ),
    ];
  }
  return [];
}

/** Shares of the length that may go unread without a word: less at a mouth, where bores wear fastest. */
const UNREAD_MOUTH = 0.2;
const UNREAD_BETWEEN = 0.34;

function depthRemarks(
  sightings: readonly Sighting[],
  length: number,
  deepText: (z: number) => string,
): Remark[] {
  const depths = distinct(
    sightings.map((s) => s.z),
    Number.POSITIVE_INFINITY,
    length / 100,
  );
  const out: Remark[] = [];
  if (depths.length === 1) {
    out.push(
      missing(
        'One depth only: taper, bell-mouth and barrel cannot be known. Measure near the rim, in the middle and ' +
          'near the bottom.',
      ),
    );
  } else if (depths.length === 2) {
    out.push(
      missing(
        'Two depths only: a taper and a bell-mouth look alike. Measure in the middle as well.',
      ),
    );
  }
  const ends = [0, ...depths, length];
  if (depths.length < 2) return out;
  for (let i = 1; i < ends.length; i++) {
    const atEnd = i === 1 || i === ends.length - 1;
    if (ends[i]! - ends[i - 1]! <= length * (atEnd ? UNREAD_MOUTH : UNREAD_BETWEEN)) continue;
    out.push(
      missing(
        `Nothing is measured between ${deepText(ends[i - 1]!)} and ${deepText(ends[i]!)} deep; ` +
          'what the map shows there is drawn out from its neighbours.',
      ),
    );
  }
  return out;
}

/** Values without near repeats, sorted; on a circle of the given period where it is finite. */
function distinct(values: readonly number[], period: number, near = SAME_CLOCK): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const out: number[] = [];
  for (const v of sorted) {
    const last = out[out.length - 1];
    if (last === undefined || v - last > near) out.push(v);
  }
  if (out.length > 1 && out[0]! + period - out[out.length - 1]! <= near) out.pop();
  return out;
}
