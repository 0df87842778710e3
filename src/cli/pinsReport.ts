/** Pins and shafts as the report names them. Lengths in mm, clocks in degrees, arrays `[z][theta]`; not known is null. */
import * as v from 'valibot';
import { pinPlanOf } from '../evaluate/pinPlan.ts';
import type { Centring, PinPlan, Worst } from '../evaluate/pinTypes.ts';
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import { pinWordGroups } from '../figures/pinWords.ts';
import { guardList, pinAdvised, pinSteps, pinWayRows, skinCaution } from '../figures/pinWork.ts';
import { hotWork } from '../job/safety.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { Deposit, depositReport } from './buildUpReport.ts';
import { CheckSchema, checksReport } from './checksReport.ts';
import { matrix } from './matrix.ts';

const Num = v.nullable(v.number());
const Matrix = v.array(v.array(Num));
const Words = v.array(v.string());
/** Per side; below zero where even the lowest place stands above the finished size; two standard deviations. */
const WorstSchema = v.strictObject({ short: Num, giveOrTake: Num, clock: Num, depth: Num });
const EdgeSchema = v.strictObject({ ...WorstSchema.entries, measured: v.boolean() });

const CentringSchema = v.strictObject({
  center: v.tuple([v.number(), v.number()]),
  /** mm per mm of depth. */
  lean: v.tuple([v.number(), v.number()]),
  /** Across: the largest size that cleans up everywhere, at the mean and two standard deviations lower; what holds it. */
  cleansUp: Num,
  cleansUpSure: Num,
  /** Across, two standard deviations. */
  giveOrTake: Num,
  clock: Num,
  depth: Num,
  /** Shares of what runs: under the finished size, and within the give-or-take of it. */
  low: Num,
  unsure: Num,
  worst: WorstSchema,
});

const WayName = v.picklist(['leave', 'turn-round', 'turn-down', 'spray', 'weld', 'replace']);
const LowPlace = v.strictObject({
  kind: v.picklist(['low', 'unsure']),
  /** Per side: missing, or what may be missing at two standard deviations. */
  peak: v.number(),
  clock: v.number(),
  depth: v.number(),
  /** Depths between which at least half of the peak stands. */
  from: v.number(),
  to: v.number(),
  giveOrTake: v.number(),
});

const PlanSchema = v.strictObject({
  words: Words,
  stage: v.picklist(['worn', 'built-up']),
  finished: v.strictObject({
    mm: v.number(),
    from: v.picklist(['typed', 'new-size', 'bore', 'largest']),
  }),
  /** Across. */
  clearance: Num,
  fromBore: Num,
  holes: v.array(
    v.strictObject({
      name: v.string(),
      size: v.number(),
      from: v.picklist(['measured', 'bought']),
      /** What the finished size leaves in it; below 0 the pin would not go in. */
      leaves: v.number(),
    }),
  ),
  sideSeen: v.boolean(),
  centres: v.strictObject({
    chosen: v.picklist(['kept', 'shifted']),
    kept: CentringSchema,
    shifted: CentringSchema,
    /** How far the shifted axis stands off the kept one at face A and at face B, and towards which clock position. */
    moved: v.array(v.strictObject({ by: v.number(), clock: Num })),
  }),
  /** Most that is short under the load, per side, with the pin turned half round, and end for end. */
  turned: v.strictObject({ opposite: Num, ended: Num }),
  lands: v.array(
    v.strictObject({
      name: v.string(),
      runsIn: v.nullable(v.string()),
      from: v.number(),
      to: v.number(),
      worst: WorstSchema,
      edges: v.array(EdgeSchema),
      low: Num,
      unsure: Num,
    }),
  ),
  places: v.array(LowPlace),
  theta: v.array(v.number()),
  z: v.array(v.number()),
  /** Per side about the chosen axis: plus is short of the finished size, minus is to come off; one standard deviation. */
  short: Matrix,
  sd: Matrix,
  buildUp: v.strictObject({
    allowance: v.number(),
    /** Per side; null where nothing runs. */
    thickness: Matrix,
    ...Deposit,
    turnedOff: v.strictObject({ volume: v.number(), mass: v.number() }),
    /** °C; null while the carbon equivalent is not known. */
    carbonEquivalent: Num,
    preheat: v.nullable(v.strictObject({ least: Num, most: Num })),
    /** Null while a question on heat is open or stops it. */
    steps: v.nullable(v.strictObject({ words: Words, orderClocks: v.array(v.number()) })),
  }),
  ways: v.array(
    v.strictObject({
      name: WayName,
      advised: v.boolean(),
      possible: v.boolean(),
      /** Across: its size, how far that is under the finished size, and the new hole that it then runs in. */
      size: Num,
      underSize: Num,
      hole: Num,
      volumeOn: v.number(),
      massOn: v.number(),
      volumeOff: v.number(),
      massOff: v.number(),
      short: Num,
      play: Num,
      strength: Num,
      /** Of sprayed metal: what it is turned to before, across, and how thick that ends, per side; null: nothing is sprayed. */
      core: Num,
      coat: Num,
      words: Words,
      cautions: Words,
    }),
  ),
  /** Null while something must be said first. */
  advised: v.nullable(WayName),
  /** Null once it is welded up. */
  why: v.nullable(v.string()),
});

