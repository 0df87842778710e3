import { planPasses } from '../../src/bore/passes.ts';
import { deviationFrom, NO_AXIS } from '../../src/bore/target.ts';
import type { WearSurface } from '../../src/bore/types.ts';
import { bell, fading, lobe, round, sum } from '../fixtures/bores.ts';
import type { Bench } from './bench.ts';

const LENGTH = 60;
const WORN = sum(round(35), lobe(2, 0.15, 0.4, fading(60)), bell('lorentzian', 0.1, 16));

/** 128 places round the bore by 64 along it, a worn bore that asks for about seven passes. */
function worn(): WearSurface {
  const [columns, rows] = [128, 64];
  const theta = Float64Array.from({ length: columns }, (_, i) => (2 * Math.PI * i) / columns);
  const z = Float64Array.from({ length: rows }, (_, i) => (LENGTH * i) / (rows - 1));
  const mean = Float64Array.from({ length: columns * rows }, (_, k) =>
    WORN(theta[k % columns]!, z[Math.floor(k / columns)]!),
  );
  return { grid: { theta, z }, mean } as Partial<WearSurface> as WearSurface;
}

export const benches: readonly Bench[] = [
  {
    name: 'all passes of a plan, 128 x 64',
    bar: 60,
    prepare: () => {
      const surface = worn();
      const radius = 35.1;
      const deviation = deviationFrom(surface, radius, NO_AXIS);
      const matter = {
        surface,
        removal: { deviation, sd: deviation.map(() => 0.005) },
        places: new Uint8Array(deviation.length).fill(1),
        bare: new Uint8Array(deviation.length),
        radius,
        tool: { rigid: true, radius: 22, width: 25, bite: 0.08 },
        slope: 0.02,
      };
      return () => planPasses(matter);
    },
  },
];
