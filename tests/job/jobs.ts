/** Jobs for the tests: one by hand, and any at all. */
import fc from 'fast-check';
import { newJob, setCell } from '../../src/job/edits.ts';
import type {
  Bushing,
  Feature,
  Gauge,
  Issued,
  Job,
  Keepout,
  Land,
  Reading,
  Safety,
  Survey,
  Typed,
} from '../../src/job/schema.ts';

/** A 2.5 in bore, 3 in long, six pairs at three depths, with one column of readings. */
export function smallJob(): Job {
  const job = newJob({
    units: 'in',
    gauge: 'telescoping',
    length: '3',
    bushingOutside: '2.5',
    depths: ['0.25', '1.5', '2.75'],
  });
  return ['2.5030', '2.5010', '2.5005'].reduce(
    (next, values, depth) => setCell(next, 'f1', 's1', { depth, clock: 0, values }),
    job,
  );
}

const word = fc.string({ maxLength: 12 });
const typed: fc.Arbitrary<Typed> = fc.record({
  text: fc.oneof(fc.string({ maxLength: 40 }), fc.constantFrom('2 1/2', '+3', '63.5', '')),
  unit: fc.constantFrom('in', 'thou', 'mm'),
});
const clock = fc.constantFrom('12', '4:30', '135d', '1-7', 'noon', '');
const face = fc.constantFrom('A' as const, 'B' as const);
/** -0 is left out: JSON has no sign on a zero. */
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);

/** The optional keys may be missing, and are never there as undefined. */
function some<T extends object>(
  all: { [K in keyof T]-?: fc.Arbitrary<Exclude<T[K], undefined>> },
  must: (keyof T)[],
) {
  return fc.record(all, { requiredKeys: must as never[] }) as unknown as fc.Arbitrary<T>;
}

function numbered<T extends { id: string }>(
  prefix: string,
  one: fc.Arbitrary<T>,
  maxLength: number,
) {
  return fc
    .array(one, { maxLength })
    .map((list) => list.map((entry, index) => ({ ...entry, id: `${prefix}${index + 1}` })));
}

const gauge = some<Gauge>(
  {
    id: fc.constant('g'),
    kind: fc.constantFrom('two-point', 'three-leg', 'sweep', 'wall', 'radius'),
    type: fc.constantFrom('caliper', 'indicator'),
    name: word,
    resolution: typed,
    repeatability: typed,
    reach: typed,
    zeroedAt: typed,
    needle: fc.constantFrom('larger', 'smaller'),
  },
  ['id', 'kind', 'name'],
);
const reading = some<Reading>(
  {
    id: fc.constant('r'),
    face,
    depth: typed,
    clock,
    gauge: fc.constant('g1'),
    setup: fc.constant('u1'),
    value: typed,
    sd: typed,
    note: word,
    leftOut: fc.boolean(),
  },
  ['id', 'face', 'depth', 'clock', 'gauge', 'value'],
);
const survey = some<Survey>(
  {
    id: fc.constant('s'),
    name: word,
    stage: fc.constantFrom('as-found', 'after-squeezing', 'pass', 'after-build-up', 'fitted'),
    when: word,
    plan: fc.record({
      clocks: fc.array(clock, { maxLength: 6 }),
      depths: fc.array(typed, { maxLength: 4 }),
      face,
      gauge: fc.constant('g1'),
    }),
    zeroAfter: fc.constant([{ gauge: 'g1', shown: { text: '0', unit: 'in' as const } }]),
    temperature: fc.record({ part: word, unit: fc.constantFrom('C' as const, 'F' as const) }),
    wornSide: clock,
    setups: fc.constant([{ id: 'u1', gauge: 'g1', name: 'one', face: 'A' as const }]),
    readings: numbered('r', reading, 6),
    note: word,
  },
  ['id', 'name', 'stage', 'plan', 'setups', 'readings'],
);
const bushing = some<Bushing>(
  {
    id: fc.constant('b'),
    name: word,
    seat: fc.record({ face, from: typed, standOut: typed }, { requiredKeys: ['face'] }) as never,
    outside: fc.array(typed, { maxLength: 3 }),
    inside: typed,
    length: typed,
    leadChamfer: typed,
    material: word,
  },
  ['id', 'name', 'seat', 'outside'],
);
const keepout = some<Keepout>(
  {
    id: fc.constant('k'),
    kind: fc.constantFrom('grease-hole', 'chamfer', 'groove', 'thread', 'face', 'other'),
    name: word,
    guarded: fc.boolean(),
    face,
    from: typed,
    to: typed,
    clock,
    width: typed,
  },
  ['id', 'kind', 'face', 'from', 'to'],
);
const land = some<Land>(
  {
    id: fc.constant('l'),
    name: word,
    face,
    from: typed,
    to: typed,
    runsIn: fc.constant('f1'),
  },
  ['id', 'name', 'face', 'from', 'to'],
);
const issued: fc.Arbitrary<Issued> = fc
  .tuple(fc.array(number, { maxLength: 3 }), fc.array(number, { maxLength: 3 }), number)
  .map(([theta, z, targetDiameter]) => ({
    id: 'i',
    when: '2026-11-25',
    survey: 's1',
    title: 'Pass 1',
    targetDiameter,
    theta,
    z,
    removal: z.map((depth) => theta.map(() => depth)),
    words: ['take off'],
  }));
