/**
 * The shape along the depth, told apart by evidence.
 *
 * Each candidate shape is fitted to the mean diameter of every measured depth by weighted least squares; the
 * Bayesian information criterion (Schwarz, Annals of Statistics 6, 1978: chi^2 + unknowns * ln depths) says which
 * explains them best for its number of unknowns. A shape counts as told only where no simpler one comes within 4.5 of
 * the best, and no equally simple one within 3 (Kass and Raftery 1995 call 2 to 6 positive evidence): straight bores are
 * called something else in fewer than one in twenty-five, other shapes by a wrong name in fewer than one in sixteen
 * (tests/laws/profile, tests/laws/profileNames).
 */
import { linearLeastSquares } from '../num/leastSquares.ts';
import { cosineColumn, sizeGain, TERMS } from './instruments.ts';
import { meanCoefficients, type Posterior } from './posterior.ts';
import { LEAST_SD } from './pressed.ts';
import { measuredDepths } from './sections.ts';
import type { Profile, ProfileShape } from './types.ts';

/** Mean diameter of one depth, across, mm, and one standard deviation. */
export interface DepthMean {
  readonly z: number;
  readonly diameter: number;
  readonly sd: number;
}

const TOLD = 3;
/** A shape with more unknowns must explain the depths better than a simpler one by this. */
const SIMPLER = 4.5;
/** What a repairer would not call a shape, across, mm: below this all is straight. 0.0001 in. */
const UNEVEN = 0.0025;

/** Of two mouths the smaller counts as open when it opens at least this share of the other. */
const OTHER_MOUTH = 0.2;

/** Columns of a candidate shape beside the level, and how its unknowns must be signed to bear the name. */
interface Candidate {
  readonly shape: ProfileShape;
  readonly columns: readonly ((z: number) => number)[];
  /** +1 or -1 a column: the sign that the name needs; 0 either. */
  readonly signs: readonly number[];
  /** Unknowns that the columns carry besides their amplitudes (a reach, a place). */
  readonly hidden: number;
  readonly reach: number;
}

/** Size of each depth by itself: its readings less what the surface says of their lobes. */
export function depthMeans(p: Posterior): DepthMean[] {
  const sized = (i: number) => p.design.sightings[i]!.setup < 0;
  const groups = measuredDepths(p).filter((g) => g.rows.some(sized));
  return groups.map((g) => {
    const c = meanCoefficients(p, [g.z]);
    let sum = 0;
    let weight = 0;
    for (const i of g.rows) {
      if (!sized(i)) continue;
      const s = p.design.sightings[i]!;
      let lobes = 0;
      for (let k = cosineColumn(1); k < TERMS; k++) lobes += p.design.gain[i * TERMS + k]! * c[k]!;
      const gain = sizeGain(s.instrument);
      const w = (gain / (2 * Math.max(s.sd * p.smoothness.noise, LEAST_SD))) ** 2;
      sum += (w * 2 * (s.value - lobes)) / gain;
      weight += w;
    }
    return { z: g.z, diameter: sum / weight, sd: Math.hypot(Math.sqrt(1 / weight), UNEVEN / 2) };
  });
}

export function profileOf(means: readonly DepthMean[], length: number): Profile | null {
  if (means.length === 0) return null;
  const line = lineOf(means, length);
  if (means.length < 3) return { ...untold(line), shape: 'not-told' };
  const fits = candidates(means, length)
    .map((c) => ({ candidate: c, fit: fitCandidate(c, means) }))
    .filter((f) => f.fit !== null)
    .map(({ candidate, fit }) => ({ candidate, ...fit! }));
  const best = new Map<ProfileShape, (typeof fits)[number]>();
  for (const f of fits) {
    const known = best.get(f.candidate.shape);
    if (known === undefined || f.criterion < known.criterion) best.set(f.candidate.shape, f);
  }
  const ranked = [...best.values()].sort((a, b) => a.criterion - b.criterion);
  const simplest = ranked
    .filter((f) => f.criterion < ranked[0]!.criterion + SIMPLER)
    .reduce((a, b) => (b.unknowns < a.unknowns ? b : a));
  const rivals = ranked.filter(
    (f) =>
      f !== simplest &&
      f.unknowns === simplest.unknowns &&
      f.criterion < ranked[0]!.criterion + TOLD,
  );
  const rest = ranked.filter((f) => f !== simplest);
  const told = rivals.length === 0;
  return {
    ...line,
    shape: told ? simplest.candidate.shape : 'not-told',
    evidence: rest.length > 0 ? rest[0]!.criterion - simplest.criterion : Number.NaN,
    criterion: 'BIC',
    candidates: ranked.map((f) => ({ shape: f.candidate.shape, criterion: f.criterion })),
    depthOfShape: simplest.height,
    reach: simplest.candidate.reach,
    fitted: told ? drawnOut(simplest.candidate, simplest.unknownsAt, means, length) : [],
  };
}

/** Depths that the fitted shape is told at, evenly from face A to the far end. */
const FITTED = 65;

