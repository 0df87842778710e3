/**
 * How the oval's long way goes along the depth: the same, turning steadily, or all at once as when the clock was
 * turned part-way through a survey.
 *
 * The three are compared by the Bayesian information criterion, as the shapes along the depth are. That an oval
 * turns is said only where it explains the readings by 5 better than one that does not, of 2 to 6 ("positive") and 6 to
 * 10 ("strong" evidence, Kass and Raftery 1995): it is said of fewer than one clean survey in fifty (tests/laws/turn).
 */
import { polarWave } from '../geometry/harmonics.ts';
import { type OvalAt, turnModels } from '../geometry/ovalTurn.ts';
import type { DepthLobes } from './depthLobes.ts';
import type { Posterior } from './posterior.ts';
import type { OvalTurn } from './types.ts';

const TURNS = 5;
/** Half an hour on the clock: a dent or a groove turns an oval by less, and nobody marks a direction nearer. */
const LEAST_TURN = Math.PI / 12;
/** Of a steady turn and one all at once the better is told where the other stays behind by this. */
const TOLD = 3;
const FEWEST_DEPTHS = 3;

/** @returns null where fewer than three depths show an oval that points somewhere */
export function ovalTurn(p: Posterior, found: readonly DepthLobes[]): OvalTurn | null {
  const depths = ovalsByDepth(found);
  const told = depths.map(({ oval }) => pointed(oval));
  if (told.filter(({ theta }) => !Number.isNaN(theta)).length < FEWEST_DEPTHS) return null;
  const ranked = turnModels(depths.map(({ oval }) => oval));
  const same = ranked.find((m) => m.kind === 'same')!;
  const rest = ranked.filter((m) => m !== same);
  const [best, other] = rest.filter((m) => Math.abs(m.turn) >= LEAST_TURN);
  const turned = best !== undefined && best.criterion <= same.criterion - TURNS;
  const open = turned && other !== undefined && other.criterion < best.criterion + TOLD;
  const shown = !turned ? same : open && best.kind === 'steady' ? other : best;
  const below = shown.kind === 'at-once' ? depths.slice(shown.at) : [];
  return {
    kind: open ? 'not-told' : shown.kind,
    evidence: Math.abs(same.criterion - (best ?? rest[0]!).criterion),
    criterion: 'BIC',
    candidates: ranked.map(({ kind, criterion }) => ({ kind, criterion })),
    first: shown.first,
    firstSd: shown.firstSd,
    last: shown.last,
    lastSd: shown.lastSd,
    turn: shown.turn,
    turnSd: shown.turnSd,
    from: below[0]?.oval.z ?? Number.NaN,
    rows: below
      .flatMap(({ sightings }) => sightings.map((i) => p.design.sightings[i]!.row))
      .sort((a, b) => a - b),
    depths: told,
  };
}

export interface DepthOval {
  readonly oval: OvalAt;
  readonly sightings: readonly number[];
}

/** One oval a depth: where several kinds of reading show it, each counts by how well. */
export function ovalsByDepth(found: readonly DepthLobes[]): DepthOval[] {
  const byDepth = new Map<number, DepthOval>();
  for (const { z, oval, sightings } of found) {
    if (oval === null) continue;
    const known = byDepth.get(z);
    byDepth.set(
      z,
      known === undefined
        ? { oval, sightings }
        : { oval: together(known.oval, oval), sightings: [...known.sightings, ...sightings] },
    );
  }
  return [...byDepth.values()].sort((p, q) => p.oval.z - q.oval.z);
}

/** Mean of two ovals by their inverse covariances. */
function together(p: OvalAt, q: OvalAt): OvalAt {
  const inverse = ({ aa, ab, bb }: Pick<OvalAt, 'aa' | 'ab' | 'bb'>) => {
    const det = aa * bb - ab * ab;
    return { aa: bb / det, ab: -ab / det, bb: aa / det };
  };
  const [u, v] = [inverse(p), inverse(q)];
  const s = inverse({ aa: u.aa + v.aa, ab: u.ab + v.ab, bb: u.bb + v.bb });
  const a = u.aa * p.a + u.ab * p.b + v.aa * q.a + v.ab * q.b;
  const b = u.ab * p.a + u.bb * p.b + v.ab * q.a + v.bb * q.b;
  return { z: p.z, a: s.aa * a + s.ab * b, b: s.ab * a + s.bb * b, ...s };
}

/** Amplitude per side and the clock position of the long way, 0 to pi; NaN where the oval is too small to point. */
function pointed({ z, a, b, aa, ab, bb }: OvalAt): OvalTurn['depths'][number] {
  const { amplitude, phase, amplitudeSd, phaseSd } = polarWave(a, b, aa, ab, bb);
  const first = phase < 0 ? phase + 2 * Math.PI : phase;
  const told = !Number.isNaN(phaseSd);
  return {
    z,
    amplitude,
    sd: amplitudeSd,
    theta: told ? first / 2 : Number.NaN,
    thetaSd: phaseSd / 2,
  };
}