const feature = some<Feature>(
  {
    id: fc.constant('f'),
    kind: fc.constantFrom('bore', 'pin', 'bushing-inside', 'bushing-outside'),
    name: word,
    nominal: typed,
    length: typed,
    boss: fc.record({ outside: typed, material: word }, { requiredKeys: [] }) as never,
    bushings: numbered('b', bushing, 2),
    pin: fc.record({ diameters: fc.array(typed, { maxLength: 9 }) }),
    wanted: fc.record({ pressFit: typed, clearance: typed }, { requiredKeys: [] }) as never,
    keepouts: numbered('k', keepout, 2),
    lands: numbered('l', land, 2),
    rim: fc.array(fc.record({ face, clock, below: typed }), { maxLength: 3 }),
    bar: fc.array(fc.record({ face, clock, value: typed }), { maxLength: 3 }),
    sideGap: fc.constant({
      between: [{ text: '121.5', unit: 'mm' as const }],
      parts: [
        {
          name: 'Thrust washer',
          thickness: { text: '3', unit: 'mm' as const },
          face: 'A' as const,
          when: 'both' as const,
        },
      ],
      most: { text: '1.0', unit: 'mm' as const },
    }),
    place: fc.record({ station: typed, x: typed }, { requiredKeys: ['station'] }) as never,
    load: clock,
    surveys: numbered('s', survey, 3),
    decisions: fc.constant({
      way: 'grind' as const,
      centre: { rule: 'free' as const },
      between: { smooth: { text: '20', unit: 'mm' as const } },
      squeeze: { heat: { text: '1100', unit: 'F' as const }, yield: '300' },
      shim: { round: { text: '51', unit: 'mm' as const } },
      weld: { over: 'low' as const, electrode: '4.0' as const, carbon: '0.42' },
      fit: {
        frictionLow: '0.06',
        roughnessLoss: { text: '0.004', unit: 'mm' as const },
        done: ['stop'],
      },
      pin: { way: 'turn-down' as const, smaller: { text: '49', unit: 'mm' as const } },
    }),
    issued: numbered('i', issued, 2),
    note: word,
  },
  ['id', 'kind', 'name', 'bushings', 'wanted', 'keepouts', 'surveys', 'decisions', 'issued'],
);
const safety = some<Safety>(
  {
    openAndClean: fc.constantFrom('yes', 'no', 'unknown'),
    sealsAndPlatingOut: fc.constantFrom('yes', 'no', 'unknown'),
    metal: fc.constantFrom('plain-steel', 'known-alloy', 'iron', 'unknown'),
    carriesPeople: fc.constantFrom('yes', 'no', 'unknown'),
    signedOffBy: word,
  },
  [],
);

/** Any well-formed job, its texts sensible or not. */
export const anyJob: fc.Arbitrary<Job> = some<Job>(
  {
    format: fc.constant('roundhand-job' as const),
    version: fc.constant(1 as const),
    id: fc.constant('job1'),
    title: word,
    machine: word,
    place: word,
    made: word,
    units: fc.constantFrom('in', 'mm'),
    gauges: numbered('g', gauge, 3).filter((list) => list.length > 0),
    features: numbered('f', feature, 3).filter((list) => list.length > 0),
    safety,
    materials: fc.constant([{ name: 'Pot metal', elastic: '80', yield: '100' }]),
    barBy: fc.constant('larger-farther' as const),
    note: word,
  },
  ['format', 'version', 'id', 'title', 'units', 'gauges', 'features', 'safety'],
);
export const anySafety = safety;
export const anyTyped = typed;
