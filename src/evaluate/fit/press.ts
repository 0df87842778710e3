/** The press fit of one bushing: what it is locally, what it presses with, and what practice and standards call for. */
import { type FitRange, fitRanges } from '../../assembly/fitRanges.ts';
import {
  type Pressed,
  type PressFault,
  pressed,
  type Rings,
  ringsFault,
  type StrengthOf,
  slip,
  stressed,
  yieldsAt,
} from '../../assembly/pressFit.ts';
import { SEATED } from '../../bore/removal.ts';
import type { Share } from '../../bore/seating.ts';
import type { Sighting } from '../../bore/types.ts';
import { pressFits } from '../../bore/wayOutcome.ts';
import type { WayOutcome } from '../../bore/wayTypes.ts';
import { type PressFacts, pressFacts } from '../../job/pressFacts.ts';
import { type MetalUsed, metalUsed } from './material.ts';
import type { RoundFit } from './round.ts';
import type { FitMatter, Seated, SeatedWall } from './seated.ts';

/** What stands in the way of the pressures. */
export type PressMissing = PressFault | 'inside' | 'outside' | 'boss-size';

export interface RingLoad {
  /** MPa: the stress that counts against the strength, and how much of it that is. */
  readonly stress: number;
  readonly share: number;
}

/** What one press fit does, across, mm; MPa. */
export interface PressCase extends Pressed {
  readonly bushingLoad: RingLoad;
  readonly bossLoad: RingLoad;
}

/** N and N mm; `low` by the lower friction, `high` by the higher. */
export interface Held {
  readonly low: { readonly force: number; readonly torque: number };
  readonly high: { readonly force: number; readonly torque: number };
}

export interface PressPart {
  /** Across, mm. */
  readonly wanted: { readonly mm: number; readonly from: 'typed' | 'default' | 'missing' };
  readonly local: WayOutcome['pressFit'];
  /** Share of the seat that is held. */
  readonly held: Share;
  /** Bushing less the largest diameter of the seat: all that a two-point gauge can tell; across, mm. */
  readonly twoPoint: number;
  /** Nothing but two-point gauges measured this survey: odd lobes stay unseen. */
  readonly onlyTwoPoint: boolean;
  readonly facts: PressFacts;
  readonly bushing: MetalUsed;
  readonly boss: MetalUsed;
  readonly rings: Rings;
  /** Of the seat without what is kept off, mm. */
  readonly length: number;
  /** Null: the cases stand. */
  readonly missing: PressMissing | null;
  /** At the least, mean and greatest local press fit less what roughness takes; null where `missing`. */
  readonly cases: {
    readonly least: PressCase;
    readonly mean: PressCase;
    readonly greatest: PressCase;
  } | null;
  /** As it presses in the bore as it is; null: not known. */
  readonly round: RoundFit | null;
  /** `low` the lesser of both sums, to hold by; `high` the larger, to choose a press by. */
  readonly holds: Held | null;
  /** The two sums: pressing evenly all round with the mean press fit, and as the bore really is. */
  readonly sums: { readonly even: Held; readonly shape: Held | null } | null;
  /** Press fit, across, at which each first yields; Infinity: never; NaN where `missing`. */
  readonly yields: { readonly bushing: number; readonly boss: number };
  readonly ranges: readonly FitRange[];
}

