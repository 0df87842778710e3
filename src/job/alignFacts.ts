/** What was read from a straight bar through the bores, as millimetres. */
import { readClock } from './clock.ts';
import type { Face, Feature, Job } from './schema.ts';
import { readLength } from './units.ts';

/** How far the wall lies from the bar, less what is the same all round; mm. */
export interface BarFact {
  readonly theta: number;
  readonly far: number;
}

export interface BarFacts {
  readonly A: readonly BarFact[];
  readonly B: readonly BarFact[];
  /** Readings that cannot be used, one sentence each without a full stop. */
  readonly faults: readonly string[];
}

export function barFacts(job: Job, feature: Feature): BarFacts {
  const facts = { A: [] as BarFact[], B: [] as BarFact[], faults: [] as string[] };
  const sign = job.barBy === 'smaller-farther' ? -1 : 1;
  for (const { face, clock, value } of feature.bar ?? []) {
    const length = readLength(value);
    const at = readClock(clock, face);
    const where = `${feature.name}, face ${face}, ${clock} o’clock`;
    if (!length.ok) {
      if (length.why !== '') facts.faults.push(`${where}: ${length.why}`);
    } else if (!at.ok) {
      facts.faults.push(`${where}: ${at.why === '' ? 'its clock position is missing' : at.why}`);
    } else if (length.mm < 0 && (job.barBy ?? 'feelers') === 'feelers') {
      facts.faults.push(`${where}: a gap cannot be less than nothing`);
    } else facts[face].push({ theta: at.theta, far: sign * length.mm });
  }
  return facts;
}

/** Clock positions of the table: four that lie evenly, and any other that was read, in their order round the clock. */
export function barClocks(features: readonly Feature[]): string[] {
  const clocks = ['12', '3', '6', '9'];
  const theta = (text: string, face: Face = 'A') => {
    const read = readClock(text, face);
    return read.ok ? read.theta : Number.POSITIVE_INFINITY;
  };
  for (const { clock } of features.flatMap(({ bar }) => bar ?? [])) {
    if (!clocks.some((one) => Math.abs(theta(one) - theta(clock)) < 1e-4)) clocks.push(clock);
  }
  return clocks.sort((a, b) => theta(a) - theta(b));
}
