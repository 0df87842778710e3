/**
 * The report of a job, as `roundhand report --json` writes it and public/report.schema.json publishes it.
 *
 * Lengths in mm, arrays `[z][theta]`, theta in radians and `clock` in degrees, both clockwise from 12 o'clock seen
 * from face A; deviation and removal per side; sections across. Not known is null.
 */
import * as v from 'valibot';
import { BuildUpSchema } from './buildUpReport.ts';
import { CentresSchema, RuleSchema } from './centresReport.ts';
import { CheckSchema } from './checksReport.ts';
import { FitSchema } from './fitReport.ts';
import { JointSchema, PatternSchema } from './jointReport.ts';
import { OnePinSchema } from './onePinReport.ts';
import { OtherReading } from './otherReport.ts';
import { GrindingSchema, PassSchema } from './passesReport.ts';
import { PinSchema } from './pinsReport.ts';
import { Circles, Cylinders } from './plugsReport.ts';
import { TradeOffSchema } from './tradeOffReport.ts';
import { WayAdviceSchema, WaySchema } from './waysReport.ts';

const Num = v.nullable(v.number());
const Matrix = v.array(v.array(Num));
const Remark = v.strictObject({
  kind: v.picklist(['missing', 'assumed', 'warning', 'finding', 'fault']),
  text: v.string(),
});
const Diameter = v.strictObject({ diameter: Num, clock: Num });

const Section = v.strictObject({
  depth: v.number(),
  readings: v.number(),
  meanDiameter: v.number(),
  least: Diameter,
  greatest: Diameter,
  outOfRound: Num,
  /** Two standard deviations of the mean diameter. */
  giveOrTake: v.number(),
  /** Amplitude per side, clock of the first crest; one standard deviation each. */
  lobes: v.array(
    v.strictObject({
      n: v.number(),
      amplitude: v.number(),
      amplitudeSd: v.number(),
      clock: v.number(),
      clockSd: Num,
    }),
  ),
  circles: Circles,
});

const Shape = v.picklist([
  'straight',
  'taper',
  'bell-at-A',
  'bell-at-B',
  'bell-both',
  'barrel',
  'waist',
  'step',
  'not-told',
]);

const Profile = v.strictObject({
  shape: Shape,
  evidence: Num,
  criterion: v.literal('BIC'),
  candidates: v.array(v.strictObject({ shape: Shape, criterion: v.number() })),
  taper: Num,
  taperSd: Num,
  depthOfShape: v.number(),
  reach: Num,
});

/** Against the axis that the readings were taken from; distances from the middle, per side. */
const BoreAxis = v.strictObject({
  status: v.picklist(['told', 'not-told']),
  why: v.nullable(v.string()),
  instrument: v.nullable(v.picklist(['two-point', 'radius', 'sweep', 'wall'])),
  centers: v.array(
    v.strictObject({ depth: v.number(), x: v.number(), y: v.number(), sd: v.number() }),
  ),
  lean: v.nullable(
    v.strictObject({
      /** mm sideways per mm of depth, towards the clock position as the depth grows. */
      slope: v.number(),
      clock: v.number(),
      sd: v.number(),
      chance: v.number(),
    }),
  ),
  straightness: v.nullable(
    v.strictObject({
      distance: v.number(),
      depth: v.number(),
      clock: v.number(),
      sd: v.number(),
      /** Diameter of the least cylinder that holds all centers. */
      zone: Num,
      chance: v.number(),
    }),
  ),
});

const TurnKind = v.picklist(['same', 'steady', 'at-once']);
/** Clock of the oval's long way, 0 to 180; turn in degrees, positive clockwise. */
const OvalTurn = v.strictObject({
  kind: v.picklist(['same', 'steady', 'at-once', 'not-told']),
  evidence: v.number(),
  criterion: v.literal('BIC'),
  candidates: v.array(v.strictObject({ kind: TurnKind, criterion: v.number() })),
  first: v.strictObject({ clock: v.number(), sd: v.number() }),
  last: v.strictObject({ clock: v.number(), sd: v.number() }),
  turn: v.number(),
  turnSd: v.number(),
  /** First depth that looks turned, where it turns all at once, and its rows with all deeper ones (from 0). */
  fromDepth: Num,
  rows: v.array(v.number()),
  depths: v.array(
    v.strictObject({
      depth: v.number(),
      amplitude: v.number(),
      amplitudeSd: v.number(),
      clock: Num,
      clockSd: Num,
    }),
  ),
});

const Zone = v.strictObject({
  kind: v.picklist(['high', 'low']),
  /** Per side, signed: negative stands proud. */
  peak: v.number(),
  clock: v.number(),
  depth: v.number(),
  giveOrTake: v.number(),
  core: v.strictObject({
    fromClock: v.number(),
    toClock: v.number(),
    top: v.number(),
    bottom: v.number(),
  }),
  feather: v.strictObject({ fromClock: v.number(), toClock: v.number() }),
  allRound: v.boolean(),
  /** Where nothing of the kind stands within the core's stretch; whether there are other such places in it. */
  gaps: v.array(
    v.strictObject({
      fromClock: v.number(),
      toClock: v.number(),
      top: v.number(),
      bottom: v.number(),
      allRound: v.boolean(),
    }),
  ),
  patchy: v.boolean(),
  area: v.number(),
  volume: v.number(),
  words: v.string(),
});