/** @param round the same bushing in the bore as it is; null: not known */
export function pressPart(
  matter: FitMatter,
  seated: Seated,
  round: RoundFit | null = null,
): PressPart {
  const { job, bore, feature, survey } = matter;
  const { wall, inside, boss: around } = seated;
  const facts = pressFacts(feature);
  const bushing = metalUsed(job, seated.material, 'bushing');
  const boss = metalUsed(job, around.material, 'boss');
  const rings: Rings = {
    inside,
    seat: wall.outside,
    outside: around.outside,
    bushing: bushing.material,
    boss: boss.material,
  };
  const missing = missingOf(rings);
  const local = localFit(wall);
  const at = (fit: number) => caseOf(rings, fit - facts.loss.mm, bushing, boss);
  const cases =
    missing !== null || Number.isNaN(local.mean)
      ? null
      : { least: at(local.least), mean: at(local.mean), greatest: at(local.greatest) };
  const length = seatLength(wall);
  const sums = cases && sumsOf(rings, cases.mean, round, length, facts);
  return {
    wanted: bore.facts.pressFit,
    local,
    held: wall.held,
    twoPoint: twoPointFit(wall),
    onlyTwoPoint: onlyTwoPoint(survey.sightings),
    facts,
    bushing,
    boss,
    rings,
    length,
    missing,
    cases,
    round,
    holds: sums && {
      low: lesser(sums.even.low, sums.shape?.low),
      high: larger(sums.even.high, sums.shape?.high),
    },
    sums,
    yields: {
      bushing: yieldsAt(rings, 'bushing', strengthOf(bushing)),
      boss: yieldsAt(rings, 'boss', strengthOf(boss)),
    },
    ranges: fitRanges(wall.outside),
  };
}

function sumsOf(
  rings: Rings,
  mean: PressCase,
  round: RoundFit | null,
  length: number,
  { frictionLow, frictionHigh }: PressFacts,
): NonNullable<PressPart['sums']> {
  const held = (pressure: number): Held => ({
    low: slip(rings, { pressure }, length, frictionLow.value),
    high: slip(rings, { pressure }, length, frictionHigh.value),
  });
  return { even: held(mean.pressure), shape: round && held(round.mean) };
}

function lesser(one: Held['low'], other: Held['low'] | undefined): Held['low'] {
  return other !== undefined && other.force < one.force ? other : one;
}

function larger(one: Held['high'], other: Held['high'] | undefined): Held['high'] {
  return other !== undefined && other.force > one.force ? other : one;
}

/** What is not given comes before what is given and cannot be. */
function missingOf(rings: Rings): PressMissing | null {
  if (!(rings.seat > 0)) return 'outside';
  if (Number.isNaN(rings.inside)) return 'inside';
  if (Number.isNaN(rings.outside)) return 'boss-size';
  return ringsFault(rings);
}

/** The same figures as in the table of the ways of mending. */
function localFit({ press, sd, ...wall }: SeatedWall): WayOutcome['pressFit'] {
  return pressFits(
    wall,
    press.map((over) => -over / 2),
    0,
    sd,
  );
}

/** The largest place counts: both ends of a diameter must be seat. */
function twoPointFit({ grid, places, press }: SeatedWall): number {
  const columns = grid.theta.length;
  const half = columns / 2;
  let least = Number.NaN;
  for (let k = 0; k < press.length; k++) {
    const column = k % columns;
    if (column >= half) continue;
    const other = k + half;
    if (places[k] !== SEATED || places[other] !== SEATED) continue;
    const fit = (press[k]! + press[other]!) / 2;
    if (!(fit >= least)) least = Number.isNaN(fit) ? least : fit;
  }
  return least;
}

function onlyTwoPoint(sightings: readonly Sighting[]): boolean {
  return sightings.length > 0 && sightings.every((one) => one.instrument === 'two-point');
}

/** Length of the seat all round: what is kept off counts for nothing. */
function seatLength({ grid, places, shares }: SeatedWall): number {
  const columns = grid.theta.length;
  let area = 0;
  for (let k = 0; k < places.length; k++) {
    if (places[k] === SEATED) area += shares[Math.floor(k / columns)]!;
  }
  return area / (2 * Math.PI);
}

function strengthOf({ material, brittle }: MetalUsed): StrengthOf {
  return { strength: material.yield, brittle };
}

function caseOf(rings: Rings, fit: number, bushing: MetalUsed, boss: MetalUsed): PressCase {
  const found = pressed(rings, fit);
  const load = (which: 'bushing' | 'boss', of: StrengthOf): RingLoad => {
    const stress = stressed(found[which], of);
    return { stress, share: stress / of.strength };
  };
  return {
    ...found,
    bushingLoad: load('bushing', strengthOf(bushing)),
    bossLoad: load('boss', strengthOf(boss)),
  };
}
