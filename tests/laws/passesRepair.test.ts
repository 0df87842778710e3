/**
 * Whole repairs, simulated: a worn bore, a hand that takes more or less than it is asked, readings with noise, gates.
 *
 * The bore is made from plain formulas of wear (tests/fixtures/simulated.ts), not from the surface's own prior. It is
 * read with a needle from a pin centred in it, 12 hours at 5 depths, so that the target's place is known and what is cut
 * below it can be told; the smoothness is learned once, from the bore as found, as a quick evaluation keeps it.
 */
import { expect, it } from 'vitest';
import type { Design } from '../../src/bore/design.ts';
import { fieldAt } from '../../src/bore/gate.ts';
import {
  course,
  isChance,
  ON_SIZE,
  onePass,
  type PassMatter,
  SURE,
} from '../../src/bore/passes.ts';
import { condition } from '../../src/bore/posterior.ts';
import { learnSmoothness } from '../../src/bore/smoothness.ts';
import { gridSpread, makeGrid, wearSurface } from '../../src/bore/surface.ts';
import { deviationFrom, NO_AXIS } from '../../src/bore/target.ts';
import type { Field, Smoothness, WearSurface } from '../../src/bore/types.ts';
import { designAgain } from '../../src/bore/valueFree.ts';
import { workedOff } from '../../src/bore/worked.ts';
import { seededRandom } from '../../src/num/random.ts';
import { anyBore, evenDepths, hours, readingsOf, type WornBore } from '../fixtures/simulated.ts';

/** Cut deeper below the target than this is cut too deep, per side, mm: 0.0005 in. */
const TOO_DEEP = 0.0125;
const REPAIRS = 200;

interface Repair {
  /** Share of the wall cut below the target by more than TOO_DEEP. */
  readonly share: number;
  readonly passes: number;
  /** Passes where everything is known and the hand takes what it is asked. */
  readonly plan: number;
}

function repair(seed: number): Repair {
  const bore = anyBore(seed);
  const r = seededRandom(seed + 60_000_000);
  const grid = makeGrid(bore.length);
  const columns = grid.theta.length;
  const found = Float64Array.from({ length: columns * grid.z.length }, (_, k) =>
    bore.truth(grid.theta[k % columns]!, grid.z[Math.floor(k / columns)]!),
  );
  // A target that the larger half of the wall lies beyond, or most of it: somewhere metal has to come off.
  const radius = found.slice().sort()[Math.floor((0.4 + 0.5 * r.uniform()) * found.length)]!;
  const noise = 0.003 + 0.007 * r.uniform();
  const rate = 0.6 + 0.8 * r.uniform();
  const tool = { rigid: true, radius: (2 / 3) * radius, width: 25, bite: 0.08 };
  const everywhere = new Uint8Array(found.length).fill(1);
  const matter = (mean: Field, sd: Field): PassMatter => {
    const surface = { grid, mean, sd, sdSeen: sd } as PassMatter['surface'];
    const deviation = deviationFrom(surface, radius, NO_AXIS);
    const bare = new Uint8Array(found.length);
    return {
      surface,
      removal: { deviation, sd },
      places: everywhere,
      bare,
      radius,
      tool,
      slope: 0.02,
    };
  };
  const plan = course(matter(found, new Float64Array(found.length)), 0).removals.length;
  let wall = found;
  let smoothness: Smoothness | null = null;
  let known: Design | null = null;
  let passes = 0;
  /** How much longer than at first the hand goes over a place, as the gates tell it to. */
  let longer = 1;
  let last: { readonly surface: WearSurface; readonly removal: Field } | null = null;
  for (; passes < 40; passes++) {
    const read = survey(
      { ...bore, truth: (theta, z) => fieldAt(grid, wall, theta, z) },
      noise,
      seed + 1000 * passes,
    );
    const d: Design = designAgain(known, read, [], bore.length, Number.NaN);
    known = d;
    smoothness ??= learnSmoothness(d, bore.radius);
    const p = condition(d, smoothness, bore.radius);
    if (p === null) throw new Error('no posterior');
    const surface = wearSurface(p, grid, gridSpread(p, grid));
    if (last !== null) {
      const { share, shareSd } = workedOff(last.surface, surface, last.removal, read);
      // What the words of the gate say: only a share that is well known, and clearly not as asked.
      if (shareSd < 0.25 && Math.abs(share - 1) > Math.max(0.1, 2 * shareSd)) longer /= share;
    }
    const now = matter(surface.mean, surface.sd);
    const removal = onePass(now, now.removal.deviation, SURE);
    // What is left is the strip's.
    if (!removal.some((g) => g >= ON_SIZE) || isChance(now, removal)) break;
    const hand = longer * rate * (0.9 + 0.2 * r.uniform());
    last = { surface, removal };
    wall = wall.map((radiusHere, k) => radiusHere + hand * removal[k]!);
  }
  const deep = wall.filter((end, k) => end - Math.max(found[k]!, radius) > TOO_DEEP).length;
  return { share: deep / wall.length, passes, plan };
}

function survey(bore: WornBore, noise: number, seed: number) {
  return readingsOf(bore.truth, {
    instrument: 'radius',
    thetas: hours(12),
    depths: evenDepths(5, bore.length),
    reader: { noise, resolution: 0, seed },
    setup: -1,
  });
}

it(`${REPAIRS} repairs: hardly anything is cut below the target, in about the passes that were planned`, () => {
  const done = Array.from({ length: REPAIRS }, (_, i) => repair(i + 1));
  const share = done.reduce((sum, one) => sum + one.share, 0) / REPAIRS;
  const passes = done.reduce((sum, one) => sum + one.passes, 0);
  const planned = done.reduce((sum, one) => sum + one.plan, 0);
  const over = done.filter((one) => one.passes > 1.5 * one.plan).length;
  const worst = Math.max(...done.map((one) => one.share));
  console.log(
    `cut too deep: ${(100 * share).toFixed(3)} % of the wall, ${(100 * worst).toFixed(2)} % in the worst repair; ` +
      `more than 1 % in ${done.filter((one) => one.share > 0.01).length} repairs; ` +
      `${passes} passes for ${planned} planned; ${over} repairs took more than 1.5 times the plan`,
  );
  expect(share).toBeLessThan(0.01);
  expect(passes).toBeGreaterThan(2 * REPAIRS);
  expect(passes).toBeLessThan(1.5 * planned);
}, 240_000);
