/**
 * The saved job: its shape, and nothing else.
 *
 * Everything a person typed is stored as typed (text and unit) and is turned into millimetres once, by
 * `units.ts`, when a job is evaluated. Nothing computed is stored, except what was issued to the bench.
 */
import * as v from 'valibot';
import { BarBy, BarReading } from './alignSchema.ts';
import { FitFigures } from './fitSchema.ts';
import { OwnMaterial } from './materialSchema.ts';
import { Shim, Squeeze, Weld } from './mendingSchema.ts';
import { Land, OfPin } from './pinSchema.ts';
import { SideGap } from './sideGapSchema.ts';
import { Face, Id, MOST, Name, Typed, text } from './typed.ts';

export { SteelPart } from './mendingSchema.ts';
export { Land } from './pinSchema.ts';
export { Face, MOST, Typed, Unit } from './typed.ts';

export const JOB_FORMAT = 'roundhand-job';
export const JOB_VERSION = 1;

const Note = text(MOST.note);
/** JSON can spell 1e999, which is read as infinity and could not be written again. */
const Finite = v.pipe(v.number(), v.finite());

/** Clock position as typed: hours `4:30`, or degrees with a `d`, `135d`. Face A's clock unless a face says B. */
const Clock = text(MOST.clock);

export const Instrument = v.picklist(['two-point', 'three-leg', 'sweep', 'wall', 'radius']);
export type Instrument = v.InferOutput<typeof Instrument>;

/** The generic gauges of the trade, whose typical figures stand where a gauge's own are left out. */
export const GaugeType = v.picklist([
  'caliper',
  'telescoping',
  'stick',
  'dial-bore',
  'outside-micrometer',
  'three-leg',
  'indicator',
  'wall-caliper',
  'centred-pin',
  'between-centres',
  'points',
]);
export type GaugeType = v.InferOutput<typeof GaugeType>;

/** A gauge at hand; figures left out are its type's typical ones, or its kind's where no type is given. */
export const Gauge = v.strictObject({
  id: Id,
  kind: Instrument,
  type: v.optional(GaugeType),
  name: Name,
  resolution: v.optional(Typed),
  /** One standard deviation of a reading repeated at one place. */
  repeatability: v.optional(Typed),
  /** How deep from its face it gets. */
  reach: v.optional(Typed),
  /** Size at which a comparator was zeroed. */
  zeroedAt: v.optional(Typed),
  /** What a needle turning clockwise means. */
  needle: v.optional(v.picklist(['larger', 'smaller'])),
});
export type Gauge = v.InferOutput<typeof Gauge>;

/** What several readings share: a spindle's place and lean (sweep), or a boss (wall thickness). */
export const Setup = v.strictObject({
  id: Id,
  gauge: Id,
  name: Name,
  face: Face,
  /** How far from square or concentric it may be over the bore's length, 1 standard deviation. */
  lean: v.optional(Typed),
  offset: v.optional(Typed),
  /** How round the boss is whose wall is measured, per side, 1 standard deviation. */
  roundness: v.optional(Typed),
  /** True where nothing is known of how true the boss is outside. */
  notKnown: v.optional(v.boolean()),
  /** True where the stylus was set anew at each depth. */
  resetEachDepth: v.optional(v.boolean()),
});
export type Setup = v.InferOutput<typeof Setup>;

export const Reading = v.strictObject({
  id: Id,
  face: Face,
  depth: Typed,
  clock: Clock,
  gauge: Id,
  setup: v.optional(Id),
  value: Typed,
  /** One standard deviation of this reading, where it is not the gauge's. */
  sd: v.optional(Typed),
  note: v.optional(Note),
  /** Left out of the fit by choice; it stays in the table, struck through. */
  leftOut: v.optional(v.boolean()),
});
export type Reading = v.InferOutput<typeof Reading>;

export const Stage = v.picklist([
  'as-found',
  'after-squeezing',
  'pass',
  'after-build-up',
  'fitted',
]);
export type Stage = v.InferOutput<typeof Stage>;

/** All readings taken at one stage of the job. */
export const Survey = v.strictObject({
  id: Id,
  name: Name,
  stage: Stage,
  when: v.optional(text(40)),
  /** The places that the table offers, before anything is typed into them. */
  plan: v.strictObject({
    clocks: v.pipe(v.array(Clock), v.maxLength(MOST.clocks)),
    depths: v.pipe(v.array(Typed), v.maxLength(MOST.depths)),
    face: Face,
    gauge: Id,
    /** Set-up of that gauge that the next readings belong to; left out: its last. */
    setup: v.optional(Id),
  }),
  /** What comparators showed at the end, back on the size at which they were zeroed. */
  zeroAfter: v.optional(v.array(v.strictObject({ gauge: Id, shown: Typed }))),
  temperature: v.optional(
    v.strictObject({
      part: v.optional(text(20)),
      gauge: v.optional(text(20)),
      unit: v.picklist(['C', 'F']),
    }),
  ),
  /** The repairer's statement that one side wore, at this clock position. */
  wornSide: v.optional(Clock),
  setups: v.array(Setup),
  readings: v.pipe(v.array(Reading), v.maxLength(MOST.readings)),
  note: v.optional(Note),
});
export type Survey = v.InferOutput<typeof Survey>;

