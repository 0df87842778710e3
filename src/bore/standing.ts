/**
 * Where the wall stands after some passes, by every survey since metal first came off.
 *
 * A wall that was ground by hand is rougher than a surface that is smooth between its readings can follow: a pass ends
 * where tool, bite and slope let it. What it took there is known, though, but for the hand: the wall now is the wall as
 * found and, of every pass, so much of what was asked off. So the readings of all surveys are put back to the wall as
 * found, which is smooth, and the share that the hand took in each pass is one more unknown beside it: the same Gaussian
 * posterior, still exact (universal kriging: Rasmussen and Williams 2006, section 2.7).
 */
import { choleskyInPlace, solveLower, solveLowerTransposed } from '../num/cholesky.ts';
import { type Design, design } from './design.ts';
import { fieldAt } from './gate.ts';
import { touches } from './instruments.ts';
import { toldSd } from './leaveOneOut.ts';
import { condition, type Posterior } from './posterior.ts';
import { pressValues, releaseWeights } from './pressed.ts';
import { type GridSpread, gridSpread, meanOn, wearSurface } from './surface.ts';
import type { Field, Grid, SetupPrior, Sighting, Smoothness, WearSurface } from './types.ts';

/** A hand takes so much more or less than it is asked, one standard deviation, as a share of it. */
const HAND = 0.3;
/** And so much at one place than at another in the same pass: whichever of these the readings make likeliest. */
const UNEVEN: readonly number[] = [0.1, 0.25, 0.6];
/** The pin or spindle that radii are taken from stands elsewhere each time it is set, mm; over the whole bore's length. */
const SET_ANEW = { offset: 0.05, lean: 0.05 } as const;

/** A survey, and the pass that was asked of the wall afterwards. */
export interface Stage {
  readonly sightings: readonly Sighting[];
  readonly setups: readonly SetupPrior[];
  /** Per side, mm, on the grid; NaN nothing. Of the last survey it is of no account. */
  readonly asked: Field;
}

export interface Standing {
  readonly surface: WearSurface;
  /** Of the wall as found, in the frame of the last survey. */
  readonly posterior: Posterior;
  readonly spread: GridSpread;
  /** One standard deviation of the wall now through not knowing the hand, mm; it is in the surface's. */
  readonly through: Field;
  /** One standard deviation of what a reading of the last survey would be without its scatter, as it reads, mm. */
  readonly readingSd: (at: number) => number;
  /** Of what each pass asked, how much came off; one standard deviation. */
  readonly shares: Float64Array;
  readonly shareSds: Float64Array;
}

interface Found {
  readonly radius: number;
  readonly length: number;
  /** As they were learned of the wall as found and at the gates: those that make all readings likeliest count. */
  readonly smoothness: readonly Smoothness[];
  /** Radians; NaN: none is stated. */
  readonly wornSide: number;
}

/**
 * @param stages in their order, two at least
 * @returns null where the readings contradict each other so far that no surface fits them
 */
export function standing(stages: readonly Stage[], found: Found, grid: Grid): Standing | null {
  const passes = stages.slice(0, -1).map(({ asked }) => asked);
  const told = likeliest(stages, found, grid);
  if (told === null) return null;
  const { posterior, unknowns, amounts, factor } = told;
  const spread = gridSpread(posterior, grid);
  const plain = wearSurface(posterior, grid, spread);
  const shares = amounts.slice(0, passes.length).map((a) => 1 + a);
  const mean = plain.mean.slice();
  passes.forEach((asked, pass) => {
    for (let k = 0; k < mean.length; k++) {
      if (asked[k]! > 0) mean[k] = mean[k]! + shares[pass]! * asked[k]!;
    }
  });
  const through = spreadThrough(
    factor,
    unknowns.map(({ answered }, nth) => {
      const moved = meanOn(answered, grid, spread);
      const asked = passes[nth];
      return moved.map(
        (guessed, k) => (asked !== undefined && asked[k]! > 0 ? asked[k]! : 0) - guessed,
      );
    }),
  );
  const wider = (sd: Field) => sd.map((s, k) => Math.hypot(s, through[k]!));
  return {
    surface: { ...plain, mean, sd: wider(plain.sd), sdSeen: wider(plain.sdSeen) },
    posterior,
    spread,
    through,
    readingSd: readingSdOf(told, posterior.design.count - stages.at(-1)!.sightings.length),
    shares,
    shareSds: told.sds.slice(0, passes.length),
  };
}

