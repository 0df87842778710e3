/** Squeezing a bore with heat: the plan of its depths, what it gives back, and what to measure when it is cold. */
import { type Learned, learnRange, springShares, upsetShares } from '../assembly/learned.ts';
import { type Range, springback } from '../assembly/springback.ts';
import {
  type ColdReading,
  coldReadings,
  needOf,
  planSqueeze,
  type SqueezeAsked,
  type SqueezePlan,
} from '../assembly/squeeze.ts';
import { SEATED } from '../bore/removal.ts';
import type { WithTarget } from './withTarget.ts';

export interface Squeeze {
  readonly plan: SqueezePlan;
  /** What the largest place is to end at, across, mm. */
  readonly goal: number;
  /** How far the mean draws in with one heat, across, mm; how many logged squeezes that rests on. */
  readonly upset: Learned;
  readonly upsetStated: boolean;
  /** Springback of the greatest closing, across, mm; null: neither boss nor log tells. */
  readonly springs: Learned | null;
  /** How far the jaws move while it is hot, where it is to close most, across, mm; null with `springs`. */
  readonly move: Range | null;
  /** Heats that the greatest closing takes, by how far one heat usually brings it. */
  readonly heats: { readonly least: number; readonly most: number };
  readonly cold: readonly ColdReading[];
}

/** Across, with one heat, on an eye of 2 to 3 in: 0.002 to 0.010 in. Judgement. */
const USUAL_UPSET = { least: 0.0508, most: 0.254, from: 50.8, to: 76.2 } as const;
/** While springback is not known the closing may be out by this share of itself. Judgement. */
const UNKNOWN_OFF = 0.25;

/**
 * How far to squeeze each depth, before anything of heat and springback.
 *
 * @returns null where no depth of the seat is worth squeezing
 */
export function squeezePlan(
  worked: WithTarget,
): { readonly asked: SqueezeAsked; readonly plan: SqueezePlan } | null {
  const { grid, mean } = worked.surface;
  const columns = grid.theta.length;
  const row = (iz: number) => worked.places.subarray(iz * columns, (iz + 1) * columns);
  const asked = {
    grid,
    radius: mean,
    // A chamfer or a groove all round is no seat; beside a hole there is one.
    seated: [...grid.z].map((_, iz) => row(iz).includes(SEATED)),
    goal: worked.target.diameter - worked.facts.squeeze.under.mm,
    upset: upsetOf(worked).most,
  };
  const plan = planSqueeze(asked);
  return plan && { asked, plan };
}

/** @returns null where no depth of the seat is worth squeezing */
export function squeezeOf(worked: WithTarget): Squeeze | null {
  const found = squeezePlan(worked);
  if (found === null) return null;
  const { asked, plan } = found;
  const { bore, survey, facts } = worked;
  const close = plan.most.close;
  const springs = springsOf(worked, close);
  const off = springs === null ? UNKNOWN_OFF * close : (springs.most - springs.least) / 2;
  const depths = survey.sections.map(({ z }) => z).filter((z) => isSeat(bore, z));
  const give = Math.max(0, ...survey.sections.map((s) => s.give).filter((g) => g > 0));
  const { least, most } = facts.squeeze.upset;
  return {
    plan,
    goal: asked.goal,
    upset: upsetOf(worked),
    upsetStated: least >= 0 || most >= 0,
    springs,
    move: springs && { least: close + springs.least, most: close + springs.most },
    heats: heatsOf(needOf(plan.most), perHeat(worked)),
    cold: coldReadings(asked, plan, depths, off, give),
  };
}

/** How far the mean draws in with a heat: as stated, else as the log teaches or as is usual. */
function upsetOf({ target, facts }: WithTarget): Learned {
  const { log, upset: stated } = facts.squeeze;
  const learned = learnRange(
    upsetShares(log).map((share) => share * target.diameter),
    usualUpset(target.diameter),
  )!;
  const least = knownOr(stated.least, Math.min(learned.least, knownOr(stated.most, learned.least)));
  const most = knownOr(stated.most, Math.max(learned.most, knownOr(stated.least, 0)));
  return { ...inOrder(least, most), count: learned.count };
}

/** Two figures that were stated the wrong way round tell the same range. */
function inOrder(one: number, other: number): Range {
  return { least: Math.min(one, other), most: Math.max(one, other) };
}

/** How far one heat brings it, across, mm: as stated, else as usual. */
export function perHeat({ target, facts }: WithTarget): Range {
  const { upset } = facts.squeeze;
  const { least, most } = upset.least > upset.most ? inOrder(upset.least, upset.most) : upset;
  const usual = usualUpset(target.diameter);
  const from = least > 0 ? least : Math.min(usual.least, most > 0 ? most : usual.least);
  return { least: from, most: Math.max(from, most > 0 ? most : usual.most) };
}

function knownOr(value: number, otherwise: number): number {
  return value >= 0 ? value : otherwise;
}

/** As told for an eye of 2 to 3 in; a smaller or larger one in step with its size. */
function usualUpset(diameter: number): Range {
  const { least, most, from, to } = USUAL_UPSET;
  const scale = diameter < from ? diameter / from : diameter > to ? diameter / to : 1;
  return { least: scale * least, most: scale * most };
}

/** From the ring and the heat, and from the log where there is one. */
function springsOf({ bore, target, facts }: WithTarget, close: number): Learned | null {
  if (!(close > 0)) return null;
  const { heat, yield: strength, log } = facts.squeeze;
  const formula = springback({
    bore: target.diameter,
    boss: bore.facts.bossOutside.mm,
    yield: strength.value,
    heat: heat.value,
  });
  const share = (mm: number) => mm / (close + mm);
  const shares = learnRange(
    springShares(log),
    formula && { least: share(formula.least), most: share(formula.most) },
  );
  if (shares === null || !(shares.most < 1)) return null;
  const back = (part: number) => (close * part) / (1 - part);
  return { least: back(shares.least), most: back(shares.most), count: shares.count };
}

function isSeat({ facts }: WithTarget['bore'], z: number): boolean {
  return facts.seats.some(({ from, to }) => z >= from && z <= to);
}

export function heatsOf(close: number, { least, most }: Range) {
  const heats = (each: number) => Math.max(1, Math.ceil(close / each - 1e-9));
  return { least: heats(most), most: heats(least) };
}
