/** What a gauge would show of a made-up bore: signed figures in the map's units, and what it can and cannot tell. */
import { hourText, pairText } from '../job/clock.ts';
import { formatDepth } from '../job/units.ts';
import { MAP_UNIT, MAP_UNIT_NAME, type Units } from './steps.ts';

type Shown = 'two-point' | 'three-leg' | 'sweep' | 'wall';

/** mm; rows are depths, columns clock positions. See `practice/patternReadings.ts`. */
interface Readings {
  readonly instrument: Shown;
  readonly thetas: readonly number[];
  readonly depths: readonly number[];
  readonly values: readonly (readonly number[])[];
}

/** Per side, mm: what there is to be seen. See there as well. */
interface ToBeSeen {
  readonly round: number;
  readonly along: number;
  readonly sides: number;
  readonly size: number;
}

export interface GaugeTable {
  readonly gauge: string;
  /** What its figures count, with the unit. */
  readonly counts: string;
  readonly heads: readonly string[];
  readonly rows: readonly { readonly depth: string; readonly cells: readonly string[] }[];
  readonly tells: string;
}

const NAMES: Readonly<Record<Shown, string>> = {
  'two-point': 'Two-point: telescoping gauge, dial bore gauge, inside caliper',
  'three-leg': 'Three-leg inside micrometer',
  sweep: 'Indicator swept from a centred spindle',
  wall: 'Wall between bore and boss',
};
const COUNTS: Readonly<Record<Shown, string>> = {
  'two-point': 'over the new size, across',
  'three-leg': 'over the new size, across, at each turn of the gauge',
  sweep: 'over where the needle stood at first, per side',
  wall: 'over the new wall, per side; minus is thinner',
};
/** Less than this share of what is there is as good as nothing. */
const HARDLY = 0.12;
/** Less than this is what the arithmetic of a tilted touch leaves. */
const AS_GOOD_AS_NONE = 0.02;

export function gaugeTable(readings: Readings, there: ToBeSeen, units: Units): GaugeTable {
  const { instrument, thetas, depths, values } = readings;
  const pairs = instrument === 'two-point';
  const unit = MAP_UNIT[units];
  const largest = Math.max(...values.flat().map(Math.abs)) / unit;
  const digits = largest < 20 ? 1 : 0;
  return {
    gauge: NAMES[instrument],
    counts: `${MAP_UNIT_NAME[units]} ${COUNTS[instrument]}`,
    heads: thetas.map((theta) => (pairs ? pairText(theta) : hourText(theta))),
    rows: values.map((row, i) => ({
      depth: formatDepth(depths[i]!, units),
      cells: row.map((mm) => signed(mm / unit, digits)),
    })),
    tells: tellsOf(readings, there),
  };
}

function signed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  if (Number(text) === 0) return text;
  return `${value < 0 ? '−' : '+'}${text}`;
}

const spread = (row: readonly number[]) => Math.max(...row) - Math.min(...row);

/** What it shows of it, what it cannot, in the order of what matters to the eye. */
function tellsOf({ instrument, values }: Readings, there: ToBeSeen): string {
  const across = instrument === 'two-point' || instrument === 'three-leg' ? 2 : 1;
  const most = Math.max(there.round, there.along, Math.abs(there.size));
  if (!(most > 0)) return 'All as new: nothing is wrong inside this bore.';
  const isRound = there.round <= HARDLY * most;
  const round = Math.max(...values.map(spread)) / across;
  const means = values.map((row) => row.reduce((sum, mm) => sum + mm, 0) / row.length);
  const along = spread(means) / across;
  const said: string[] = [];
  if (!isRound && round <= HARDLY * there.round) {
    const alike = round <= AS_GOOD_AS_NONE * there.round ? 'All' : 'Nearly all';
    said.push(`${alike} the same round the clock: this gauge cannot see that it is out of round.`);
  } else if (!isRound) said.push('It shows round the clock.');
  if (there.along > HARDLY * most) {
    const shows = along > HARDLY * there.along;
    said.push(shows ? 'It shows along the depth.' : 'It does not show along the depth.');
  }
  if (isRound && there.along <= HARDLY * most) {
    said.push(
      instrument === 'sweep'
        ? 'The needle stands still: it shows no size.'
        : 'The same everywhere; only against the new size does it show.',
    );
  }
  if (instrument === 'two-point' && round > HARDLY * there.round && there.sides > HARDLY * most) {
    said.push('Which side it is, it cannot tell.');
  }
  if (instrument === 'wall') said.push('As true as the boss is round outside.');
  return said.join(' ');
}
