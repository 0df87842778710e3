/** The passes in the report: what comes off in each, the gates, what stays, and what the pass before took off. */
import * as v from 'valibot';
import type { Pass } from '../bore/passTypes.ts';
import type { Field, Grid } from '../bore/types.ts';
import type { Passes } from '../evaluate/passes.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { issuedWords } from '../figures/issued.ts';
import {
  finishWords,
  GATE,
  GRINDING_CAUTIONS,
  gateLines,
  isFinished,
  LATER,
  leftWords,
  noPassWords,
  passConditions,
  passTitle,
  passZone,
  toolWords,
} from '../figures/passWords.ts';
import { pastWords, workedWords } from '../figures/workedWords.ts';
import type { Units } from '../job/schema.ts';

const Num = v.nullable(v.number());
const Matrix = v.array(v.array(Num));

/** Radius and width of a wheel; bite per side. */
const Tool = v.strictObject({ radius: v.number(), width: v.number(), bite: v.number() });

export const PassSchema = v.strictObject({
  tool: Tool,
  /** mm a mm along the wall. */
  slope: v.number(),
  removal: Matrix,
  /** Of the removal, per side; of plain steel, grams. */
  greatest: v.number(),
  volume: v.number(),
  mass: v.number(),
  /** True where it ends nearer to the target than the readings tell: only if the gate before it allows it. */
  needsGate: v.boolean(),
  zones: v.array(
    v.strictObject({ peak: v.number(), clock: v.number(), depth: v.number(), words: v.string() }),
  ),
  /** Places to measure after it. Figures as the instrument reads: of a sweep or a wall, the change since before. */
  gate: v.array(
    v.strictObject({
      clock: v.number(),
      depth: v.number(),
      why: v.picklist(['most', 'near', 'control']),
      expected: v.array(
        v.strictObject({
          instrument: v.picklist(['two-point', 'three-leg', 'sweep', 'wall', 'radius']),
          before: v.number(),
          after: v.number(),
          stop: v.number(),
          giveOrTake: v.number(),
        }),
      ),
    }),
  ),
  /** To be felt for hollows before it: half-way between readings, round the clock or along the depth, or from the outermost to a face; what it takes there, per side. */
  between: v.array(
    v.strictObject({
      clock: v.number(),
      depth: v.number(),
      halfway: v.picklist(['clock', 'depth', 'face']),
      takes: v.number(),
    }),
  ),
  words: v.array(v.string()),
});

/** A place read after the pass before; across, both ends together. */
const CameOff = v.strictObject({
  clock: v.number(),
  depth: v.number(),
  asked: v.number(),
  came: v.number(),
  giveOrTake: v.number(),
});

export const GrindingSchema = v.strictObject({
  tool: v.strictObject({
    kind: v.string(),
    name: v.string(),
    rigid: v.boolean(),
    diameter: v.number(),
    width: v.number(),
    bite: v.number(),
    slope: v.number(),
    words: v.string(),
  }),
  /** What no pass takes off, per side. */
  left: v.array(
    v.strictObject({
      clock: v.number(),
      depth: v.number(),
      most: v.number(),
      giveOrTake: v.number(),
      why: v.picklist(['tool', 'slope', 'doubt']),
      words: v.string(),
    }),
  ),
  leftMost: v.number(),
  /** Said where there is no pass; '' where there is one. */
  none: v.string(),
  /** The highest place that is likely high, where none is surely enough for a pass; null else. */
  waits: v.nullable(
    v.strictObject({
      clock: v.number(),
      depth: v.number(),
      most: v.number(),
      giveOrTake: v.number(),
    }),
  ),
  /** '' where it is not next after the passes told here. */
  finish: v.string(),
  /** The pass that was given to the bench from this survey, and whether the plan's first is that still; null: none. */
  issued: v.nullable(
    v.strictObject({
      title: v.string(),
      when: v.string(),
      same: v.boolean(),
      words: v.array(v.string()),
      /** Its zones, as they were given. */
      asked: v.array(v.string()),
    }),
  ),
  /** Of the pass before this survey; null where it follows none. */
  cameOff: v.nullable(
    v.strictObject({
      since: v.string(),
      /** When the pass was given to the bench that it is held against; null: the plan stands in for it. */
      given: v.nullable(v.string()),
      share: Num,
      shareSd: Num,
      /** Per side, where most was asked. */
      perPass: Num,
      places: v.array(CameOff),
      words: v.array(v.string()),
    }),
  ),
  /** Metal gone past the target, per side; null where none is. */
  past: v.nullable(
    v.strictObject({
      clock: v.number(),
      depth: v.number(),
      over: v.number(),
      giveOrTake: v.number(),
      share: v.number(),
      /** Across. */
      cleanUp: v.number(),
      words: v.array(v.string()),
    }),
  ),
  /** Out-of-round across, high and low per side; measured, then as the passes are planned. */
  stages: v.array(
    v.strictObject({
      name: v.string(),
      forecast: v.boolean(),
      outOfRound: v.number(),
      high: v.number(),
      low: v.number(),
    }),
  ),
  cautions: v.array(v.string()),
});

type ToMatrix = (field: Field, grid: Grid) => (number | null)[][];

