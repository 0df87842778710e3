/** Squeezing, shims, weld and rim washers, as the report names them. Lengths in mm, clocks in degrees; not known is null. */
import * as v from 'valibot';
import { type BuildUp, buildUpOfSurvey } from '../evaluate/buildUp.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { rimWords } from '../figures/rimWords.ts';
import { type Shims, shimWords } from '../figures/shimWords.ts';
import { type Squeeze, squeezeWords } from '../figures/squeezeWords.ts';
import { weldStage, weldWords } from '../figures/weldWords.ts';
import { hotWork } from '../job/safety.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { degrees, HeatSchema, heatReport, LogSchema, logReport, orNull } from './heatReport.ts';

const Num = v.nullable(v.number());
const Span = v.strictObject({ least: Num, most: Num });
const Words = v.array(v.string());
/** Across. */
const Ends = v.strictObject({ mean: v.number(), largest: v.number(), least: v.number() });

const SqueezeSchema = v.strictObject({
  words: Words,
  /** Across: where the largest place is and is to end. */
  largest: v.number(),
  goal: v.number(),
  /** How far under the target that is. */
  under: v.number(),
  upset: v.strictObject({ least: v.number(), most: v.number(), squeezes: v.number() }),
  /** By depth. */
  depths: v.array(
    v.strictObject({
      depth: v.number(),
      before: Ends,
      close: v.number(),
      bending: Ends,
      withUpset: Ends,
      staysOver: v.number(),
    }),
  ),
  /** Null while a question on heat is open or stops it. */
  setUp: v.nullable(
    v.strictObject({
      words: Words,
      jawsClock: v.number(),
      grip: v.strictObject({ from: v.number(), to: v.number() }),
      heat: v.number(),
      springback: v.nullable(
        v.strictObject({ least: v.number(), most: v.number(), squeezes: v.number() }),
      ),
      move: v.nullable(Span),
      heats: Span,
      cold: v.array(
        v.strictObject({
          clock: v.number(),
          depth: v.number(),
          least: v.number(),
          most: v.number(),
        }),
      ),
    }),
  ),
});

const ShimsSchema = v.strictObject({
  words: Words,
  cleanUp: v.number(),
  round: v.number(),
  missing: v.number(),
  layers: v.array(v.number()),
  /** Sum of the layers, per side; null: no stack will do. */
  thickness: Num,
  pressFit: Num,
  volumeOff: v.number(),
  massOff: v.number(),
  strips: v.array(
    v.strictObject({
      thickness: v.number(),
      length: v.number(),
      bore: v.number(),
      buttClock: v.number(),
      holes: v.array(
        v.strictObject({ at: v.number(), from: v.number(), to: v.number(), along: v.number() }),
      ),
    }),
  ),
  seats: v.array(v.strictObject({ from: v.number(), to: v.number() })),
  /** Per side at each clock hour, from 12; null: none comes into question. */
  partRound: v.nullable(v.array(v.number())),
});

/** Weld to lay: mm³, g, the thickest place per side in mm, and what it takes. */
export const Deposit = {
  volume: v.number(),
  mass: v.number(),
  greatest: v.number(),
  layers: v.number(),
  stringers: v.number(),
  electrodes: v.number(),
  /** Core of the electrode, and the beads: height, width, and how much of one lies on the one before, percent. */
  electrodeCore: v.number(),
  bead: v.strictObject({ height: v.number(), width: v.number(), overlap: v.number() }),
  toBuy: v.number(),
};

/** What a build-up takes, and what it is counted with. */
export function depositReport(
  deposit: BuildUp['weld']['deposit'],
  { electrode, beadHeight, beadWidth, overlap }: BuildUp['facts']['weld'],
) {
  return {
    ...deposit,
    electrodeCore: electrode,
    bead: { height: beadHeight.mm, width: beadWidth.mm, overlap: overlap.value },
  };
}

const WeldSchema = v.strictObject({
  words: Words,
  allowance: v.number(),
  ...Deposit,
  /** Share of the seat lower than finished size and allowance. */
  lowShare: Num,
  /** Places lower than that: peak per side, deposit, and where. */
  low: v.array(
    v.strictObject({
      peak: v.number(),
      give: v.number(),
      clock: v.number(),
      depth: v.number(),
      volume: v.number(),
      mass: v.number(),
      layers: v.number(),
    }),
  ),
  /** Null while a question on heat is open or stops it. */
  steps: v.nullable(v.strictObject({ words: Words, orderClocks: v.array(v.number()) })),
  /** Percent; null while nothing tells it. */
  carbonEquivalent: Num,
  /** °C; null while the carbon equivalent is not given. */
  preheat: v.nullable(Span),
});

const Washers = v.strictObject({
  layers: v.array(v.number()),
  standsOut: v.number(),
  gap: v.number(),
});