/** The fitted shape drawn out along the bore. @param x its level above the depths' average, and its amplitudes */
function drawnOut(
  { columns }: Candidate,
  x: ArrayLike<number>,
  means: readonly DepthMean[],
  length: number,
): Profile['fitted'] {
  const level = levelOf(means);
  return Array.from({ length: FITTED }, (_, i) => {
    const z = (length * i) / (FITTED - 1);
    const rise = columns.reduce((sum, f, k) => sum + x[k + 1]! * f(z), x[0]!);
    return { z, diameter: level + rise };
  });
}

function untold(line: { taper: number; taperSd: number }): Omit<Profile, 'shape'> {
  return {
    ...line,
    evidence: Number.NaN,
    criterion: 'BIC',
    candidates: [],
    depthOfShape: 0,
    reach: Number.NaN,
    fitted: [],
  };
}

function lineOf(means: readonly DepthMean[], length: number): { taper: number; taperSd: number } {
  const fit = weightedFit([(z) => z / length], means);
  if (fit === null) return { taper: Number.NaN, taperSd: Number.NaN };
  return { taper: fit.x[1]! / length, taperSd: Math.sqrt(fit.inverse[3]!) / length };
}

function weightedFit(columns: readonly ((z: number) => number)[], means: readonly DepthMean[]) {
  const p = columns.length + 1;
  const level = levelOf(means);
  const a = means.flatMap((m) => [1 / m.sd, ...columns.map((f) => f(m.z) / m.sd)]);
  const b = means.map((m) => (m.diameter - level) / m.sd);
  const fit = linearLeastSquares(a, b, means.length, p);
  return fit.status === 'ok' ? fit : null;
}

function levelOf(means: readonly DepthMean[]): number {
  return means.reduce((sum, m) => sum + m.diameter, 0) / means.length;
}

interface Fitted {
  readonly criterion: number;
  readonly unknowns: number;
  readonly height: number;
  /** The unknowns found: level, then one amplitude a column, mm. */
  readonly unknownsAt: ArrayLike<number>;
}

function fitCandidate(c: Candidate, means: readonly DepthMean[]): Fitted | null {
  const unknowns = 1 + c.columns.length + c.hidden;
  if (unknowns > means.length) return null;
  const fit = weightedFit(c.columns, means);
  if (fit === null) return null;
  for (let i = 0; i < c.columns.length; i++) {
    if (c.signs[i]! * fit.x[i + 1]! < 0) return null;
  }
  const amplitudes = c.columns.map((f, i) => fit.x[i + 1]! * extent(f, means));
  const greatest = amplitudes.reduce((m, v) => (Math.abs(v) > Math.abs(m) ? v : m), 0);
  const least = Math.max(UNEVEN, OTHER_MOUTH * Math.abs(greatest));
  if (amplitudes.some((v) => Math.abs(v) < least)) return null;
  return {
    criterion: fit.sumSquares + unknowns * Math.log(means.length),
    unknowns,
    height: Math.abs(greatest),
    unknownsAt: fit.x,
  };
}

/** How much a column varies over the measured depths. */
function extent(f: (z: number) => number, means: readonly DepthMean[]): number {
  const values = means.map((m) => f(m.z));
  return Math.max(...values) - Math.min(...values);
}

/** Shares of the length over which a mouth's opening dies out, as a half-length of an exponential. */
const MOUTHS = [0.03, 0.045, 0.065, 0.09, 0.12, 0.16];
/** An exponential opening is down to a twentieth after three of its lengths. */
const MOUTH_ENDS = 3;

function candidates(means: readonly DepthMean[], length: number): Candidate[] {
  const middle = (z: number) => 1 - ((2 * z) / length - 1) ** 2;
  const plain = (
    shape: ProfileShape,
    columns: Candidate['columns'],
    signs: Candidate['signs'],
  ): Candidate => ({ shape, columns, signs, hidden: 0, reach: Number.NaN });
  const out = [
    plain('straight', [], []),
    plain('taper', [(z) => z / length], [0]),
    plain('barrel', [middle], [1]),
    plain('waist', [middle], [-1]),
  ];
  for (const share of MOUTHS) {
    const d = share * length;
    const atA = (z: number) => Math.exp(-z / d);
    const atB = (z: number) => Math.exp(-(length - z) / d);
    const mouth = (shape: ProfileShape, columns: Candidate['columns'], signs: number[]) =>
      out.push({ shape, columns, signs, hidden: 1, reach: MOUTH_ENDS * d });
    mouth('bell-at-A', [atA], [1]);
    mouth('bell-at-B', [atB], [1]);
    mouth('bell-both', [atA, atB], [1, 1]);
  }
  for (let i = 1; i < means.length; i++) {
    const at = (means[i - 1]!.z + means[i]!.z) / 2;
    out.push({
      shape: 'step',
      columns: [(z) => (z > at ? 1 : 0)],
      signs: [0],
      hidden: 1,
      reach: at,
    });
  }
  return out;
}