export const PinSchema = v.strictObject({
  name: v.string(),
  length: Num,
  /** What is to be covered, plugged or left alone, and whether it is. */
  guard: v.array(v.strictObject({ what: v.string(), how: v.string(), done: v.boolean() })),
  surveys: v.array(
    v.strictObject({
      name: v.string(),
      status: v.string(),
      checks: v.array(CheckSchema),
      plan: v.nullable(PlanSchema),
    }),
  ),
});
export type PinReport = v.InferOutput<typeof PinSchema>;

export type FindPin = (pin: BoreEvaluation, survey: SurveyEvaluation) => PinPlan | null;

export function pinFinder(job: Job, memory: Memory, shop: Shop | null): FindPin {
  return (pin, survey) => pinPlanOf(job, { bore: pin.id, survey: survey.id }, memory, shop);
}

export function pinReport(job: Job, pin: BoreEvaluation, find: FindPin): PinReport {
  const keepouts = job.features.find(({ id }) => id === pin.id)?.keepouts ?? [];
  return {
    name: pin.name,
    length: orNull(pin.facts.length.mm),
    guard: guardList(keepouts, job.units).map(({ what, how, done }) => ({ what, how, done })),
    surveys: pin.surveys.map((survey) => {
      const plan = find(pin, survey);
      return {
        name: survey.name,
        status: survey.status,
        checks: checksReport(survey),
        plan: plan && planReport(job, plan),
      };
    }),
  };
}

function planReport(job: Job, plan: PinPlan): PinReport['surveys'][number]['plan'] {
  const { units } = job;
  const { surface, advice, kept, shifted } = plan;
  const caution = skinCaution(plan);
  return {
    words: [
      ...pinWordGroups(plan, units).flatMap(({ lines }) => lines),
      ...(caution === null ? [] : [caution]),
    ],
    stage: plan.stage,
    finished: { ...plan.finished },
    clearance: orNull(plan.clearance),
    fromBore: orNull(plan.fromBore),
    holes: plan.holes.map((hole) => ({ ...hole, leaves: hole.size - plan.finished.mm })),
    sideSeen: plan.sideSeen,
    centres: {
      chosen: plan.chosen,
      kept: centring(kept),
      shifted: centring(shifted),
      moved: plan.moved.map(({ by, theta }) => ({ by, clock: orNull(degrees(theta)) })),
    },
    turned: { opposite: orNull(plan.turned.opposite), ended: orNull(plan.turned.ended) },
    lands: plan.lands.map(({ facts, runsIn, worst: most, edges, low, unsure }) => ({
      name: facts.name,
      runsIn,
      from: facts.from,
      to: facts.to,
      worst: worst(most),
      edges: edges.map((edge) => ({ ...worst(edge), measured: edge.measured })),
      low: orNull(low),
      unsure: orNull(unsure),
    })),
    places: (['low', 'unsure'] as const).flatMap((kind) =>
      plan[kind].map(({ peak, theta, z, top, bottom, give }) => ({
        kind,
        peak,
        clock: degrees(theta),
        depth: z,
        from: top,
        to: bottom,
        giveOrTake: give,
      })),
    ),
    theta: [...surface.grid.theta],
    z: [...surface.grid.z],
    short: matrix(plan.short, surface.grid),
    sd: matrix(plan.sd, surface.grid),
    buildUp: buildUpReport(job, plan),
    ways: waysReport(plan, units),
    advised: advice?.way ?? null,
    why: pinAdvised(plan, units),
  };
}

function buildUpReport(
  job: Job,
  plan: PinPlan,
): NonNullable<PinReport['surveys'][number]['plan']>['buildUp'] {
  const { deposit, order, preheat, facts, turnOff, surface } = plan;
  return {
    allowance: facts.weld.allowance.mm,
    thickness: matrix(plan.thickness, surface.grid),
    ...depositReport(deposit, facts.weld),
    turnedOff: { ...turnOff },
    carbonEquivalent: orNull(plan.equivalent),
    preheat: preheat && { least: preheat.least, most: orNull(preheat.most) },
    steps: hotWork(job.safety).open
      ? { words: pinSteps(plan), orderClocks: order.map(degrees) }
      : null,
  };
}

function waysReport(
  plan: PinPlan,
  units: Units,
): NonNullable<PinReport['surveys'][number]['plan']>['ways'] {
  const rows = pinWayRows(plan, units);
  return plan.ways.map((way, i) => ({
    ...way,
    size: orNull(way.size),
    underSize: orNull(plan.finished.mm - way.size),
    hole: orNull(way.size + plan.clearance),
    short: orNull(way.short),
    play: orNull(way.play),
    strength: orNull(way.strength),
    core: orNull(way.core),
    coat: orNull(way.coat),
    advised: rows[i]!.advised,
    words: [...rows[i]!.figures],
    cautions: [...rows[i]!.cautions],
  }));
}

function centring({ axis, diameter, sure, give, theta, z, low, unsure, worst: most }: Centring) {
  return {
    center: [axis.x, axis.y] as [number, number],
    lean: [axis.leanX, axis.leanY] as [number, number],
    cleansUp: orNull(diameter),
    cleansUpSure: orNull(sure),
    giveOrTake: orNull(2 * give),
    clock: orNull(degrees(theta)),
    depth: orNull(z),
    low: orNull(low),
    unsure: orNull(unsure),
    worst: worst(most),
  };
}

function worst({ short, give, theta, z }: Worst) {
  return {
    short: orNull(short),
    giveOrTake: orNull(give),
    clock: orNull(degrees(theta)),
    depth: orNull(z),
  };
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function degrees(theta: number): number {
  return (theta * 180) / Math.PI;
}
