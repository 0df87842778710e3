/**
 * Slips that move many readings at once: a clock turned or mirrored for some depths, readings from face B typed as from
 * face A, and a drift from the first reading to the last.
 */
import { depthLobes } from './depthLobes.ts';
import { design } from './design.ts';
import { information } from './leaveOneOut.ts';
import { condition, type Posterior } from './posterior.ts';
import { measuredDepths } from './sections.ts';
import { learnForJudging } from './smoothness.ts';
import { ovalTurn } from './turn.ts';
import type { OvalTurn, Sighting } from './types.ts';

/** Several readings that one slip explains. */
export interface RowSlip {
  /** Places in the posterior's list of sightings. */
  readonly places: readonly number[];
  readonly slip: string;
}

/** @param p the readings without single suspects */
export function rowSlips(p: Posterior): RowSlip[] {
  const faces = facesMixed(p);
  if (faces !== null) return [faces];
  const turn = ovalTurn(p, depthLobes(p));
  const turned = turn && (turnedPart(p, turn) ?? turnedRow(p, turn));
  return turned ? [turned] : [];
}

/** More is asked of a check than of a remark: it says that readings are wrong. */
const TURN_EVIDENCE = 8;

/** All rows from some depth on, or all up to it: the fewer of them are in doubt. */
function turnedPart(p: Posterior, turn: OvalTurn): RowSlip | null {
  if (turn.kind !== 'at-once' || turn.evidence < TURN_EVIDENCE) return null;
  const below = new Set(turn.rows);
  const all = p.design.sightings.map((_, i) => i);
  const deeper = all.filter((i) => below.has(p.design.sightings[i]!.row));
  const upper = all.filter((i) => !below.has(p.design.sightings[i]!.row));
  const isDeeper = deeper.length <= upper.length;
  const far = isDeeper ? turn.turn : -turn.turn;
  const places = isDeeper ? deeper : upper;
  return turnSlip(p, places, { far, usual: turn.first, seen: turn.last, sd: turn.turnSd });
}

/** Standard deviations by which one depth's oval must point elsewhere, and by which the others may differ. */
const ROW_OFF = 5;
const OTHERS_OFF = 3;
/** Dents and grooves turn an oval by so much at one depth, one standard deviation: four degrees. */
const WANDER = 0.07;
const LEAST_TURN = Math.PI / 12;
const FEWEST_DEPTHS = 4;

/** One depth whose oval points elsewhere than all others, which agree. */
function turnedRow(p: Posterior, turn: OvalTurn): RowSlip | null {
  const pointing = turn.depths.filter(({ theta }) => !Number.isNaN(theta));
  if (pointing.length < FEWEST_DEPTHS) return null;
  for (const one of pointing) {
    const others = pointing.filter((d) => d !== one);
    const usual = meanDirection(others);
    const off = (d: (typeof pointing)[number], sd: number) =>
      halfTurn(d.theta - usual.theta) / Math.hypot(d.thetaSd, WANDER, sd);
    const far = halfTurn(one.theta - usual.theta);
    if (!(Math.abs(far) >= LEAST_TURN && Math.abs(off(one, usual.sd)) > ROW_OFF)) continue;
    if (others.some((d) => Math.abs(off(d, 0)) > OTHERS_OFF)) continue;
    const sd = Math.hypot(one.thetaSd, usual.sd);
    const group = measuredDepths(p).find(({ z }) => z === one.z);
    if (group === undefined) continue;
    return turnSlip(p, group.rows, { far, usual: usual.theta, seen: one.theta, sd });
  }
  return null;
}

/** Directions of ovals repeat after half a turn: their mean on the doubled angle, weighted by how well they point. */
function meanDirection(all: OvalTurn['depths']): { theta: number; sd: number } {
  let [x, y, information] = [0, 0, 0];
  for (const { theta, thetaSd } of all) {
    const weight = 1 / (thetaSd * thetaSd + WANDER * WANDER);
    x += weight * Math.cos(2 * theta);
    y += weight * Math.sin(2 * theta);
    information += weight;
  }
  return { theta: Math.atan2(y, x) / 2, sd: 1 / Math.sqrt(information) };
}

/** Brought into a quarter turn to either side. */
function halfTurn(angle: number): number {
  return angle - Math.PI * Math.round(angle / Math.PI);
}

/** How some readings' oval points elsewhere than the others': by how far, the others' direction and theirs. */
interface Turned {
  readonly far: number;
  readonly usual: number;
  readonly seen: number;
  readonly sd: number;
}

const HALF_HOUR = (2 * Math.PI) / 24;
/**
 * With the slip undone all readings must be likelier by this, natural logarithm: the criterion counts twice that. An oval
 * that points elsewhere beside a gouge or a lump of weld is no turned clock: turned back, its readings fit no better.
 */
const UNDONE = TURN_EVIDENCE / 2;