export const Bushing = v.strictObject({
  id: Id,
  name: Name,
  seat: v.strictObject({
    face: Face,
    /** Depths from that face; left out: from the face to the bushing's length, or the bore's. */
    from: v.optional(Typed),
    to: v.optional(Typed),
    /** How far it stands out of the face; 0 or left out is flush, negative is below. */
    standOut: v.optional(Typed),
  }),
  /** Outside diameter as measured, at up to three places; the mean counts. */
  outside: v.pipe(v.array(Typed), v.maxLength(MOST.outside)),
  inside: v.optional(Typed),
  length: v.optional(Typed),
  leadChamfer: v.optional(Typed),
  material: v.optional(Name),
});
export type Bushing = v.InferOutput<typeof Bushing>;

/** Where not to measure or to grind: depths from a face, and a clock range (left out: all round). */
export const Keepout = v.strictObject({
  id: Id,
  kind: v.picklist(['grease-hole', 'chamfer', 'groove', 'thread', 'face', 'other']),
  name: v.optional(Name),
  /** Of a pin: covered or plugged against weld and spatter; left out: not yet. */
  guarded: v.optional(v.boolean()),
  face: Face,
  from: Typed,
  to: Typed,
  clock: v.optional(Clock),
  /** Width round the bore, for a hole or a short groove. */
  width: v.optional(Typed),
});
export type Keepout = v.InferOutput<typeof Keepout>;

/** Figures of the ways of mending; one that is left out is the trade's starting value. Shares in per cent. */
export const WayFigure = v.picklist([
  'oversizeStep',
  'sleeveWall',
  'weldAllowance',
  'squeezeUnder',
  'heatLeast',
  'heatMost',
  'leastPress',
  'acceptLow',
  'squeezeLow',
  'oversizeLow',
  'shimLeast',
  'turnDownMost',
]);
export type WayFigure = v.InferOutput<typeof WayFigure>;
export const WayShare = v.picklist(['acceptShare', 'wallShare', 'offShare']);
export type WayShare = v.InferOutput<typeof WayShare>;

/** Rigid wheels (drum, stone, burr, file) bridge hollows; a flap wheel, a strip and a scraper follow the wall. */
export const ToolKind = v.picklist([
  'drum',
  'flap-wheel',
  'stone',
  'strip',
  'file',
  'scraper',
  'burr',
]);
export type ToolKind = v.InferOutput<typeof ToolKind>;
/** One place of a rim face; below flush is positive. */
export const FaceReading = v.strictObject({ face: Face, clock: Clock, below: Typed });
export type FaceReading = v.InferOutput<typeof FaceReading>;

export const Decisions = v.strictObject({
  way: v.optional(
    v.picklist(['grind', 'squeeze', 'shim', 'oversize', 'sleeve', 'weld', 'leave', 'undecided']),
  ),
  centre: v.optional(
    v.strictObject({
      rule: v.picklist(['free', 'least-cut', 'keep', 'partner', 'by-hand']),
      /** by-hand: the axis at face A (x to 3 o'clock, y to 12) and its run-off over the length. */
      x: v.optional(Typed),
      y: v.optional(Typed),
      leanX: v.optional(Typed),
      leanY: v.optional(Typed),
      /** keep: depths of the metal known to be unworn. */
      unwornFrom: v.optional(Typed),
      unwornTo: v.optional(Typed),
    }),
  ),
  /** Target diameter where it is not bushing outside diameter less press fit. */
  target: v.optional(Typed),
  /** How the shape between the readings is filled in; what is left out is learned from the readings. */
  between: v.optional(
    v.strictObject({
      /** Depth over which the shape keeps its likeness. */
      smooth: v.optional(Typed),
      /** Local dents to be expected, per side, 1 standard deviation. */
      dents: v.optional(Typed),
    }),
  ),
  /** A tool of the shop; what is stated under `grinding` goes before its figures. */
  tool: v.optional(Id),
  wayFigures: v.optional(v.partial(v.strictObject(v.entriesFromList(WayFigure.options, Typed)))),
  wayShares: v.optional(
    v.partial(v.strictObject(v.entriesFromList(WayShare.options, text(MOST.clock)))),
  ),
  /** Whether cracks were looked for; left out: not yet. */
  crack: v.optional(v.picklist(['none', 'seen'])),
  /** What it is ground with; figures left out are the usual ones of such a tool in such a bore. */
  grinding: v.optional(
    v.strictObject({
      kind: v.optional(ToolKind),
      /** Across, and how much of it lies along the bore. */
      diameter: v.optional(Typed),
      width: v.optional(Typed),
      /** The most that one pass takes, per side. */
      bite: v.optional(Typed),
      /** How steeply a ground place may run out: mm a mm where typed in millimetres, else the length an inch. */
      slope: v.optional(Typed),
    }),
  ),
  /** Figures of the ways that add metal or move it; what is left out is the usual figure, shown and editable. */
  squeeze: v.optional(Squeeze),
  shim: v.optional(Shim),
  weld: v.optional(Weld),
  /** Of a pin or shaft. Its finished size is `target`. */
  pin: v.optional(OfPin),
  /** Of the fit of a bore's bushings. */
  fit: v.optional(FitFigures),
});
export type Decisions = v.InferOutput<typeof Decisions>;

