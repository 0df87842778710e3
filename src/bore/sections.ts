/** Each measured depth on its own: mean, greatest and least diameter, oval, lobes, best-fit circle. */
import { fitCircle } from '../geometry/circle.ts';
import { polarWave } from '../geometry/harmonics.ts';
import { depthTables } from './depth.ts';
import { cosineColumn, TERMS } from './instruments.ts';
import {
  atDepth,
  type DepthSpread,
  meanCoefficients,
  type Posterior,
  spreadOf,
} from './posterior.ts';
import type { Section } from './types.ts';
import { valueFree } from './valueFree.ts';

/** Readings whose depths differ by less than this share of the length belong to one section. */
const SAME_DEPTH = 0.01;
/** Half a degree: finer than any clock position is kept by hand. */
const STEPS = 720;
const COSINE = Float64Array.from({ length: STEPS }, (_, i) => Math.cos((2 * Math.PI * i) / STEPS));
const SINE = Float64Array.from({ length: STEPS }, (_, i) => Math.sin((2 * Math.PI * i) / STEPS));
const LOBES_SAID = 6;

/** The measured depths, near ones drawn together. */
export function measuredDepths(p: Posterior): { z: number; rows: number[] }[] {
  const order = p.design.sightings.map((s, i) => ({ z: s.z, i })).sort((a, b) => a.z - b.z);
  const groups: { z: number; rows: number[] }[] = [];
  let first = Number.NEGATIVE_INFINITY;
  for (const { z, i } of order) {
    if (z - first > SAME_DEPTH * p.design.length) {
      groups.push({ z, rows: [i] });
      first = z;
    } else groups[groups.length - 1]!.rows.push(i);
  }
  for (const g of groups) {
    g.z = g.rows.reduce((sum, i) => sum + p.design.sightings[i]!.z, 0) / g.rows.length;
  }
  return groups;
}

/** Variance of the mean radius, and of each lobe's cosine and sine with their covariance, mm2. */
interface Doubt {
  readonly size: number;
  readonly lobes: readonly (readonly [cc: number, cs: number, ss: number])[];
}
const keptDoubts = valueFree<readonly Doubt[]>();

export function sections(p: Posterior): Section[] {
  const groups = measuredDepths(p);
  const depths = Float64Array.from(groups, (g) => g.z);
  const said = p.design.seen.filter((n) => n > 1 && n <= LOBES_SAID);
  const doubts = keptDoubts(p, '', () => doubtsAt(p, depths, said));
  const coefficients = meanCoefficients(p, depths);
  return groups.map((g, r) => {
    const c = coefficients.subarray(r * TERMS, (r + 1) * TERMS);
    const { size, lobes } = doubts[r]!;
    return {
      ...sectionOf(p, g.z, g.rows.length, c),
      give: 4 * Math.sqrt(Math.max(0, size)),
      lobes: said.map((n, k) => lobeOf(c, lobes[k]!, n)),
    };
  });
}

function doubtsAt(p: Posterior, depths: Float64Array, said: readonly number[]): Doubt[] {
  const toReadings = depthTables(depths, p.design.depths, p.design.length, p.smoothness);
  const own = depthTables(depths, depths, p.design.length, p.smoothness);
  return Array.from(depths, (_, r) => {
    const spread = spreadOf(p, atDepth(p, toReadings, own, r), [0, ...said]);
    const of = (a: number, b: number) => covariance(spread, p.design.pressed.count, a, b);
    return {
      size: of(0, 0),
      lobes: said.map((n) => {
        const k = cosineColumn(n);
        return [of(k, k), of(k, k + 1), of(k + 1, k + 1)] as const;
      }),
    };
  });
}

/** Posterior covariance of two columns at one depth, mm2. */
function covariance(spread: DepthSpread, count: number, a: number, b: number): number {
  let taken = 0;
  for (let i = 0; i < count; i++) {
    taken += spread.whitened[a * count + i]! * spread.whitened[b * count + i]!;
  }
  const shared = spread.shared === null ? 0 : spread.shared[a * TERMS + b]!;
  return (a === b ? spread.prior[a]! : 0) + shared - taken;
}

function sectionOf(
  p: Posterior,
  z: number,
  count: number,
  c: Float64Array,
): Omit<Section, 'give' | 'lobes'> {
  const seesOval = p.design.seen.includes(2);
  let least = 0;
  let greatest = 0;
  const across = Float64Array.from(
    { length: STEPS / 2 },
    (_, i) => radiusAt(c, i) + radiusAt(c, i + STEPS / 2),
  );
  across.forEach((d, i) => {
    if (d < across[least]!) least = i;
    if (d > across[greatest]!) greatest = i;
  });
  const at = (i: number) =>
    seesOval
      ? { diameter: across[i]!, theta: (2 * Math.PI * i) / STEPS }
      : { diameter: Number.NaN, theta: Number.NaN };
  return {
    z,
    count,
    meanDiameter: 2 * c[0]!,
    least: at(least),
    greatest: at(greatest),
    outOfRound: seesOval ? across[greatest]! - across[least]! : Number.NaN,
    circle: p.design.datum ? circleOf(c) : null,
  };
}

/** Radius at step i of a turn. */
function radiusAt(c: Float64Array, i: number): number {
  let r = c[0]!;
  for (let k = 1, at = i; k < c.length; k += 2, at = (at + i) % STEPS) {
    r += c[k]! * COSINE[at]! + c[k + 1]! * SINE[at]!;
  }
  return r;
}

function lobeOf(
  c: Float64Array,
  [cc, cs, ss]: Doubt['lobes'][number],
  n: number,
): Section['lobes'][number] {
  const k = cosineColumn(n);
  const { amplitude, phase, amplitudeSd, phaseSd } = polarWave(c[k]!, c[k + 1]!, cc, cs, ss);
  const first = phase < 0 ? phase + 2 * Math.PI : phase;
  return { n, amplitude, sd: amplitudeSd, theta: first / n, thetaSd: phaseSd / n };
}

/** Least-squares circle through the section, as points and not to first order. */
function circleOf(c: Float64Array): Section['circle'] {
  const x: number[] = [];
  const y: number[] = [];
  for (let i = 0; i < STEPS; i += 4) {
    const r = radiusAt(c, i);
    x.push(r * SINE[i]!);
    y.push(r * COSINE[i]!);
  }
  const fit = fitCircle(x, y);
  if (fit.status !== 'ok') return null;
  return { x: fit.center[0], y: fit.center[1], diameter: fit.diameter };
}
