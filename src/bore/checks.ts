/** Which readings are in doubt, the likeliest slip of each, and how it would have been typed. Nothing is changed. */
import type { KeepoutFacts } from '../job/facts.ts';
import type { Retyping } from '../job/slips.ts';
import { design } from './design.ts';
import type { StandOff } from './leaveOneOut.ts';
import { condition, type Posterior } from './posterior.ts';
import { driftOf, type RowSlip, rowSlips } from './rowChecks.ts';
import { forJudging } from './smoothness.ts';
import { findSuspects } from './suspects.ts';
import type { Check, SetupPrior, Sighting, Smoothness } from './types.ts';

/** What is known of a survey's readings besides their values. */
export interface Typing {
  readonly nominalRadius: number;
  readonly keepouts: readonly KeepoutFacts[];
  /** Ways in which the reading of a row may have been meant. */
  retypings(row: number): readonly Retyping[];
}

/** How often each happens beside the slips of typing, and up to which error, mm as the instrument reads: judgement. */
const BURR = { odds: 1, most: 0.5 };
const TILT = { odds: 1, most: 0.5 };
/** A two-point gauge tilted by six degrees reads too large by this share; farther off its feel says so. */
const MOST_TILT = 1 / Math.cos((6 * Math.PI) / 180) - 1;
/** What nothing explains: rare, and as likely at one size as at ten times that, over seven powers of e. */
const UNEXPLAINED = { odds: 0.05, powers: 7 };
/** An edge is felt this far from the middle of a hole beyond its half width, mm. */
const EDGE = 2;

/** What was found before one reading was typed over. */
export interface Earlier {
  readonly checks: readonly Check[];
  readonly sightings: readonly Sighting[];
  readonly sound: Smoothness;
}

export interface Judged {
  readonly checks: Check[];
  /** What was learned of noise and roughness without the suspects. */
  readonly sound: Smoothness;
}

/** More readings than this are judged when someone pauses, not at each key. */
const MOST_AT_ONCE = 150;

function judging(p: Posterior, nominalRadius: number): Posterior {
  const smoothness = forJudging(p.smoothness);
  if (smoothness === p.smoothness) return p;
  return condition(p.design, smoothness, nominalRadius) ?? p;
}

/** Settled: noise and roughness learned anew without the worst readings. */
export function checkReadings(surface: Posterior, typing: Typing): Judged {
  const p = judging(surface, typing.nominalRadius);
  const { found, smoothness: sound } = findSuspects(p, typing.nominalRadius, true);
  const judged = sound === p.smoothness ? p : condition(p.design, sound, typing.nominalRadius);
  const rows = judged === null ? [] : slipsOfRows(judged, found, typing.nominalRadius);
  const explained = new Set(rows.flatMap(({ places }) => places));
  return {
    sound,
    checks: [
      ...singleSlips(
        p,
        found.filter(({ at }) => !explained.has(at)),
        typing,
      ),
      ...rows.flatMap(({ places, slip }) => places.map((at) => rowCheck(p, at, slip))),
    ],
  };
}

/** As while someone types: single readings by what was learned before; slips of many stand until all is settled. */
export function recheckReadings(p: Posterior, typing: Typing, earlier: Earlier): Judged {
  const { sound } = earlier;
  const standing = earlier.checks.filter((check) => unchanged(check, p.design.sightings, earlier));
  if (p.design.count > MOST_AT_ONCE) return { sound, checks: standing };
  const judged = sound === p.smoothness ? p : condition(p.design, sound, typing.nominalRadius);
  const kept = standing.filter(({ expected }) => Number.isNaN(expected));
  if (judged === null) return { sound, checks: kept };
  const had = new Set(kept.map(({ row }) => row));
  const { found } = findSuspects(judged, typing.nominalRadius, false);
  const single = singleSlips(judged, found, typing).filter(({ row }) => !had.has(row));
  return { sound, checks: [...single, ...kept] };
}

function unchanged({ row }: Check, now: readonly Sighting[], { sightings }: Earlier): boolean {
  const before = sightings.find((s) => s.row === row);
  const after = now.find((s) => s.row === row);
  if (before === undefined || after === undefined) return false;
  return before.value === after.value && before.theta === after.theta && before.z === after.z;
}

/**
 * Slips of many readings at once. Single suspects stay out of the question, but for those that are several of one
 * depth, or are the first reading or its repeat: just these a slip of many may explain.
 */
function slipsOfRows(p: Posterior, found: readonly StandOff[], nominalRadius: number): RowSlip[] {
  const lone = found.filter(({ at }) => !hasCompany(p.design.sightings, at, found));
  const kept = p.design.sightings.map((_, i) => i).filter((i) => lone.every(({ at }) => at !== i));
  const part = among(p, kept, nominalRadius);
  const slips =
    part === null
      ? []
      : rowSlips(part).map(({ places, slip }) => ({
          places: places.map((k) => kept[k]!),
          slip,
        }));
  const far = new Set(found.map(({ at }) => at));
  const drift = driftOf(p);
  if (drift === null || slips.length > 0) return slips;
  const others = [...far].filter((at) => at !== drift.first && at !== drift.last);
  if (others.length > 0) return slips;
  return [{ places: [drift.last], slip: 'a drift through the set' }];
}

