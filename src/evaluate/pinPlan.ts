/** The plan of a pin or shaft: finished size, what is missing where, build-up, turning, and the other ways. On demand. */
import { depositOf, ELECTRODES, preheatOf, stringersOf } from '../assembly/weld.ts';
import { freeSpread } from '../bore/frame.ts';
import { type LandPlaces, landPlaces } from '../bore/lands.ts';
import { bestAxis, cleansUp, outsideAbout, shortOf, volumeBetween } from '../bore/outside.ts';
import {
  leastDiameter,
  type PinMatter,
  pinAdvice,
  pinWays,
  SPRAY,
  turnedRound,
} from '../bore/pinWays.ts';
import { SEATED, STEEL } from '../bore/removal.ts';
import { assumption, keptAxis, NO_AXIS } from '../bore/target.ts';
import type { Axis, Field, Sighting, WearSurface, Zone } from '../bore/types.ts';
import { findZones, ON_SIZE } from '../bore/zones.ts';
import { type BoreEvaluation, type Evaluation, evaluate, type Memory } from '../evaluate.ts';
import { defaultClearanceMm } from '../job/defaults.ts';
import { type MendingFacts, mendingFacts } from '../job/mendingFacts.ts';
import { type PinFacts, pinFacts } from '../job/pinFacts.ts';
import { hotWork } from '../job/safety.ts';
import type { Feature, Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { lengthMm } from '../job/units.ts';
import { holesOf } from './pinHoles.ts';
import type { Centring, Edge, Hole, LandOutcome, PinPlan, Worst } from './pinTypes.ts';
import type { Shape } from './shape.ts';
import type { SurveyOf } from './surveyOf.ts';
import { unwornSpan } from './wanted.ts';
import { equivalentOf } from './weld.ts';

/**
 * @param memory what was worked out of the job itself; it is read and left as it is
 * @returns null where the job holds no such survey of a pin, or it has no surface
 */
export function pinPlanOf(
  job: Job,
  { bore, survey }: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): PinPlan | null {
  const known = new Map(memory);
  const evaluation = evaluate(job, known, 'quick', shop);
  const of = evaluation.parts.find(({ id, kind }) => id === bore && kind === 'pin');
  const shape = known.get(`${bore} ${survey}`)?.shape;
  const feature = job.features.find(({ id }) => id === bore);
  if (!of || !shape || !feature) return null;
  const { stage: at } = feature.surveys.find(({ id }) => id === survey)!;
  const stage = at === 'after-build-up' ? 'built-up' : 'worn';
  const length = of.facts.length.mm;
  const pin = pinFacts(job, feature, length);
  const holes = holesOf(job, evaluation, pin);
  const size = sizeOf(pin, holes, of);
  const facts = mendingFacts(job, feature, shop);
  const on = landPlaces(shape.surface, pin.lands, of.facts.keepouts);
  const matter = {
    job,
    feature,
    shape,
    of,
    pin,
    facts,
    on,
    finished: size.finished.mm,
    stage,
  } as const;
  const centring = centringsOf(matter);
  const chosen = pin.centres ?? (centring.sideSeen ? 'kept' : 'shifted');
  return {
    pin,
    facts,
    length,
    stage,
    ...size,
    holes,
    ...centring,
    chosen,
    spray: SPRAY,
    ...plannedAbout(matter, centring[chosen], size, evaluation, centring.sideSeen),
  };
}

type Size = Pick<PinPlan, 'finished' | 'fromBore' | 'clearance'>;

/** As typed, else the new size, else from the bore it runs in, else the pin's own largest mean diameter as found. */
function sizeOf(pin: PinFacts, holes: readonly Hole[], { surveys }: BoreEvaluation): Size {
  const hole = holes.length === 0 ? Number.NaN : Math.min(...holes.map(({ size }) => size));
  const wanted = pin.clearance.mm >= 0 ? pin.clearance.mm : defaultClearanceMm(hole);
  const fromBore = hole - wanted;
  const means = surveys
    .find(({ sections }) => sections.length > 0)
    ?.sections.map(({ meanDiameter }) => meanDiameter);
  const known = [
    { mm: pin.finished, from: 'typed' },
    { mm: pin.newSize, from: 'new-size' },
    { mm: fromBore, from: 'bore' },
    { mm: Math.max(...(means ?? [])), from: 'largest' },
  ] as const;
  const finished = known.find(({ mm }) => mm > 0) ?? known[3];
  const clearance = wanted >= 0 ? wanted : defaultClearanceMm(finished.mm);
  return { finished, fromBore, clearance };
}

interface Matter {
  readonly job: Job;
  readonly feature: Feature;
  readonly shape: Shape;
  readonly of: BoreEvaluation;
  readonly pin: PinFacts;
  readonly facts: MendingFacts;
  readonly on: LandPlaces;
  readonly finished: number;
  readonly stage: PinPlan['stage'];
}

function centringsOf({ feature, shape, on, finished, of }: Matter) {
  const { surface, posterior, spread } = shape;
  const { centre } = feature.decisions;
  const stated = lengthMm(centre?.unwornTo) > lengthMm(centre?.unwornFrom);
  const kept = stated ? keptAxis(posterior, unwornSpan(centre, surface)) : NO_AXIS;
  const shifted = bestAxis(surface, on);
  const about = (rule: Centring['rule'], axis: Axis, sd: Field): Centring => {
    const { far } = outsideAbout(surface, axis);
    const short = shortOf(far, finished / 2);
    const all = (k: number) => on.places[k] === SEATED;
    return {
      rule,
      ...cleansUp(surface, far, sd, on, axis),
      ...sharesOf(short, sd, on, all),
      worst: worstOf(surface, short, sd, all),
    };
  };
  const length = of.facts.length.mm;
  const movedAt = (z: number) => {
    const x = shifted.x - kept.x + (shifted.leanX - kept.leanX) * z;
    const y = shifted.y - kept.y + (shifted.leanY - kept.leanY) * z;
    return { by: Math.hypot(x, y), theta: (Math.atan2(x, y) + 2 * Math.PI) % (2 * Math.PI) };
  };
  return {
    sideSeen: stated || assumption(posterior) === null,
    kept: about('kept', kept, surface.sd),
    shifted: about('shifted', shifted, freeSpread(posterior, surface.grid, spread)),
    moved: [movedAt(0), movedAt(length)] as const,
  };
}

/** All that goes by the chosen axis. */
function plannedAbout(
  { job, feature, shape, of, pin, facts, on, finished, stage }: Matter,
  { axis, rule, sure }: Centring,
  { clearance }: Size,
  evaluation: Evaluation,
  sideSeen: boolean,
) {
  const { surface, posterior, spread } = shape;
  const sd = rule === 'kept' ? surface.sd : freeSpread(posterior, surface.grid, spread);
  const about = outsideAbout(surface, axis);
  const short = shortOf(about.far, finished / 2);
  const built = buildUp(weldFor(facts.weld, stage), pin, on, about, short, surface.grid);
  const { turn, far } = about;
  const volume = volumeBetween(
    turn,
    on.share,
    () => finished / 2,
    (k) => far[k]! + Math.max(0, built.thickness[k]! || 0),
  );
  const turned = turnedRound(surface.grid, short, on, sideSeen);
  const planned = {
    about,
    on,
    short,
    turned,
    finished,
    clearance,
    leastDiameter: leastDiameter(surface.mean, surface.grid.theta.length, on),
    smaller: pin.smaller > 0 ? pin.smaller : stepBelow(sure, job),
    length: of.facts.length.mm,
    overEnd: pin.lands.some(({ from, to }) => !(from > 0 && to < of.facts.length.mm)),
    deposit: { volume: built.deposit.volume, thickness: built.thickness },
  };
  return {
    axis,
    surface,
    short,
    sd,
    ...built,
    lands: landsOf(surface, short, sd, on, pin, shape.sightings, evaluation),
    ...zonesOf(surface, short, sd, on),
    turnOff: { volume, mass: volume * STEEL },
    turned,
    ...(stage === 'worn' ? waysOf(planned, pin, job, feature) : { ways: [], advice: null }),
  };
}

/** The ways of a worn pin; what is welded up goes on as it was begun. */
function waysOf(planned: PinMatter, pin: PinFacts, job: Job, feature: Feature) {
  const ways = pinWays(planned);
  const { open, stops } = hotWork(job.safety);
  const rules = {
    acceptLow: pin.acceptLow,
    turnDownMost: pin.turnDownMost,
    skin: pin.skin,
    crackSeen: feature.decisions.crack === 'seen',
    weldable: open || stops.length === 0,
  };
  return { ways, advice: pinAdvice(ways, planned, rules) };
}

/** What is turned down is turned to a size that is looked for on a scale: 0.005 in or 0.1 mm, below what is sure to clean up. */
function stepBelow(sure: number, { units }: Job): number {
  const step = units === 'in' ? 0.127 : 0.1;
  return Math.floor(sure / step + 1e-9) * step;
}

/** What is welded up already gets more only where it is low. */
function weldFor(weld: MendingFacts['weld'], stage: PinPlan['stage']): MendingFacts['weld'] {
  return stage === 'built-up' ? { ...weld, over: 'low' } : weld;
}

function buildUp(
  weld: MendingFacts['weld'],
  { lands }: PinFacts,
  { places, share }: LandPlaces,
  { far, turn }: { readonly far: Field; readonly turn: Field },
  short: Field,
  { theta }: WearSurface['grid'],
) {
  const thickness = short.map((e, k) => {
    if (places[k] !== SEATED) return Number.NaN;
    return weld.over === 'low' && !(e > 0) ? 0 : Math.max(0, e + weld.allowance.mm);
  });
  const deposit = depositOf({
    thickness,
    radius: far,
    share: share.map((one, k) => one * turn[k]!),
    run: lands.reduce((sum, { from, to }) => sum + to - from, 0),
    bead: {
      height: weld.beadHeight.mm,
      width: weld.beadWidth.mm,
      overlap: weld.overlap.value / 100,
    },
    electrode: ELECTRODES.find(({ core }) => core === weld.electrode) ?? ELECTRODES[1]!,
    outside: true,
  });
  const order = stringersOf({
    thickness,
    radius: far,
    theta,
    pitch: weld.beadWidth.mm * (1 - weld.overlap.value / 100),
    round: deposit.stringers,
  });
  const equivalent = equivalentOf(weld.steel);
  return {
    thickness,
    deposit: { ...deposit, stringers: order.length },
    order,
    equivalent,
    preheat: preheatOf(equivalent),
  };
}

function zonesOf(surface: WearSurface, short: Field, sd: Field, { places }: LandPlaces) {
  const likely = short.map((_, k) => (places[k] === SEATED ? 0 : Number.NaN));
  const zones = (deviation: Field) => findZones(surface, { deviation, likely, sd });
  const columns = surface.grid.theta.length;
  const atMean = ({ theta, z }: Zone) =>
    short[surface.grid.z.indexOf(z) * columns + surface.grid.theta.indexOf(theta)]!;
  return {
    low: zones(short),
    unsure: zones(short.map((e, k) => e + 2 * sd[k]!)).filter((zone) => !(atMean(zone) > 0)),
  };
}

/** A reading so near to an end tells of it: an eighth of the stretch, or 3 mm. Judgement. */
const NEAR = { share: 1 / 8, mm: 3 } as const;

function landsOf(
  surface: WearSurface,
  short: Field,
  sd: Field,
  on: LandPlaces,
  { lands }: PinFacts,
  sightings: readonly Sighting[],
  { bores, parts }: Evaluation,
): LandOutcome[] {
  const columns = surface.grid.theta.length;
  return lands.map((facts, which) => {
    const here = (k: number) => on.land[k] === which && on.places[k] === SEATED;
    const rows = [
      ...new Set(Array.from(on.land, (one, k) => (one === which ? Math.floor(k / columns) : -1))),
    ].filter((row) => row >= 0);
    const near = Math.max(NEAR.mm, NEAR.share * (facts.to - facts.from));
    const edge = (z: number, row: number | undefined): Edge => ({
      ...worstOf(surface, short, sd, (k) => here(k) && Math.floor(k / columns) === row),
      z,
      measured: sightings.some(
        (one) =>
          Math.abs(one.z - z) <= near && one.z >= facts.from - near && one.z <= facts.to + near,
      ),
    });
    return {
      facts,
      runsIn: [...bores, ...parts].find(({ id }) => id === facts.runsIn)?.name ?? null,
      worst: worstOf(surface, short, sd, here),
      ...sharesOf(short, sd, on, here),
      edges: [edge(facts.from, rows[0]), edge(facts.to, rows.at(-1))],
    };
  });
}

function sharesOf(
  short: Field,
  sd: Field,
  { share }: LandPlaces,
  counts: (k: number) => boolean,
): { low: number; unsure: number } {
  let [all, low, unsure] = [0, 0, 0];
  short.forEach((e, k) => {
    if (!counts(k)) return;
    all += share[k]!;
    if (e > ON_SIZE) low += share[k]!;
    else if (!(e + 2 * sd[k]! <= 0)) unsure += share[k]!;
  });
  return { low: low / all, unsure: unsure / all };
}

function worstOf(
  { grid: { theta, z } }: WearSurface,
  short: Field,
  sd: Field,
  counts: (k: number) => boolean,
): Worst {
  const at = short.reduce((worst, e, k) => (counts(k) && !(e <= short[worst]!) ? k : worst), -1);
  const none = Number.NaN;
  if (at < 0) return { short: none, give: none, theta: none, z: none };
  return {
    short: short[at]!,
    give: 2 * sd[at]!,
    theta: theta[at % theta.length]!,
    z: z[Math.floor(at / theta.length)]!,
  };
}
