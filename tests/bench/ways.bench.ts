import { planSqueeze } from '../../src/assembly/squeeze.ts';
import { cleanUp } from '../../src/bore/cleanUp.ts';
import { planPasses } from '../../src/bore/passes.ts';
import { removalMap, wallPlaces } from '../../src/bore/removal.ts';
import { deviationFrom, NO_AXIS } from '../../src/bore/target.ts';
import { waysOf } from '../../src/bore/ways.ts';
import { waysOfSurvey } from '../../src/evaluate/ways.ts';
import { evaluate } from '../../src/evaluate.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';
import type { Bench } from './bench.ts';

const COLUMNS = 128;
const ROWS = 64;
const LENGTH = 70;
const R = 25.4;

/** A bore worn on one side that fades, with an oval and a third lobe, on a grid of 128 by 64. */
function wornGrid() {
  const theta = Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS);
  const z = Float64Array.from({ length: ROWS }, (_, i) => (LENGTH * i) / (ROWS - 1));
  const mean = Float64Array.from({ length: COLUMNS * ROWS }, (_, k) => {
    const [t, depth] = [theta[k % COLUMNS]!, z[Math.floor(k / COLUMNS)]!];
    const worn = 0.3 * Math.exp(-depth / 25) * Math.max(0, -Math.cos(t));
    return R + worn + 0.05 * Math.cos(2 * t) + 0.01 * Math.cos(3 * t + 1);
  });
  return { theta, z, mean };
}

const { theta, z, mean } = wornGrid();
const sd = mean.map(() => 0.004);
const smoothness = { lobe: 0.1, size: 0.1, length: 20, local: 0.01, noise: 1, fixed: true };
const surface = {
  grid: { theta, z },
  mean,
  sd,
  sdSeen: sd,
  smoothness,
  seenLobes: [2],
  predicted: new Float64Array(0),
};

const seats = [{ from: 0, to: LENGTH }];

function allWays() {
  const places = wallPlaces(surface, seats, []);
  const clean = cleanUp(surface, places, 'free')!;
  const plan = planSqueeze({
    grid: surface.grid,
    radius: mean,
    seated: [...z].map(() => true),
    goal: 2 * R - 0.05,
    upset: 0.25,
  })!;
  return waysOf({
    cleanUp: clean,
    squeeze: { ...plan, bent: plan.largest, heats: { least: 1, most: 5 }, upset: 0.25 },
    shims: { round: clean.diameter + 0.1, layers: [0.3] },
    standing: null,
    bare: new Uint8Array(mean.length),
    grinder: () => ({ tool: { rigid: true, radius: 12, width: 20, bite: 0.05 }, slope: 0.01 }),
    surface,
    sd,
    seats,
    keepouts: [],
    target: 2 * R,
    axis: NO_AXIS,
    bushing: 2 * R + 0.05,
    pressFit: 0.05,
    bossOutside: 95,
    figures: {
      oversizeStep: 0.02,
      sleeveWall: 3,
      weldAllowance: 3,
      weldOver: 'seat',
      squeezeUnder: 0.05,
      heatLeast: 0.05,
      heatMost: 0.25,
      shimLayers: 3,
      shimLeast: 0.25,
      stock: [0.1, 0.15, 0.2, 0.3, 0.5, 1],
    },
  });
}

function allPasses() {
  const deviation = deviationFrom(surface, R + 0.05, NO_AXIS);
  return planPasses({
    surface,
    removal: removalMap(surface, deviation, sd, seats, []),
    places: wallPlaces(surface, seats, []),
    bare: new Uint8Array(mean.length),
    radius: R + 0.05,
    tool: { rigid: true, radius: 12, width: 20, bite: 0.05 },
    slope: 0.01,
  });
}

export const benches: Bench[] = [
  { name: 'all ways of mending on 128 x 64', prepare: () => allWays },
  {
    name: 'the whole plan on 128 x 64: all ways of mending and all passes',
    bar: 100,
    prepare: () => () => [allWays(), allPasses()],
  },
  {
    name: 'all ways of mending of a demo job, with the advice',
    prepare: () => {
      const job = slipwayWinch();
      const bore = evaluate(job).bores[0]!;
      return () => waysOfSurvey(job, bore, bore.surveys[0]!, null);
    },
  },
];