/** @param passes null: the survey has no target */
export function passesReport(
  passes: Passes | null,
  survey: SurveyEvaluation,
  bore: BoreEvaluation,
  units: Units,
  matrix: ToMatrix,
): {
  passes: v.InferOutput<typeof PassSchema>[];
  grinding: v.InferOutput<typeof GrindingSchema> | null;
} {
  if (passes === null || survey.surface === null) return { passes: [], grinding: null };
  const { tool, slope } = passes.plan;
  const { radius, width, bite } = tool;
  const { grid } = survey.surface;
  return {
    passes: passes.plan.passes.map((pass, at) => ({
      tool: { radius, width, bite },
      slope,
      removal: matrix(pass.removal, grid),
      greatest: pass.greatest,
      volume: pass.volume,
      mass: pass.mass,
      needsGate: pass.beyondDoubt,
      zones: pass.zones.map((zone) => ({
        peak: -zone.peak,
        clock: degrees(zone.theta),
        depth: zone.z,
        words: zoneWords(pass, bore, units)[pass.zones.indexOf(zone)]!,
      })),
      gate: pass.gate.map(({ theta, z, why, expected }) => ({
        clock: degrees(theta),
        depth: z,
        why,
        expected: expected.map(({ give, ...one }) => ({ ...one, giveOrTake: give })),
      })),
      between: pass.between.map(({ theta, z, halfway, takes }) => ({
        clock: degrees(theta),
        depth: z,
        halfway,
        takes,
      })),
      words: passLines(pass, passes.done + at + 1, bore, units),
    })),
    grinding: grindingReport(passes, survey, bore, units),
  };
}

/** A pass in full sentences: title, zones, condition, gate. */
function passLines(pass: Pass, number: number, bore: BoreEvaluation, units: Units): string[] {
  return [
    `${passTitle(pass, number, units)}.`,
    ...zoneWords(pass, bore, units),
    ...passConditions(pass, units),
    ...gateLines(pass, units),
  ];
}

function zoneWords({ zones }: Pass, { facts }: BoreEvaluation, units: Units): string[] {
  return zones.map((zone) => {
    const { where, what } = passZone(zone, facts.length.mm, units);
    return `${where}: ${what}`;
  });
}

function grindingReport(
  passes: Passes,
  { target }: SurveyEvaluation,
  { facts }: BoreEvaluation,
  units: Units,
): v.InferOutput<typeof GrindingSchema> {
  const { tool, plan, worked, issued, past, stages } = passes;
  return {
    tool: {
      kind: tool.kind,
      name: tool.name,
      rigid: tool.rigid,
      diameter: tool.diameter.mm,
      width: tool.width.mm,
      bite: tool.bite.mm,
      slope: tool.slope.mm,
      words: toolWords(passes, target?.diameter ?? Number.NaN),
    },
    left: plan.left.map((one) => ({
      clock: degrees(one.theta),
      depth: one.z,
      most: one.most,
      giveOrTake: one.give,
      why: one.why,
      words: leftWords(one, passes, units),
    })),
    leftMost: plan.leftMost,
    none: noPassWords(plan),
    waits: waitsReport(plan.waits),
    finish: isFinished(passes) ? finishWords(passes, units) : '',
    issued: issued && { ...issued, words: issuedWords(passes), asked: [...issued.words] },
    cameOff: worked && {
      since: worked.since,
      given: worked.given,
      share: orNull(worked.off.share),
      shareSd: orNull(worked.off.shareSd),
      perPass: orNull(worked.off.perPass),
      places: worked.off.places.map(({ theta, z, asked, came, give }) => ({
        clock: degrees(theta),
        depth: z,
        asked,
        came,
        giveOrTake: give,
      })),
      words: workedWords(passes, units),
    },
    past: past && {
      clock: degrees(past.theta),
      depth: past.z,
      over: past.over,
      giveOrTake: past.give,
      share: past.share,
      cleanUp: past.cleanUp,
      words: pastLines(past, facts, units),
    },
    stages: stages.map((one) => ({ ...one })),
    cautions: [...GRINDING_CAUTIONS],
  };
}

/** In degrees and mm. */
export function waitsReport(waits: Passes['plan']['waits']) {
  if (waits === null) return null;
  const { theta, z, most, give } = waits;
  return { clock: degrees(theta), depth: z, most, giveOrTake: give };
}

function pastLines(
  past: NonNullable<Passes['past']>,
  facts: BoreEvaluation['facts'],
  units: Units,
) {
  const { head, ways } = pastWords(past, facts, units);
  return [head, ...ways];
}

/** The passes of a survey for people; none without a target. */
export function passesText(
  passes: Passes | null,
  { target }: SurveyEvaluation,
  bore: BoreEvaluation,
  units: Units,
): { title: string; lines: string[] }[] {
  if (passes === null || target === null) return [];
  const { plan, past } = passes;
  const parts: { title: string; lines: string[] }[] = [];
  if (past !== null)
    parts.push({ title: 'Past the target:', lines: pastLines(past, bore.facts, units) });
  if (passes.worked !== null) {
    parts.push({ title: 'What came off:', lines: workedWords(passes, units) });
  }
  if (passes.issued !== null) {
    parts.push({ title: 'On the bench:', lines: issuedWords(passes) });
  }
  const [first, ...later] = plan.passes;
  if (first !== undefined) {
    const [title, ...lines] = passLines(first, passes.done + 1, bore, units);
    const before = first.zones.length + passConditions(first, units).length;
    parts.push({
      title: title!,
      lines: [...lines.slice(0, before), GATE, ...lines.slice(before)],
    });
  }
  if (later.length > 0) {
    const lines = later.map((pass, i) =>
      [`${passTitle(pass, passes.done + i + 2, units)}.`, ...passConditions(pass, units)].join(' '),
    );
    parts.push({ title: LATER, lines });
  }
  const left = plan.left.map((one) => leftWords(one, passes, units));
  const none = noPassWords(plan);
  if (none !== '') parts.push({ title: none, lines: left });
  else if (left.length > 0) parts.push({ title: 'Left standing:', lines: left });
  if (isFinished(passes)) parts.push({ title: finishWords(passes, units), lines: [] });
  return parts;
}

function degrees(theta: number): number {
  return (theta * 180) / Math.PI;
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