/** With the smoothness, then with as even a hand, as makes the readings likeliest. */
function likeliest(stages: readonly Stage[], found: Found, grid: Grid): Told | null {
  const [even, ...others] = UNEVEN.map((one) => () => putTogether(stages, found, grid, one));
  const first = even!();
  let best: Told | null = null;
  for (const smoothness of found.smoothness) {
    const one = tell(first, smoothness, found);
    if (one !== null && (best === null || one.surprise < best.surprise)) best = one;
  }
  for (const other of others) {
    const one: Told | null = best && tell(other(), best.posterior.smoothness, found);
    if (best === null || one === null || !(one.surprise < best.surprise)) break;
    best = one;
  }
  return best;
}

/** The readings of all surveys, put back, and what those of each survey answer each pass before it. */
interface Together {
  readonly design: Design;
  readonly stageOf: readonly number[];
  readonly answers: readonly Float64Array[];
}

/** All readings put back to the wall as found, as if each hand had taken what it was asked. */
function putTogether(
  stages: readonly Stage[],
  { length, wornSide }: Found,
  grid: Grid,
  uneven: number,
): Together {
  const passes = stages.slice(0, -1);
  const sightings: Sighting[] = [];
  const setups: SetupPrior[] = [];
  const stageOf: number[] = [];
  const answers: number[][] = passes.map(() => []);
  stages.forEach((stage, at) => {
    for (const s of stage.sightings) {
      const off = passes.map(({ asked }) =>
        answerOf(s, stage.setups[s.setup]?.sign ?? 1, asked, grid),
      );
      let before = 0;
      let since = 0;
      off.forEach((answer, pass) => {
        if (pass < at) before += answer;
        else since += answer * answer;
        answers[pass]!.push(pass < at ? answer : 0);
      });
      sightings.push({
        ...s,
        value: s.value - before,
        // Of an earlier wall it tells the wall now only as well as the hand has worked evenly since.
        sd: Math.sqrt(s.sd * s.sd + uneven * uneven * since),
        setup: s.setup < 0 ? s.setup : s.setup + setups.length,
      });
      stageOf.push(at);
    }
    setups.push(...stage.setups);
  });
  return {
    design: design(sightings, setups, length, wornSide),
    stageOf,
    answers: answers.map((one) => Float64Array.from(one)),
  };
}

/** How much a reading grows once that is off. */
function answerOf(s: Sighting, sign: number, asked: Field, grid: Grid): number {
  return touches(s.instrument, sign).reduce(
    (sum, { turn, weight }) => sum + weight * fieldAt(grid, asked, s.theta + turn, s.z),
    0,
  );
}

/** Something that readings share and nobody measured: what each of them answers 1 of it; one standard deviation. */
interface Unknown {
  readonly answers: Float64Array;
  readonly sd: number;
}

/** Where the axis that radii were taken from stood in each survey but the last. */
function setAnew({ design: { sightings, length }, stageOf }: Together, last: number): Unknown[] {
  const out: Unknown[] = [];
  for (let at = 0; at < last; at++) {
    const own = sightings.map((s, i) => stageOf[i] === at && s.instrument === 'radius');
    if (!own.includes(true)) continue;
    for (const wave of [Math.sin, Math.cos]) {
      const answers = Float64Array.from(sightings, (s, i) => (own[i] ? wave(s.theta) : 0));
      const leaning = answers.map((answer, i) => (answer * sightings[i]!.z) / length);
      out.push({ answers, sd: SET_ANEW.offset }, { answers: leaning, sd: SET_ANEW.lean });
    }
  }
  return out;
}

interface Told {
  /** Of the wall as found, each hand's share allowed for. */
  readonly posterior: Posterior;
  /** The passes first. `answered`: what the wall as found would be taken for, were the readings 1 of it. */
  readonly unknowns: readonly { readonly answered: Posterior }[];
  /** Of each unknown: how far from what was expected of it, one standard deviation. */
  readonly amounts: Float64Array;
  readonly sds: Float64Array;
  /** Lower factor of the inverse of their covariance. */
  readonly factor: Float64Array;
  /** Minus the logarithm of how likely the readings are, up to a constant that is the same however even the hand. */
  readonly surprise: number;
}