function hasCompany(all: readonly Sighting[], at: number, found: readonly StandOff[]): boolean {
  return found.some((other) => other.at !== at && all[other.at]!.z === all[at]!.z);
}

function among(p: Posterior, kept: readonly number[], nominalRadius: number): Posterior | null {
  if (kept.length === p.design.count) return p;
  const { sightings, setups, length, wornSide } = p.design;
  const some = design(
    kept.map((i) => sightings[i]!),
    setups,
    length,
    wornSide,
  );
  return condition(some, p.smoothness, nominalRadius);
}

function rowCheck(p: Posterior, at: number, slip: string): Check {
  return {
    row: p.design.sightings[at]!.row,
    suspect: true,
    slip,
    suggested: null,
    expected: Number.NaN,
    give: Number.NaN,
  };
}

/** Two readings this near, round and along (a share of the length), that stand off alike vouch for each other. */
const NEAR_ANGLE = 0.6;
const NEAR_DEPTH = 0.2;

/** A hollow or a lump that two readings touch is the bore's: only what slips of typing explain stays in doubt then. */
function singleSlips(p: Posterior, found: readonly StandOff[], typing: Typing): Check[] {
  const named = found.map((one) => ({ one, check: nameSlip(p, one, typing) }));
  const atWall = named.filter(({ check }) => check.suggested === null);
  return named
    .filter(
      (a) => a.check.suggested !== null || !atWall.some((b) => a !== b && alike(p, a.one, b.one)),
    )
    .map(({ check }) => check);
}

function alike(p: Posterior, one: StandOff, other: StandOff): boolean {
  const [a, b] = [p.design.sightings[one.at]!, p.design.sightings[other.at]!];
  if (a.instrument !== b.instrument || one.residual * other.residual < 0) return false;
  const period = a.instrument === 'two-point' ? Math.PI : 2 * Math.PI;
  const turn = a.theta - b.theta;
  const apart = Math.abs(turn - period * Math.round(turn / period));
  return apart <= NEAR_ANGLE && Math.abs(a.z - b.z) <= NEAR_DEPTH * p.design.length;
}

interface Guess {
  readonly slip: string;
  readonly suggested: string | null;
  /** How likely this slip is, and that it errs by just so much: odds times probability per mm. */
  readonly weight: number;
}

function nameSlip(p: Posterior, one: StandOff, typing: Typing): Check {
  const s = p.design.sightings[one.at]!;
  const expected = s.value - one.residual;
  const guesses: Guess[] = [
    ...typing.retypings(s.row).map(({ slip, odds, mm, text }) => ({
      slip,
      suggested: text,
      weight: (odds * normal((mm - expected) / one.sd)) / one.sd,
    })),
    ...atTheWall(s, p.design.setups, one, typing),
    {
      slip: 'unexplained',
      suggested: null,
      weight: UNEXPLAINED.odds / (UNEXPLAINED.powers * Math.abs(one.residual)),
    },
  ];
  const { slip, suggested } = guesses.reduce((a, b) => (b.weight > a.weight ? b : a));
  return { row: s.row, suspect: true, slip, suggested, expected, give: 2 * one.sd };
}

/** What goes wrong where the gauge touches: metal or dirt in the way, or a gauge that stands askew. */
function atTheWall(
  s: Sighting,
  setups: readonly SetupPrior[],
  { residual }: StandOff,
  { keepouts }: Typing,
): Guess[] {
  const inward = residual * (setups[s.setup]?.sign ?? 1) < 0;
  const size = Math.abs(residual);
  if (inward) {
    if (size > BURR.most) return [];
    const hole = keepouts.some((k) => k.kind === 'grease-hole' && touches(s, k));
    const slip = hole
      ? 'the edge of the grease hole, or a burr on it'
      : 'a burr or dirt under the gauge, which reads low';
    return [{ slip, suggested: null, weight: BURR.odds / BURR.most }];
  }
  if (s.instrument !== 'two-point' && s.instrument !== 'three-leg') return [];
  const most = Math.min(TILT.most, MOST_TILT * s.value);
  if (size > most) return [];
  const slip = 'the gauge not rocked, which reads high (or a hollow just there)';
  return [{ slip, suggested: null, weight: TILT.odds / most }];
}

/** A diameter touches at both ends. */
function touches(s: Sighting, k: KeepoutFacts): boolean {
  if (!(s.z > k.from - EDGE && s.z < k.to + EDGE)) return false;
  if (Number.isNaN(k.theta)) return true;
  const radius = s.instrument === 'radius' ? s.value : s.value / 2;
  const half = (k.width / 2 + EDGE) / radius;
  const ends = s.instrument === 'two-point' ? [0, Math.PI] : [0];
  return ends.some(
    (turn) => Math.abs(Math.sin((s.theta + turn - k.theta) / 2)) < Math.sin(half / 2),
  );
}

function normal(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}
