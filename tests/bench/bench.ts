import { performance } from 'node:perf_hooks';

/** One thing to time. A file `*.bench.ts` in this folder exports a list of them as `benches`. */
export interface Bench {
  readonly name: string;
  /** Milliseconds that the median should stay within, where the product promises any. */
  readonly bar?: number;
  /** A bench earlier in the same run whose median this one's may be at most so many times. */
  readonly ratioTo?: { readonly name: string; readonly atMost: number };
  /** Makes what the timed part needs; not timed. Called once. */
  prepare(): () => unknown;
}

/** Times in milliseconds over `samples` runs. */
export interface Timing {
  readonly name: string;
  readonly samples: number;
  readonly least: number;
  readonly median: number;
  readonly p95: number;
  readonly bar?: number;
  readonly ratioTo?: { readonly name: string; readonly atMost: number };
}

/** Enough for a steady median, bounded for slow ones: at least 15 runs, at most 1 s beyond that. */
const LEAST_SAMPLES = 15;
const MOST_SAMPLES = 2_000;
const BUDGET_MS = 1_000;
const WARM_UP_MS = 200;

/** Runs for `milliseconds`, at least `least` and at most `most` times; returns each run's time. */
async function repeat(
  run: () => unknown,
  milliseconds: number,
  least: number,
  most: number,
): Promise<number[]> {
  const times: number[] = [];
  const end = performance.now() + milliseconds;
  while (times.length < least || (performance.now() < end && times.length < most)) {
    const start = performance.now();
    const result = run();
    if (result instanceof Promise) await result;
    times.push(performance.now() - start);
  }
  return times;
}

/** The value that a share `q` (0 to 1) of the sorted times does not exceed: nearest rank. */
const rank = (sorted: readonly number[], q: number): number =>
  sorted[Math.max(0, Math.ceil(q * sorted.length) - 1)] ?? Number.NaN;

/** Warms up, then times one bench. */
export async function time({ name, bar, ratioTo, prepare }: Bench): Promise<Timing> {
  const run = prepare();
  await repeat(run, WARM_UP_MS, 2, MOST_SAMPLES);
  const times = await repeat(run, BUDGET_MS, LEAST_SAMPLES, MOST_SAMPLES);
  const sorted = times.sort((a, b) => a - b);
  return {
    name,
    samples: sorted.length,
    least: rank(sorted, 0),
    median: rank(sorted, 0.5),
    p95: rank(sorted, 0.95),
    ...(bar === undefined ? {} : { bar }),
    ...(ratioTo === undefined ? {} : { ratioTo }),
  };
}
