/** What these readings cannot tell, each with the cheapest reading that would. Plain sentences. */
import { differentAngles, lobeAliases } from '../geometry/harmonics.ts';
import type { AtHand } from '../job/atHand.ts';
import { distinct } from './distinct.ts';
import type { BoreAxis, OvalTurn, Remark, Sighting } from './types.ts';
import { clockRemarks, dentRemarks, unseenRemarks } from './unseen.ts';

const missing = (text: string): Remark => ({ kind: 'missing', text });

/**
 * @param deepText how a depth is written for the reader
 * @param hand the gauges with which more could be read
 */
export function blindSpots(
  sightings: readonly Sighting[],
  length: number,
  deepText: (z: number) => string,
  hand: readonly AtHand[] = [],
): Remark[] {
  if (sightings.length === 0) return [];
  return [
    ...unseenRemarks(sightings),
    ...clockRemarks(sightings),
    ...aliasRemarks(sightings),
    ...dentRemarks(sightings),
    ...depthRemarks(sightings, length, deepText, hand),
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

/** Lobes above this are hardly ever worn into a bore, and are not warned of. */
const MOST_LOBES = 6;
/** A lobe of which at least this share comes back as another one cannot be told from it. */
const TAKEN_FOR = 0.5;

/** Lobes that the clock positions, taken over all depths, cannot tell apart. */
function aliasRemarks(sightings: readonly Sighting[]): Remark[] {
  const pairs = sightings.every((s) => s.instrument === 'two-point');
  if (!pairs && sightings.some((s) => s.instrument === 'two-point' || s.instrument === 'three-leg'))
    return [];
  // Diameters repeat after half a turn: doubled, two lobes are one.
  const per = pairs ? 2 : 1;
  const theta = distinct(
    sightings.map((s) => (per * s.theta) % (2 * Math.PI)),
    2 * Math.PI,
  );
  const count = differentAngles(theta);
  const order = Math.min(Math.floor((count - 1) / 2), Math.floor(MOST_LOBES / per));
  if (order < 1) return [];
  const taken = lobeAliases(theta, order, MOST_LOBES / per)
    .map(({ lobe, seenAs }) => ({ lobe, as: seenAs.filter(({ gain }) => gain >= TAKEN_FOR) }))
    .filter(({ as }) => as.length > 0);
  const of = (n: number) => taken.filter(({ as }) => as.some((s) => s.n === n)).map((t) => t.lobe);
  const lobes = (list: readonly number[]) => list.map((n) => String(per * n)).join(' or ');
  const parts: string[] = [];
  for (let n = pairs ? 1 : 2; n <= order; n++) {
    if (of(n).length > 0) parts.push(`cannot tell ${per * n} lobes from ${lobes(of(n))}`);
  }
  if (!pairs && of(1).length > 0)
    parts.push(`take ${lobes(of(1))} lobes for a shift of the centre`);
  if (of(0).length > 0) parts.push(`take ${lobes(of(0))} lobes for size`);
  if (parts.length === 0) return [];
  const what = pairs ? 'pairs of clock positions' : 'clock positions';
  const others = pairs ? 'pairs between them' : 'positions between them';
  return [missing(`${count} ${what} ${parts.join(', and ')}: ${others} would.`)];
}

/** Why the axis is not told; diameters by themselves have said so already. */
export function axisRemarks(axis: BoreAxis, sightings: readonly Sighting[]): Remark[] {
  if (axis.status === 'told' || sightings.every((s) => s.instrument === 'two-point')) return [];
  return [missing(axis.why)];
}

/** A clock that may have been turned part-way: a question, since only the repairer knows. */
export function turnRemarks(turn: OvalTurn | null, deepText: (z: number) => string): Remark[] {
  if (turn === null || Number.isNaN(turn.from)) return [];
  const halves = Math.round((Math.abs(turn.turn) / (2 * Math.PI)) * 24);
  const hours = halves === 1 ? 'half an hour' : halves === 2 ? '1 hour' : `${halves / 2} hours`;
  const way = turn.turn > 0 ? 'clockwise' : 'anticlockwise';
  const also =
    turn.kind === 'not-told' ? ' Wear that twists steadily would look about the same.' : '';
  return [
    {
      kind: 'warning',
      text: `Readings from ${deepText(turn.from)} deep on look turned by about ${hours} ${way} against those above: was the clock kept?${also}`,
    },
  ];
}

/** Shares of the length that may go unread without a word: less at a mouth, where bores wear fastest. */
const UNREAD_MOUTH = 0.2;
const UNREAD_BETWEEN = 0.34;

function depthRemarks(
  sightings: readonly Sighting[],
  length: number,
  deepText: (z: number) => string,
  hand: readonly AtHand[],
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
    const middle = (ends[i - 1]! + ends[i]!) / 2;
    out.push(
      missing(
        `Nothing is measured between ${deepText(ends[i - 1]!)} and ${deepText(ends[i]!)} deep; ` +
          `what the map shows there is filled in from its neighbours. ${wayThere(middle, hand, deepText)} would tell.`,
      ),
    );
  }
  return out;
}

/** Readings at a depth, and with which gauge where not all get there. */
function wayThere(z: number, hand: readonly AtHand[], deepText: (z: number) => string): string {
  const sizing = hand.filter(({ fresh }) => fresh === null);
  const there = sizing.filter(({ from, to }) => z >= from && z <= to);
  const readings = `Readings at ${deepText(z)} deep`;
  if (there.length === sizing.length) return readings;
  const [one] = there;
  if (one !== undefined) return `${readings} with a gauge that gets there (${one.name})`;
  return `No gauge at hand gets there: ${readings.toLowerCase()} from the other face, or with a longer gauge,`;
}