/** Every clock position at every depth, from face A; one of each for a single reading. The best first. */
const NextReading = v.strictObject({
  instrument: v.picklist(['two-point', 'three-leg', 'sweep', 'wall', 'radius']),
  gauge: v.string(),
  clocks: v.array(v.number()),
  depths: v.array(v.number()),
  /** Mean over the removal map of two standard deviations, per side: as it is, and once this is read too. */
  giveOrTake: v.number(),
  giveOrTakeAfter: v.number(),
  words: v.string(),
});

/** Readings are brought to 20 °C (ISO 1) once both stand. */
const Temperature = v.strictObject({
  part: Num,
  gauge: Num,
  unit: v.literal('C'),
  /** mm across that were added to a reading of the nominal size; below zero: taken off. */
  correction: Num,
  /** Two standard deviations of the correction, common to all sizes. */
  giveOrTake: Num,
  /** False: too far from 20 °C, or part and gauge too far apart, to grind by. */
  trusted: v.boolean(),
});

const Survey = v.strictObject({
  name: v.string(),
  status: v.picklist(['ok', 'no-readings', 'no-length', 'failed']),
  sections: v.array(Section),
  cylinders: v.nullable(Cylinders),
  profile: v.nullable(Profile),
  axis: v.nullable(BoreAxis),
  ovalTurn: v.nullable(OvalTurn),
  patterns: v.array(PatternSchema),
  /** What of the pattern cannot be told, in words. */
  patternsOpen: v.array(v.string()),
  /** Null where none is given. */
  temperature: v.nullable(Temperature),
  checks: v.array(CheckSchema),
  blindSpots: v.array(Remark),
  nextReadings: v.array(NextReading),
  /** Sweeps and wall readings whose set-up is not made yet, as a whole. */
  nextSetups: v.array(NextReading),
  surface: v.nullable(
    v.strictObject({
      theta: v.array(v.number()),
      z: v.array(v.number()),
      mean: Matrix,
      sd: Matrix,
      sdSeen: Matrix,
      seenLobes: v.array(v.number()),
      smoothness: v.strictObject({
        lobe: v.number(),
        size: v.number(),
        length: v.number(),
        local: v.number(),
        noise: v.number(),
        /** Wear on the stated side; left out where none is stated. */
        worn: v.optional(v.number()),
        fixed: v.boolean(),
        /** What the job states of it instead of having it learned; left out where it states nothing. */
        given: v.optional(
          v.strictObject({ length: v.optional(v.number()), local: v.optional(v.number()) }),
        ),
        /** Places taken to be gouged or dented; `across`: there, or straight across. Left out where none is. */
        spots: v.optional(
          v.array(
            v.strictObject({
              clock: v.number(),
              depth: v.number(),
              sd: v.number(),
              across: v.boolean(),
            }),
          ),
        ),
      }),
    }),
  ),
  target: v.nullable(
    v.strictObject({
      diameter: v.number(),
      center: v.tuple([v.number(), v.number()]),
      /** mm per mm of depth. */
      lean: v.tuple([v.number(), v.number()]),
      centreRule: RuleSchema,
      assumed: v.nullable(v.string()),
      ...CentresSchema.entries,
    }),
  ),
  deviation: v.nullable(Matrix),
  removal: v.nullable(
    v.strictObject({
      likely: Matrix,
      sure: Matrix,
      /** Metal that may stand there, at two standard deviations. */
      possible: Matrix,
      sd: Matrix,
      volume: v.number(),
      mass: v.number(),
      sureMass: v.number(),
      possibleMass: v.number(),
    }),
  ),
  /** Null where the readings show the side that is worn, or nothing is out of round. */
  otherReading: v.nullable(OtherReading),
  /** Null without a target. */
  tradeOff: v.nullable(TradeOffSchema),
  zones: v.array(Zone),
  /** Ways that move or add metal. Null without a target. */
  buildUp: v.nullable(BuildUpSchema),
  /** None without a target. */
  ways: v.array(WaySchema),
  wayAdvice: v.nullable(WayAdviceSchema),
  passes: v.array(PassSchema),
  /** What the passes are ground with, what they leave, and what the pass before took off; null without a target. */
  grinding: v.nullable(GrindingSchema),
  /** Null without a target. */
  fit: v.nullable(FitSchema),
  notes: v.array(Remark),
});

const KnownLength = v.strictObject({ mm: Num, from: v.picklist(['typed', 'default', 'missing']) });

export const Report = v.strictObject({
  format: v.literal('roundhand-report'),
  version: v.literal(1),
  units: v.picklist(['in', 'mm']),
  bores: v.array(
    v.strictObject({
      name: v.string(),
      nominal: KnownLength,
      length: KnownLength,
      bushingOutside: KnownLength,
      pressFit: KnownLength,
      surveys: v.array(Survey),
    }),
  ),
  /** Pins and shafts, each with its plan. */
  pins: v.array(PinSchema),
  /** Every part of the joint side by side, of the whole job. */
  joint: JointSchema,
  /** Several bores on one pin; null where the job has but one bore. */
  onePin: v.nullable(OnePinSchema),
});
export type Report = v.InferOutput<typeof Report>;
export type SurveyReport = Report['bores'][number]['surveys'][number];
