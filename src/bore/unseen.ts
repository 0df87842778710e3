/** What the instruments of a survey cannot see round the bore, each with the cheapest reading that would tell. */
import type { Instrument } from '../job/schema.ts';
import { distinct } from './distinct.ts';
import type { Remark, Sighting } from './types.ts';

const HALF_TURN = Math.PI;
const HOUR = Math.PI / 6;

const missing = (text: string): Remark => ({ kind: 'missing', text });

/** Side, lean of the axis, odd lobes, ovals and size: what no instrument of the survey responds to. */
export function unseenRemarks(sightings: readonly Sighting[]): Remark[] {
  const kinds = new Set(sightings.map((s) => s.instrument));
  const has = (...some: Instrument[]) => some.some((kind) => kinds.has(kind));
  const out: Remark[] = [];
  if (!has('sweep', 'wall', 'radius')) {
    out.push(missing(kinds.has('three-leg') ? threeLegText(kinds) : DIAMETERS));
  }
  if (!has('two-point', 'three-leg', 'radius')) out.push(missing(SIZELESS));
  if (has('wall') && !has('radius')) out.push(missing(BOSS));
  if (has('sweep') && !has('wall', 'radius')) {
    const swept = sightings.filter((s) => s.instrument === 'sweep').map((s) => s.z);
    if (distinct(swept, Number.POSITIVE_INFINITY, 0.5).length === 1) out.push(missing(ONE_SWEEP));
  }
  return out;
}

const DIAMETERS =
  'Diameters cannot show which side is worn, how the axis runs, nor three- or five-lobed shapes. A dial indicator swept ' +
  'round at three depths would show both; wall thickness at each clock hour would show the side.';

const SIZELESS =
  'These readings show shape but not size. One diameter at any depth would give the size.';

const BOSS =
  'Wall thickness shows the worn side only as truly as the boss is round outside: the boss read across at 12, 1:30, 3 ' +
  'and 4:30 would tell.';

const ONE_SWEEP =
  'Swept at one depth only, an indicator shows neither which side is worn nor how the axis runs. Sweeps at rim, middle ' +
  'and bottom in one set-up would tell.';

function threeLegText(kinds: ReadonlySet<Instrument>): string {
  const side =
    'which side is worn nor how the axis runs. A dial indicator swept round at three depths would show both.';
  if (kinds.has('two-point')) {
    return `Diameters and a three-leg gauge show neither five-lobed shapes nor ${side}`;
  }
  return (
    'A three-leg gauge reads the mean of an oval at every turn: this bore may be oval and these readings ' +
    'could not show it. Read across at 12, 1:30, 3 and 4:30 with a two-point gauge. Nor does it show ' +
    side
  );
}

/** Too few clock positions for an oval, where nothing but diameters would show one. */
export function clockRemarks(sightings: readonly Sighting[]): Remark[] {
  const twoPoint = sightings.filter((s) => s.instrument === 'two-point');
  if (sightings.some((s) => s.instrument !== 'two-point' && s.instrument !== 'three-leg')) {
    return [];
  }
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

/** How many places of the wall one reading touches, evenly round. */
const TOUCHED: Readonly<Record<Instrument, number>> = {
  'two-point': 2,
  'three-leg': 3,
  sweep: 1,
  wall: 1,
  radius: 1,
};
/** Nothing that wears is narrower than half of this and matters to a bushing, radians. */
export const NARROW_GAP = 0.75 * HOUR;

/** Every clock position that a reading touches at any depth, each once, ascending. */
export function clocksTouched(sightings: readonly Sighting[]): number[] {
  const touched = sightings.flatMap(({ theta, instrument }) =>
    Array.from(
      { length: TOUCHED[instrument] },
      (_, k) => (theta + (2 * Math.PI * k) / TOUCHED[instrument]) % (2 * Math.PI),
    ),
  );
  return distinct(touched, 2 * Math.PI);
}

/** What lies between the clock positions, taken over all depths. */
export function dentRemarks(sightings: readonly Sighting[]): Remark[] {
  const places = clocksTouched(sightings);
  const gaps = places.map((at, i) => (places[i + 1] ?? places[0]! + 2 * Math.PI) - at);
  const widest = Math.max(...gaps);
  if (!(widest > NARROW_GAP)) return [];
  const hours = Math.round((2 * widest) / HOUR) / 2;
  const apart = hours === 1 ? '1 hour' : `${hours} hours`;
  return [
    missing(
      `A dent between the clock positions, up to ${apart} apart, can lie unread: a fingertip run round finds it, and ` +
        'one reading there would tell how deep it is.',
    ),
  ];
}
