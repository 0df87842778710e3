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

const isOver = ({ median, bar }: Timing) => bar !== undefined && !(median <= bar);

function row({ name, samples, least, median, p95, bar }: Timing): string {
  const numbers = [median, least, p95].map((value) => value.toPrecision(3).padStart(9)).join(' ');
  const verdict = bar === undefined ? '' : `  bar ${bar} ${median <= bar ? 'kept' : 'MISSED'}`;
  return `${name.padEnd(52)}${numbers} ${String(samples).padStart(7)}${verdict}`;
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
  if (!values.json) console.log(row(timing));
}
if (values.json) console.log(JSON.stringify(timings, null, 2));
process.exitCode = timings.some(isOver) ? 1 : 0;
