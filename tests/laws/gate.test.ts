/**
 * The gate after a pass, whatever gauges the survey was read with. Walls and passes are constructed at random; what a gauge
 * reads is worked out here from the radii under its tips (ISO 4292: two across, three legs at thirds of a turn).
 */
import { describe, expect, it } from 'vitest';
import { fieldAt, gateOf, marksOf, type Readers, type Step } from '../../src/bore/gate.ts';
import { NO_PASS, type PassMatter } from '../../src/bore/passes.ts';
import type { GatePlace } from '../../src/bore/passTypes.ts';
import type { Field, Sighting, WearSurface } from '../../src/bore/types.ts';
import type { Instrument } from '../../src/job/schema.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';

const RADIUS = 30;
const LENGTH = 40;
const COLUMNS = 120;
const grid = {
  theta: Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS),
  z: Float64Array.from({ length: 41 }, (_, i) => (LENGTH * i) / 40),
};
const fieldOf = (of: (theta: number, z: number) => number): Field =>
  Float64Array.from({ length: COLUMNS * grid.z.length }, (_, k) =>
    of(grid.theta[k % COLUMNS]!, grid.z[Math.floor(k / COLUMNS)]!),
  );

const TIPS: Readonly<Record<Instrument, readonly { turn: number; weight: number }[]>> = {
  'two-point': [0, 1 / 2].map((turn) => ({ turn, weight: 1 })),
  'three-leg': [0, 1 / 3, 2 / 3].map((turn) => ({ turn, weight: 2 / 3 })),
  radius: [{ turn: 0, weight: 1 }],
  sweep: [{ turn: 0, weight: 1 }],
  wall: [{ turn: 0, weight: 1 }],
};
const INSTRUMENTS = Object.keys(TIPS) as Instrument[];

function reads(instrument: Instrument, field: Field, { theta, z }: Pick<GatePlace, 'theta' | 'z'>) {
  return TIPS[instrument].reduce(
    (sum, { turn, weight }) => sum + weight * fieldAt(grid, field, theta + 2 * Math.PI * turn, z),
    0,
  );
}

/** Metal on a few spots that end in nothing, a pass that takes half of it, and marks of the gauges of that mix. */
function constructed(random: Random, mix: readonly Instrument[]) {
  const spots = Array.from({ length: 1 + Math.floor(3 * random.uniform()) }, () => ({
    theta: 2 * Math.PI * random.uniform(),
    z: LENGTH * random.uniform(),
    height: 0.02 + 0.06 * random.uniform(),
    wide: 0.3 + 0.9 * random.uniform(),
    long: 6 + 40 * random.uniform(),
  }));
  const stands = fieldOf((theta, z) =>
    spots.reduce((sum, s) => {
      const off = Math.atan2(Math.sin(theta - s.theta), Math.cos(theta - s.theta)) / s.wide;
      const far = off * off + ((z - s.z) / s.long) ** 2;
      return sum + s.height * Math.max(0, 1 - far);
    }, 0),
  );
  const deviation = stands.map((t) => -t);
  const wall = deviation.map((e) => RADIUS + e);
  const sightings = [5, 20, 35].flatMap((z) =>
    Array.from({ length: 12 }, (_, i) => (2 * Math.PI * i) / 12).flatMap((theta) =>
      mix
        .filter((instrument) => instrument !== 'two-point' || theta < Math.PI - 1e-9)
        .map((instrument) => ({ instrument, theta, z, setup: 0 }) as Sighting),
    ),
  );
  const matter = {
    surface: { grid, mean: wall } as WearSurface,
    removal: { deviation, sd: wall.map(() => 0.002) },
    places: new Uint8Array(wall.length).fill(1),
    radius: RADIUS,
  } as unknown as PassMatter;
  const step: Step = { deviation, wall, removal: stands.map((t) => t / 2), sds: 2 };
  return { matter, step, sightings };
}

/** Every mix of the five gauges. */
const MIXES = Array.from({ length: 31 }, (_, i) =>
  INSTRUMENTS.filter((_, bit) => ((i + 1) >> bit) % 2 === 1),
);

describe('the gate, whatever gauges are mixed', () => {
  const sign: Readers['sign'] = ({ instrument }) => (instrument === 'wall' ? -1 : 1);

  it.each(MIXES.map((mix) => ({ mix, name: mix.join(', ') })))('$name', ({ mix }) => {
    const random = seededRandom(7 + mix.length);
    for (let run = 0; run < 20; run++) {
      const { matter, step, sightings } = constructed(random, mix);
      // The give-or-take of each reading, told apart by its number.
      const gate = gateOf(matter, step, marksOf(sightings), { sign, sd: (at) => 1e-6 * (1 + at) });
      expect(gate.length).toBeGreaterThan(0);
      for (const place of gate) {
        expect(place.expected.length).toBeGreaterThan(0);
        for (const { instrument, before, after, give } of place.expected) {
          const changes = reads(instrument, step.removal, place);
          const zero = instrument === 'sweep' || instrument === 'wall';
          const way = instrument === 'wall' ? -1 : 1;
          expect(after - before).toBeCloseTo(way * changes, 9);
          expect(before).toBeCloseTo(zero ? 0 : reads(instrument, step.wall, place), 9);
          if (place.why === 'control') expect(changes).toBeLessThan(NO_PASS);
          // It was read there, with that gauge: its own give-or-take, and none twice.
          const at = Math.round(give / 2e-6) - 1;
          expect(sightings[at]).toMatchObject({ instrument, z: place.z });
          expect(
            TIPS[instrument].some(
              ({ turn }) =>
                Math.abs(Math.sin((sightings[at]!.theta + 2 * Math.PI * turn - place.theta) / 2)) <
                1e-6,
            ),
          ).toBe(true);
        }
      }
      const lines = gate.flatMap(({ expected }) => expected.map(({ give }) => give));
      expect(new Set(lines).size).toBe(lines.length);
      // Where some reading anywhere stays as it is and lies apart from the worked places, there is one to check by.
      const far = sightings.some(
        (one) =>
          reads(one.instrument, step.removal, one) < NO_PASS &&
          gate.every(
            (place) =>
              place.why === 'control' ||
              TIPS[one.instrument].every(({ turn }) => {
                const angle = one.theta + 2 * Math.PI * turn - place.theta;
                return (
                  Math.hypot(RADIUS * Math.sin(angle / 2), one.z - place.z) > RADIUS / 2 &&
                  Math.hypot(RADIUS * Math.cos(angle / 2), one.z - place.z) > RADIUS / 2
                );
              }),
          ),
      );
      if (far) expect(gate.some(({ why }) => why === 'control')).toBe(true);
    }
  });
});