/** A pass as it was given to the bench, frozen: millimetres and radians, `removal[z][theta]` per side. */
export const Issued = v.strictObject({
  id: Id,
  when: text(40),
  survey: Id,
  title: Name,
  targetDiameter: Finite,
  theta: v.array(Finite),
  z: v.array(Finite),
  removal: v.array(v.array(Finite)),
  /** Zones, and what holds it back: places to feel first may be many. */
  words: v.array(text(4000)),
  tool: v.optional(v.strictObject({ radius: Finite, width: Finite, bite: Finite })),
});
export type Issued = v.InferOutput<typeof Issued>;

/** One measured round feature, inside or outside, with its surveys. */
export const Feature = v.strictObject({
  id: Id,
  kind: v.picklist(['bore', 'pin', 'bushing-inside', 'bushing-outside']),
  name: Name,
  /** New size across. Left out: the bushing's outside diameter stands in for it. */
  nominal: v.optional(Typed),
  length: v.optional(Typed),
  boss: v.optional(v.strictObject({ outside: v.optional(Typed), material: v.optional(Name) })),
  bushings: v.pipe(v.array(Bushing), v.maxLength(MOST.bushings)),
  /** Pin that runs here, as measured, at up to nine places. */
  pin: v.optional(
    v.strictObject({ diameters: v.pipe(v.array(Typed), v.maxLength(MOST.pinPlaces)) }),
  ),
  /** Left out: the default of the trade, shown and editable. */
  wanted: v.strictObject({ pressFit: v.optional(Typed), clearance: v.optional(Typed) }),
  keepouts: v.array(Keepout),
  /** Of a pin: the stretches that run; left out: its whole length does. */
  lands: v.optional(v.pipe(v.array(Land), v.maxLength(MOST.lands))),
  /** How far the face lies below flush, by clock position. */
  rim: v.optional(v.pipe(v.array(FaceReading), v.maxLength(MOST.rim))),
  /** Where this feature sits on the pin's axis: along it, beside it (x to 3, y to 12), and its run-off. */
  place: v.optional(
    v.strictObject({
      station: Typed,
      x: v.optional(Typed),
      y: v.optional(Typed),
      leanX: v.optional(Typed),
      leanY: v.optional(Typed),
    }),
  ),
  /** Read from a straight bar through all bores of the pin. */
  bar: v.optional(v.pipe(v.array(BarReading), v.maxLength(MOST.bar))),
  /** The room beside this boss between two ears. */
  sideGap: v.optional(SideGap),
  /** Clock position towards which the load pulls. */
  load: v.optional(Clock),
  surveys: v.array(Survey),
  decisions: Decisions,
  issued: v.array(Issued),
  note: v.optional(Note),
});
export type Feature = v.InferOutput<typeof Feature>;

const Answer = v.picklist(['yes', 'no', 'unknown']);
export type Answer = v.InferOutput<typeof Answer>;

/** What must be known before any flame or weld. A question left out is not answered yet. */
export const Safety = v.strictObject({
  /** Drained, open to the air, nothing closed or greasy behind the bore. */
  openAndClean: v.optional(Answer),
  /** Seals, plastics and any plating or galvanising out of the heat. */
  sealsAndPlatingOut: v.optional(Answer),
  metal: v.optional(v.picklist(['plain-steel', 'known-alloy', 'iron', 'unknown'])),
  carriesPeople: v.optional(Answer),
  /** Who, qualified, signed for work on a part that carries people. */
  signedOffBy: v.optional(Name),
});
export type Safety = v.InferOutput<typeof Safety>;

export const Job = v.strictObject({
  format: v.literal(JOB_FORMAT),
  version: v.literal(JOB_VERSION),
  id: Id,
  title: Name,
  machine: v.optional(Name),
  place: v.optional(Name),
  made: v.optional(text(40)),
  /** What new numbers are typed in and results are shown in. */
  units: v.picklist(['in', 'mm']),
  gauges: v.pipe(v.array(Gauge), v.minLength(1)),
  features: v.pipe(v.array(Feature), v.minLength(1), v.maxLength(MOST.features)),
  /** Metals of one's own, and figures of the usual ones that are not the usual figures. */
  materials: v.optional(v.pipe(v.array(OwnMaterial), v.maxLength(MOST.materials))),
  safety: Safety,
  /** How bores were read from a straight bar through all of them; left out: with feelers. */
  barBy: v.optional(BarBy),
  note: v.optional(Note),
});
export type Job = v.InferOutput<typeof Job>;
export type Units = Job['units'];
