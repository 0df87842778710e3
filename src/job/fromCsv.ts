/** A job made from the rows of a CSV, with the sizes that the rows do not say. */
import { textOrNone, typedOrNone, withKey } from './change.ts';
import { readClock } from './clock.ts';
import type { CsvReading, ReadingsCsv } from './csv.ts';
import { gaugeKind } from './gauges.ts';
import { stageOfName } from './plan.ts';
import {
  type Feature,
  type Gauge,
  type GaugeType,
  type Instrument,
  JOB_FORMAT,
  JOB_VERSION,
  type Job,
  MOST,
  type Reading,
  type Setup,
  type Survey,
  type Typed,
  type Units,
} from './schema.ts';
import { lengthMm } from './units.ts';

/** As typed, in `units` where the text does not say. */
export interface CsvSizes {
  readonly units: Units;
  readonly nominal: string;
  readonly length: string;
  readonly bushing?: string | undefined;
  readonly pressFit?: string | undefined;
  readonly title?: string;
  /** Of part and gauge, for every survey. */
  readonly temperature?: Survey['temperature'] | undefined;
}

const TYPE_OF: Readonly<Record<Instrument, GaugeType>> = {
  'two-point': 'telescoping',
  'three-leg': 'three-leg',
  sweep: 'indicator',
  wall: 'wall-caliper',
  radius: 'centred-pin',
};

/** Larger grids of places are a scan, not a table to type into. */
const MOST_PLANNED = 40;

type Rows = Extract<ReadingsCsv, { ok: true }>;

/** A job of one bore; its surveys in the order in which the rows first name them. */
export function jobFromCsv({ readings }: Rows, sizes: CsvSizes): Job {
  const gauges = gaugesOf([...new Set(readings.map((row) => TYPE_OF[row.instrument]))]);
  return jobOfSurveys(gauges, readingSurveys(readings, gauges, sizes.units), sizes);
}

/** A job of one bore with these surveys. */
export function jobOfSurveys(
  gauges: readonly Gauge[],
  surveys: readonly Survey[],
  sizes: CsvSizes,
): Job {
  const typed = (text: string | undefined) =>
    typedOrNone(text === undefined ? undefined : { text, unit: sizes.units });
  const bushing = typed(sizes.bushing);
  const pressFit = typed(sizes.pressFit);
  let feature: Feature = {
    id: 'f1',
    kind: 'bore',
    name: 'Bore',
    bushings:
      bushing === undefined
        ? []
        : [{ id: 'b1', name: 'Bushing', seat: { face: 'A' }, outside: [bushing] }],
    wanted: pressFit === undefined ? {} : { pressFit },
    keepouts: [],
    surveys: surveys.map((survey) => withKey(survey, 'temperature', sizes.temperature)),
    decisions: {},
    issued: [],
  };
  feature = withKey(feature, 'nominal', typed(sizes.nominal));
  feature = withKey(feature, 'length', typed(sizes.length));
  return {
    format: JOB_FORMAT,
    version: JOB_VERSION,
    id: 'job1',
    title: (sizes.title ?? 'Readings').slice(0, MOST.name),
    units: sizes.units,
    gauges: [...gauges],
    features: [feature],
    safety: {},
  };
}

/** Generic gauges, g1 on. */
export function gaugesOf(types: readonly GaugeType[]): Gauge[] {
  return types.map((type, index) => {
    const { kind, name } = gaugeKind(type);
    return { id: `g${index + 1}`, kind, type, name };
  });
}

function readingSurveys(
  rows: readonly CsvReading[],
  gauges: readonly Gauge[],
  units: Units,
): Survey[] {
  const groups = new Map<string, CsvReading[]>();
  for (const row of rows) {
    const group = groups.get(row.survey);
    if (group === undefined) groups.set(row.survey, [row]);
    else group.push(row);
  }
  let readings = 0;
  return [...groups].map(([name, group], index) => {
    const setups = setupsOf(group, gauges);
    const survey: Survey = {
      id: `s${index + 1}`,
      name: name || 'As found',
      stage: stageOfName(name, index === 0),
      plan: planOf(group, gauges, units),
      setups,
      readings: group.map((row) => readingOf(row, `r${++readings}`, gauges, setups, units)),
    };
    return survey;
  });
}

function gaugeFor(row: CsvReading, gauges: readonly Gauge[]): Gauge {
  return gauges.find((one) => one.kind === row.instrument)!;
}

/** Sweeps and walls share a set-up by name; those of no name share one. */
function setupsOf(rows: readonly CsvReading[], gauges: readonly Gauge[]): Setup[] {
  const setups: Setup[] = [];
  for (const row of rows) {
    if (row.instrument !== 'sweep' && row.instrument !== 'wall') continue;
    const gauge = gaugeFor(row, gauges).id;
    const name = row.setup || 'Set-up';
    if (setups.some((one) => one.gauge === gauge && one.name === name)) continue;
    setups.push({ id: `u${setups.length + 1}`, gauge, name, face: row.face });
  }
  return setups;
}

function readingOf(
  row: CsvReading,
  id: string,
  gauges: readonly Gauge[],
  setups: readonly Setup[],
  units: Units,
): Reading {
  const unit = row.unit || units;
  const gauge = gaugeFor(row, gauges).id;
  const setup = setups.find((one) => one.gauge === gauge && one.name === (row.setup || 'Set-up'));
  let reading: Reading = {
    id,
    face: row.face,
    depth: { text: row.depth, unit },
    clock: row.clock,
    gauge,
    value: { text: row.reading, unit },
  };
  reading = withKey(reading, 'setup', setup?.id);
  reading = withKey(reading, 'sd', typedOrNone({ text: row.sd, unit }));
  return withKey(reading, 'note', textOrNone(row.note, MOST.note));
}

function planOf(
  rows: readonly CsvReading[],
  gauges: readonly Gauge[],
  units: Units,
): Survey['plan'] {
  const first = rows[0]!;
  const own = rows.filter((row) => row.instrument === first.instrument && row.face === first.face);
  const depths = distinct(
    own,
    (row): Typed => ({ text: row.depth, unit: row.unit || units }),
    (typed) => lengthMm(typed),
  );
  const clocks = distinct(
    own,
    (row) => row.clock,
    (clock) => {
      const read = readClock(clock);
      return read.ok ? read.theta : Number.NaN;
    },
  );
  const table = depths.length <= MOST_PLANNED && clocks.length <= MOST_PLANNED;
  const gauge = gaugeFor(first, gauges).id;
  return { clocks: table ? clocks : [], depths: table ? depths : [], face: first.face, gauge };
}

/** One of each, in order of what it comes to. */
function distinct<R, T>(rows: readonly R[], take: (row: R) => T, measure: (one: T) => number): T[] {
  const found = new Map<string, T>();
  for (const row of rows) {
    const one = take(row);
    const key = measure(one).toFixed(6);
    if (!found.has(key)) found.set(key, one);
  }
  return [...found.values()].sort((a, b) => measure(a) - measure(b));
}