export const BuildUpSchema = v.strictObject({
  /** Null where no place is worth a squeeze. */
  squeeze: v.nullable(SqueezeSchema),
  /** What the squeeze before this survey brought, or the one after it; null: none was planned. */
  heat: v.nullable(HeatSchema),
  squeezeLog: LogSchema,
  /** Null where nothing is over the target. */
  shims: v.nullable(ShimsSchema),
  weld: WeldSchema,
  rims: v.array(
    v.strictObject({
      face: v.picklist(['A', 'B']),
      words: Words,
      asItIs: Washers,
      dressed: Washers,
    }),
  ),
});
type Told<S extends v.GenericSchema> = v.InferOutput<S>;

/** Works it out for one survey; null without a target. */
export type FindBuildUp = (
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
) => Told<typeof BuildUpSchema> | null;

export function buildUpFinder(job: Job, shop: Shop | null): FindBuildUp {
  const { open } = hotWork(job.safety);
  return (bore, survey) => {
    const found = buildUpOfSurvey(job, bore, survey, shop);
    if (found === null) return null;
    const { squeeze, heat, shims, rims } = found;
    return {
      heat: heat && heatReport(heat, survey, job.units),
      squeezeLog: logReport(found),
      squeeze: squeeze && squeezeReport(squeeze, found, survey, job.units, open),
      shims: shims && shimsReport(shims, found, job.units),
      weld: weldReport(found, stageOf(job, bore, survey), survey, bore, job.units, open),
      rims: rims.map((one) => ({
        face: one.face,
        words: rimWords(one, job.units),
        asItIs: washers(one.rim.asItIs),
        dressed: washers(one.rim.dressed),
      })),
    };
  };
}

function stageOf(job: Job, bore: BoreEvaluation, survey: SurveyEvaluation): string {
  const feature = job.features.find(({ id }) => id === bore.id);
  return feature?.surveys.find(({ id }) => id === survey.id)?.stage ?? 'as-found';
}

function washers({ stack, standsOut, gap }: BuildUp['rims'][number]['rim']['asItIs']) {
  return { layers: [...(stack?.layers ?? [])], standsOut, gap };
}

function squeezeReport(
  squeeze: Squeeze,
  found: BuildUp,
  survey: SurveyEvaluation,
  units: Units,
  open: boolean,
): Told<typeof SqueezeSchema> {
  const { plan, goal, upset, springs, move, heats, cold } = squeeze;
  const words = squeezeWords(squeeze, found, survey, units);
  const counted = ({ least, most, count }: typeof upset) => ({ least, most, squeezes: count });
  return {
    words: [...words.ends],
    largest: plan.largest,
    goal,
    under: found.facts.squeeze.under.mm,
    upset: counted(upset),
    depths: plan.rows.map(({ z, before, close, bent, upset: drawn, short }) => ({
      depth: z,
      before,
      close,
      bending: bent,
      withUpset: drawn,
      staysOver: short,
    })),
    setUp: !open
      ? null
      : {
          words: [...words.steps],
          jawsClock: degrees(plan.jaws),
          grip: plan.grip,
          heat: found.facts.squeeze.heat.value,
          springback: springs && counted(springs),
          move,
          heats,
          cold: cold.map(({ theta, z, least, most }) => ({
            clock: degrees(theta),
            depth: z,
            least,
            most,
          })),
        },
  };
}

function shimsReport(shims: Shims, found: BuildUp, units: Units): Told<typeof ShimsSchema> {
  const { stack, rules, cautions, partRound } = shimWords(shims, found, units);
  return {
    words: [...stack, ...rules, ...(partRound === null ? [] : [partRound.says]), ...cautions],
    cleanUp: shims.cleanUp,
    round: shims.round,
    missing: shims.missing,
    layers: [...(shims.stack?.layers ?? [])],
    thickness: shims.stack?.thickness ?? null,
    pressFit: orNull(shims.pressFit),
    volumeOff: shims.volumeOff,
    massOff: shims.massOff,
    strips: shims.strips.map(({ thickness, length, bore, butt, holes }) => ({
      thickness,
      length,
      bore,
      buttClock: degrees(butt),
      holes: holes.map((hole) => ({ ...hole })),
    })),
    seats: shims.seats.map((seat) => ({ ...seat })),
    partRound: shims.partRound && [...shims.partRound.hours],
  };
}

function weldReport(
  found: BuildUp,
  stage: string,
  survey: SurveyEvaluation,
  bore: BoreEvaluation,
  units: Units,
  open: boolean,
): Told<typeof WeldSchema> {
  const { deposit, low, lowShare, order, equivalent, preheat } = found.weld;
  const given = found.facts.weld;
  const words = weldWords(found, weldStage(survey, stage), bore.facts.length.mm, units);
  return {
    words: [...words.metal, ...words.low],
    allowance: given.allowance.mm,
    ...depositReport(deposit, given),
    lowShare: orNull(lowShare),
    low: low.map(({ peak, give, theta, z, volume, mass, layers }) => ({
      peak,
      give,
      clock: degrees(theta),
      depth: z,
      volume,
      mass,
      layers,
    })),
    carbonEquivalent: orNull(equivalent),
    steps: open ? { words: [...words.steps], orderClocks: order.map(degrees) } : null,
    preheat: preheat && { least: preheat.least, most: orNull(preheat.most) },
  };
}
