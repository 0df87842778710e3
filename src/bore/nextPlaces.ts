/** Where one more reading could be taken: clock positions and depths that a hand finds on the metal. */
import type { AtHand } from '../job/atHand.ts';
import type { Design } from './design.ts';
import type { Sighting } from './types.ts';

const TURN = 2 * Math.PI;
const HALF_HOURS = 24;
/** With more readings than this, whole hours are near enough, and quicker. */
const FINE_UP_TO = 120;
/** A gauge touches no nearer to a face than this: past the chamfer (common practice 1/8 to 1/4 in), mm. */
const CHAMFER = 4;
/** Gaps between measured depths that are offered, widest first. */
const MOST_GAPS = 6;
const SWEPT_CLOCKS = 8;
const SWEPT_DEPTHS = 3;

export interface Candidate {
  readonly hand: AtHand;
  readonly sighting: Sighting;
}

/** Every place for every gauge whose single readings tell something. */
export function places(d: Design, hand: readonly AtHand[]): Candidate[] {
  const depths = depthsBetween(d);
  return hand
    .filter(({ fresh }) => fresh === null)
    .flatMap((one) =>
      depths
        .filter((z) => z >= one.from - 1e-9 && z <= one.to + 1e-9)
        .flatMap((z) =>
          clocksOf(one, d.count).map((theta) => ({
            hand: one,
            sighting: sightingAt(one, theta, z),
          })),
        ),
    );
}

/** Rim and bottom, the measured depths, and the middles of the widest gaps, mm from face A. */
function depthsBetween({ depths, length }: Design): number[] {
  const [rim, bottom] = ends(length);
  const known = [...depths].sort((a, b) => a - b);
  const stops = [rim, ...known.filter((z) => z > rim && z < bottom), bottom];
  const gaps = stops
    .slice(1)
    .map((z, i) => ({ middle: (z + stops[i]!) / 2, wide: z - stops[i]! }))
    .filter(({ wide }) => wide > length / 20)
    .sort((a, b) => b.wide - a.wide)
    .slice(0, MOST_GAPS)
    .map(({ middle }) => middle);
  const measured = known.length <= 2 * MOST_GAPS ? known : [];
  return [...new Set([rim, bottom, ...measured, ...gaps])];
}

/** First and last depth that a gauge gets at, mm. */
function ends(length: number): [number, number] {
  const in_ = Math.min(CHAMFER, length / 8);
  return [in_, length - in_];
}

/** Half hours round the clock, as far as the gauge does not repeat itself. */
function clocksOf({ instrument }: AtHand, count: number): number[] {
  const step = count > FINE_UP_TO ? 2 : 1;
  const turns = instrument === 'two-point' ? 2 : instrument === 'three-leg' ? 3 : 1;
  return Array.from(
    { length: HALF_HOURS / turns / step },
    (_, k) => (k * step * TURN) / HALF_HOURS,
  );
}

function sightingAt(one: AtHand, theta: number, z: number, setup = one.setup): Sighting {
  const { instrument, sd } = one;
  return { row: -1, instrument, theta, z, value: 0, sd, sdStated: false, setup };
}

/** A whole new set-up: eight clock positions at rim, middle and bottom, as deep as the gauge gets. */
export function freshSet(one: AtHand, length: number, setup: number) {
  const [rim, bottom] = ends(length);
  const from = Math.max(rim, one.from);
  const to = Math.min(bottom, one.to);
  const clocks = Array.from({ length: SWEPT_CLOCKS }, (_, k) => (k * TURN) / SWEPT_CLOCKS);
  const depths =
    to > from
      ? Array.from(
          { length: SWEPT_DEPTHS },
          (_, k) => from + ((to - from) * k) / (SWEPT_DEPTHS - 1),
        )
      : [];
  const sightings = depths.flatMap((z) => clocks.map((theta) => sightingAt(one, theta, z, setup)));
  return { clocks, depths, sightings };
}
