/*
 * npm run bench: medians of everything in *.bench.ts, in milliseconds. `-- --json` prints them as
 * JSON; other words choose the files whose names hold them. Exits with 1 when a median is over its
 * bar, so that a script can ask; npm test does not, because other work on the machine counts too.
 */
import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { type Bench, type Timing, time } from './bench.ts';

/** This median over that of the bench it is to be compared with; null when it is not. */
function ratioOf({ name, median, ratioTo }: Timing, earlier: readonly Timing[]): number | null {
  if (ratioTo === undefined) return null;
  const other = earlier.find((timing) => timing.name === ratioTo.name);
  if (other === undefined) throw new Error(`${name}: no earlier bench named ${ratioTo.name}`);
  return median / other.median;
}

function isOver(timing: Timing, all: readonly Timing[]): boolean {
  const { median, bar, ratioTo } = timing;
  const ratio = ratioOf(timing, all);
  if (ratioTo !== undefined && !(ratio! <= ratioTo.atMost)) return true;
  return bar !== undefined && !(median <= bar);
}

function row(timing: Timing, all: readonly Timing[]): string {
  const { name, samples, least, median, p95, bar, ratioTo } = timing;
  const numbers = [median, least, p95].map((value) => value.toPrecision(3).padStart(9)).join(' ');
  const kept = (is: boolean) => (is ? 'kept' : 'MISSED');
  const verdict = bar === undefined ? '' : `  bar ${bar} ${kept(median <= bar)}`;
  const ratio = ratioOf(timing, all);
  const compared =
    ratioTo === undefined
      ? ''
      : `  ${ratio!.toPrecision(3)} times ${ratioTo.name}, at most ${ratioTo.atMost} ${kept(ratio! <= ratioTo.atMost)}`;
  return `${name.padEnd(52)}${numbers} ${String(samples).padStart(7)}${verdict}${compared}`;
}

async function benchesOf(words: readonly string[]): Promise<Bench[]> {
  const files = readdirSync(import.meta.dirname)
    .filter((file) => file.endsWith('.bench.ts'))
    .filter((file) => words.length === 0 || words.some((word) => file.includes(word)))
    .sort();
  const modules: { benches: Bench[] }[] = await Promise.all(
    files.map((file) => import(pathToFileURL(join(import.meta.dirname, file)).href)),
  );
  return modules.flatMap(({ benches }) => benches);
}

const { values, positionals } = parseArgs({
  options: { json: { type: 'boolean', default: false } },
  allowPositionals: true,
});
const benches = await benchesOf(positionals);
if (benches.length === 0) throw new Error(`no benches for: ${positionals.join(' ')}`);

if (!values.json) {
  console.log(
    `milliseconds, on ${cpus().length} cores (${cpus()[0]?.model}), Node ${process.version}`,
  );
  console.log(
    `${''.padEnd(52)}${'median'.padStart(9)} ${'least'.padStart(9)} ${'95 %'.padStart(9)} samples`,
  );
}
const timings: Timing[] = [];
for (const bench of benches) {
  const timing = await time(bench);
  timings.push(timing);
  if (!values.json) console.log(row(timing, timings));
}
if (values.json) console.log(JSON.stringify(timings, null, 2));
process.exitCode = timings.some((timing) => isOver(timing, timings)) ? 1 : 0;