function tell(together: Together, smoothness: Smoothness, { radius }: Found): Told | null {
  const { design: d, answers } = together;
  const p = condition(d, smoothness, radius);
  if (p === null) return null;
  const unknowns = [
    ...answers.map((one): Unknown => ({ answers: one, sd: HAND })),
    ...setAnew(together, answers.length),
  ].map((one) => ({ ...one, answered: answering(p, one.answers) }));
  const n = unknowns.length;
  const factor = new Float64Array(n * n);
  unknowns.forEach(({ answered: { weights }, sd }, a) => {
    for (let b = 0; b <= a; b++) factor[a * n + b] = dot(unknowns[b]!.answers, weights);
    factor[a * n + a] = factor[a * n + a]! + 1 / (sd * sd);
  });
  if (!choleskyInPlace(factor, n)) return null;
  const seen = Float64Array.from(unknowns, (one) => dot(one.answers, p.weights));
  const half = solveLower(factor, n, seen);
  const amounts = solveLowerTransposed(factor, n, half);
  let surprise = p.surprise - dot(half, half) / 2;
  unknowns.forEach(({ sd }, a) => {
    surprise += Math.log(factor[a * n + a]! * sd);
  });
  for (const sd of d.pressed.readingSds) surprise += Math.log(sd);
  for (const sd of d.pressed.sds) surprise -= Math.log(sd);
  return {
    posterior: allowedFor(p, unknowns, amounts),
    unknowns,
    amounts,
    sds: sdsOf(factor, n),
    factor,
    surprise,
  };
}

/**
 * The same posterior, had the readings departed from what was expected by other amounts: linear in them, about 0.
 *
 * @param y one a reading, mm; `surprise` is of no account
 */
function answering(p: Posterior, y: Float64Array): Posterior {
  const { pressed } = p.design;
  const half = solveLower(p.factor, pressed.count, pressValues(pressed, y).rows);
  const pressedWeights = solveLowerTransposed(p.factor, pressed.count, half);
  const weights = releaseWeights(pressed, y, pressedWeights, p.smoothness.noise);
  return { ...p, base: 0, pressedWeights, weights };
}

/** The posterior of the readings less what the unknowns answer. */
function allowedFor(
  p: Posterior,
  unknowns: readonly (Unknown & { readonly answered: Posterior })[],
  amounts: Float64Array,
): Posterior {
  const sightings = p.design.sightings.map((s, i) => ({
    ...s,
    value: unknowns.reduce((value, one, a) => value - amounts[a]! * one.answers[i]!, s.value),
  }));
  const less = (of: (one: Posterior) => Float64Array) =>
    of(p).map((w, i) =>
      unknowns.reduce((sum, { answered }, a) => sum - amounts[a]! * of(answered)[i]!, w),
    );
  return {
    ...p,
    design: { ...p.design, sightings },
    pressedWeights: less((one) => one.pressedWeights),
    weights: less((one) => one.weights),
  };
}

/** Standard deviations, from the lower factor of the inverse of the covariance. */
function sdsOf(factor: Float64Array, n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, a) => {
    const unit = new Float64Array(n);
    unit[a] = 1;
    solveLower(factor, n, unit, unit);
    return Math.sqrt(dot(unit, unit));
  });
}

/** @param first place of the last survey's first reading among all */
function readingSdOf({ posterior, unknowns, factor }: Told, first: number) {
  const { pressed } = posterior.design;
  return (at: number): number => {
    const i = first + at;
    const noise = pressed.readingSds[i]! * posterior.smoothness.noise;
    // What the surface alone leaves open, and what it moves with each unknown.
    const moved = unknowns.map(({ answered }) => noise * noise * answered.weights[i]!);
    const [hand = 0] = spreadThrough(
      factor,
      moved.map((by) => Float64Array.of(by)),
    );
    return Math.hypot(toldSd(posterior, i), hand);
  };
}

/** Standard deviation at every place of a sum of unknowns that move it by so much each, mm. */
function spreadThrough(factor: Float64Array, moved: readonly Field[]): Field {
  const n = moved.length;
  const here = new Float64Array(n);
  return (moved[0] ?? new Float64Array(0)).map((_, k) => {
    for (let a = 0; a < n; a++) here[a] = moved[a]![k]!;
    solveLower(factor, n, here, here);
    return Math.sqrt(dot(here, here));
  });
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
