/** The ways of mending as the report names them: the figures of the page's table, and what the advice rests on. */
import * as v from 'valibot';
import type { WayName } from '../bore/wayTypes.ts';
import { type WaysEvaluation, waysOfSurvey } from '../evaluate/ways.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { adviceWords, doneWords, sayRule, whyWords } from '../figures/wayWords.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { waitsReport } from './passesReport.ts';

const Num = v.nullable(v.number());
const Way = v.picklist(['grind', 'squeeze', 'shim', 'oversize', 'sleeve', 'weld', 'leave']);
const Share = v.strictObject({ likely: Num, least: Num, most: Num });
const Check = v.strictObject({
  rule: v.string(),
  figure: Num,
  limit: v.number(),
  met: v.boolean(),
});

export const WaySchema = v.strictObject({
  name: Way,
  advised: v.boolean(),
  verdict: v.string(),
  why: v.string(),
  /** What is done. */
  words: v.string(),
  /** Across: what the bore is made to; of one that is left, what it is counted from. */
  target: v.number(),
  center: v.tuple([v.number(), v.number()]),
  lean: v.tuple([v.number(), v.number()]),
  /** Outside of the bushing, across; and of all that sits in the bore, shims or sleeve among it. */
  bushing: v.number(),
  outside: v.number(),
  /** Share of the seat with a press fit above 0. */
  seated: Share,
  /** Share of the seat over the target. */
  lowShare: Num,
  /** Local, across; below 0 is air. Give-or-take and place are those of the least. */
  pressFit: v.strictObject({
    least: Num,
    mean: Num,
    greatest: Num,
    giveOrTake: Num,
    clock: Num,
    depth: Num,
  }),
  /** mm3, g, and the most at one place per side. */
  volumeOff: v.number(),
  massOff: v.number(),
  greatestOff: v.number(),
  volumeOn: v.number(),
  massOn: v.number(),
  greatestOn: v.number(),
  /** Per side: the largest place over the target, and the air behind the bushing there. */
  worstGap: v.strictObject({ over: Num, behindBushing: Num, clock: Num, depth: Num }),
  /** Per side; null where the boss is not known. */
  wallLeft: Num,
  wall: Check,
  /** Of a bore that is measured anew before, as if it were then what is predicted; null: bored and not ground. */
  passes: Num,
  /** What no pass is given for until it is measured better, per side; null: nothing. */
  waits: v.nullable(
    v.strictObject({
      clock: v.number(),
      depth: v.number(),
      most: v.number(),
      giveOrTake: v.number(),
    }),
  ),
  /** Where it is bored because there would be so many passes by hand at least; null else. */
  fewestByHand: Num,
  /** The most that no pass takes down, per side; null: bored, or measured anew before. */
  stays: Num,
  /** Heats at the most and at the least that one closes; across: how far it closes, and by shortening; per side: where bending alone ends. */
  squeeze: v.nullable(
    v.strictObject({
      closing: v.number(),
      upset: v.number(),
      bentOver: v.number(),
      heats: v.strictObject({ least: v.number(), most: v.number() }),
      /** Where the hot metal shortens as much as it may in one heat; passes null: bored. */
      drawnIn: v.strictObject({
        passes: Num,
        volumeOff: v.number(),
        massOff: v.number(),
        greatestOff: v.number(),
      }),
    }),
  ),
  /** Shims from the wall inwards, or the wall of a sleeve; per side. */
  layers: v.array(v.number()),
  needs: v.array(v.strictObject({ tool: v.string(), have: v.picklist(['yes', 'no', 'not-said']) })),
});

export const WayAdviceSchema = v.strictObject({
  /** What would come first if nothing stood in its way. */
  first: Way,
  advised: v.nullable(Way),
  /** The repairer's own choice. */
  chosen: v.nullable(Way),
  words: v.string(),
  checks: v.array(v.strictObject({ ...Check.entries, words: v.string() })),
  stops: v.array(
    v.strictObject({ says: v.string(), whom: v.string(), closes: v.picklist(['heat', 'all']) }),
  ),
  /** Questions about heat that are open. */
  asks: v.array(v.string()),
  /** What the ways were worked out with, mm. */
  figures: v.strictObject({
    oversizeStep: v.number(),
    sleeveWall: v.number(),
    weldAllowance: v.number(),
    weldOver: v.picklist(['seat', 'low']),
    squeezeUnder: v.number(),
    heatLeast: v.number(),
    heatMost: v.number(),
    shimLayers: v.number(),
    shimLeast: v.number(),
    stock: v.array(v.number()),
  }),
  rules: v.record(v.string(), v.number()),
  /** The smallest size at which all of the seat cleans up, across, and the place that sets it. */
  cleanUp: v.strictObject({ diameter: v.number(), clock: v.number(), depth: v.number() }),
  /** What shims would have to fill, per side; not above 0: nothing. */
  toFill: v.number(),
});