/** A clock seen from face B shows an oval at the mirror image of where it lies: that looks like a turn as well. */
function turnSlip(
  p: Posterior,
  places: readonly number[],
  { far, usual, seen, sd }: Turned,
): RowSlip | null {
  const halves = Math.max(1, Math.round(Math.abs(far) / HALF_HOUR));
  const back = Math.sign(far) * halves * HALF_HOUR;
  const mirrored = Math.abs(halfTurn(usual + seen)) < 2 * Math.hypot(sd, WANDER);
  const turnedBack = gainOf(p, places, (s) => ({ ...s, theta: s.theta - back }));
  const gain = mirrored
    ? Math.max(
        turnedBack,
        gainOf(p, places, (s) => ({ ...s, theta: -s.theta })),
      )
    : turnedBack;
  if (!(gain > UNDONE)) return null;
  const hours = halves === 1 ? 'half an hour' : halves === 2 ? '1 hour' : `${halves / 2} hours`;
  const turned = `the clock turned by ${hours} ${far > 0 ? 'clockwise' : 'anticlockwise'} in these rows`;
  const slip = mirrored ? `${turned}, or read from face B with the clock of face A` : turned;
  return { places, slip };
}

/**
 * How much likelier all readings are with a slip of some of them undone, natural logarithm. Readings that contradict each
 * other make the gauge look poor: with the slip undone all is learned anew.
 */
function gainOf(
  p: Posterior,
  places: readonly number[],
  undo: (sighting: Sighting) => Sighting,
): number {
  const { sightings, setups, length, wornSide } = p.design;
  const inside = new Set(places);
  const undone = design(
    sightings.map((s, i) => (inside.has(i) ? undo(s) : s)),
    setups,
    length,
    wornSide,
  );
  const learned = learnForJudging(undone, p.base, p.smoothness.given);
  const again = condition(undone, learned, p.base);
  return again === null ? 0 : p.surprise - again.surprise;
}

/** Natural logarithm by which readings must be likelier: one in 20 000 by chance. */
const EVIDENCE = 10;
/** With fewer readings nothing is said of several at once. */
const FEWEST = 4;
/** Refitting more readings than this takes too long. */
const MOST_READINGS = 200;
/** Depths go to and fro all the time where they are read clock position by clock position: nothing can be said. */
const MOST_RETURNS = 3;

/**
 * From where the depths begin anew or turn back, in the order of the table, all are from the other face: believed where
 * the readings are likelier by far with clock and depths mirrored.
 */
function facesMixed(p: Posterior): RowSlip | null {
  const { sightings, length, count } = p.design;
  if (count > MOST_READINGS) return null;
  const order = sightings.map((_, i) => i).sort((a, b) => sightings[a]!.row - sightings[b]!.row);
  const starts = returnsOf(order.map((i) => sightings[i]!.z));
  if (starts.length > MOST_RETURNS) return null;
  let most: RowSlip | null = null;
  let evidence = EVIDENCE;
  for (const at of starts) {
    const places = order.slice(at);
    if (places.length < FEWEST) continue;
    const gain = gainOf(p, places, (s) => ({ ...s, theta: -s.theta, z: length - s.z }));
    if (!(gain > evidence)) continue;
    evidence = gain;
    most = { places, slip: 'face B typed as face A: clock and depths mirrored' };
  }
  return most;
}

/** Where a row of depths that rose falls, or the other way about; the first step says which way it goes. */
function returnsOf(z: readonly number[]): number[] {
  const starts: number[] = [];
  let way = 0;
  for (let i = 1; i < z.length; i++) {
    const next = Math.sign(z[i]! - z[i - 1]!);
    if (next === 0) continue;
    if (way !== 0 && next !== way) starts.push(i);
    way = next;
  }
  return starts;
}

/** A drift that a gauge or a hand may make in one set, mm as it reads; more is another slip. */
const MOST_DRIFT = 0.1;
/** Standard deviations of the drift itself. */
const DRIFT = 4;
/** Same place: half a degree and a tenth of a millimetre. */
const SAME_ANGLE = 0.0087;
const SAME_DEPTH = 0.1;

/**
 * The first reading and its repeat, where the first place is read again at the end and the readings drifted: by
 * generalised least squares, each counting by how far into the set it lies. Else null.
 */
export function driftOf(p: Posterior): { first: number; last: number } | null {
  const pair = repeatedFirst(p);
  if (pair === null) return null;
  const rows = p.design.sightings.map(({ row }) => row);
  const from = Math.min(...rows);
  const over = Math.max(...rows) - from;
  const share = Float64Array.from(rows, (row) => (row - from) / over);
  const along = share.reduce((sum, x, i) => sum + x * p.weights[i]!, 0);
  const known = information(p, share);
  const drift = along / known;
  const far = Math.abs(drift) * Math.sqrt(known) > DRIFT;
  return far && Math.abs(drift) <= MOST_DRIFT ? pair : null;
}

function repeatedFirst(p: Posterior): { first: number; last: number } | null {
  const { sightings } = p.design;
  const order = sightings.map((_, i) => i).sort((a, b) => sightings[a]!.row - sightings[b]!.row);
  const first = order[0];
  const last = order.at(-1);
  if (first === undefined || last === undefined || order.length < FEWEST) return null;
  const [a, b] = [sightings[first]!, sightings[last]!];
  const same =
    a.instrument === b.instrument &&
    a.setup === b.setup &&
    Math.abs(a.z - b.z) < SAME_DEPTH &&
    Math.abs(Math.sin((a.theta - b.theta) / 2)) < SAME_ANGLE / 2;
  return same ? { first, last } : null;
}