export interface WaysReport {
  readonly ways: v.InferOutput<typeof WaySchema>[];
  readonly wayAdvice: v.InferOutput<typeof WayAdviceSchema> | null;
}

export type FindWays = (bore: BoreEvaluation, survey: SurveyEvaluation) => WaysReport;

export const NO_WAYS: WaysReport = { ways: [], wayAdvice: null };

export function waysFinder(job: Job, shop: Shop | null): FindWays {
  return (bore, survey) => {
    const ways = waysOfSurvey(job, bore, survey, shop);
    const way = job.features.find(({ id }) => id === bore.id)?.decisions.way;
    const chosen = way === undefined || way === 'undecided' ? null : way;
    return ways === null ? NO_WAYS : waysReport(ways, chosen, job.units);
  };
}

export function waysReport(
  ways: WaysEvaluation,
  chosen: WayName | null,
  units: Job['units'],
): WaysReport {
  const { advice, stops, asks, figures, rules, cleanUp, toFill } = ways;
  return {
    ways: ways.outcomes.map((_, at) => wayReport(ways, at, units)),
    wayAdvice: {
      first: advice.first,
      advised: advice.advised,
      chosen,
      words: adviceWords(ways),
      checks: advice.checks.map((one) => ({ ...check(one), words: sayRule(one, ways, units) })),
      stops: stops.map((stop) => ({ ...stop })),
      asks: [...asks],
      figures: { ...figures, stock: [...figures.stock] },
      rules: { ...rules },
      cleanUp: { diameter: cleanUp.diameter, clock: degrees(cleanUp.theta), depth: cleanUp.z },
      toFill,
    },
  };
}

function wayReport(
  ways: WaysEvaluation,
  at: number,
  units: Job['units'],
): v.InferOutput<typeof WaySchema> {
  const one = ways.outcomes[at]!;
  const advice = ways.advice.ways[at]!;
  const { pressFit, gap, off, on, squeeze, axis, seated } = one;
  return {
    name: one.name,
    advised: advice.verdict === 'advised',
    verdict: advice.verdict,
    why: whyWords(one, advice, ways, units),
    words: doneWords(one, ways, units),
    target: one.target,
    center: [axis.x, axis.y],
    lean: [axis.leanX, axis.leanY],
    bushing: one.bushing,
    outside: one.outside,
    seated: {
      likely: orNull(seated.likely),
      least: orNull(seated.least),
      most: orNull(seated.most),
    },
    lowShare: orNull(one.lowShare),
    pressFit: {
      least: orNull(pressFit.least),
      mean: orNull(pressFit.mean),
      greatest: orNull(pressFit.greatest),
      giveOrTake: orNull(pressFit.give),
      clock: orNull(degrees(pressFit.theta)),
      depth: orNull(pressFit.z),
    },
    volumeOff: off.volume,
    massOff: off.mass,
    greatestOff: off.greatest,
    volumeOn: on.volume,
    massOn: on.mass,
    greatestOn: on.greatest,
    worstGap: {
      over: orNull(gap.over),
      behindBushing: orNull(gap.behind),
      clock: orNull(degrees(gap.theta)),
      depth: orNull(gap.z),
    },
    wallLeft: orNull(one.wallLeft),
    wall: check(advice.wall),
    passes: orNull(one.passes),
    waits: waitsReport(one.waits),
    fewestByHand: orNull(one.fewest),
    stays: orNull(one.stays),
    squeeze: squeeze && {
      closing: squeeze.closing,
      upset: squeeze.upset,
      bentOver: squeeze.bentOver,
      heats: { least: squeeze.heatsLeast, most: squeeze.heatsMost },
      drawnIn: {
        passes: orNull(squeeze.drawnIn.passes),
        volumeOff: squeeze.drawnIn.off.volume,
        massOff: squeeze.drawnIn.off.mass,
        greatestOff: squeeze.drawnIn.off.greatest,
      },
    },
    layers: [...one.layers],
    needs: ways.needs[one.name].map((need) => ({ ...need })),
  };
}

function check({ rule, figure, limit, met }: WaysEvaluation['advice']['checks'][number]) {
  return { rule, figure: orNull(figure), limit, met };
}

function degrees(theta: number): number {
  return (theta * 180) / Math.PI;
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
