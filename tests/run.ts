/*
 * npm test: every check in order, none skipped, each counted. Nothing stops at the first failure;
 * the last line printed says how many passed and failed, and the exit code agrees with it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { findBrowser } from './browser/findBrowser.ts';
import { countPlaywright, countVitest, NONE_RAN, type Tally, vitestFaults } from './counts.ts';

const ROOT = resolve(import.meta.dirname, '..');
const reports = mkdtempSync(join(tmpdir(), 'roundhand-test-'));

/** A line for each check that failed, said again at the end: a long run's beginning is scrolled away. */
const faults: string[] = [];

function run(title: string, command: string, env: Record<string, string> = {}): boolean {
  console.log(`\n== ${title}: ${command}`);
  const PATH = [join(ROOT, 'node_modules', '.bin'), process.env.PATH].join(delimiter);
  // A shell, because on Windows the programs of node_modules/.bin are scripts.
  const options = {
    cwd: ROOT,
    shell: true,
    stdio: 'inherit',
    env: { ...process.env, PATH, ...env },
  };
  return spawnSync(command, options as Parameters<typeof spawnSync>[2]).status === 0;
}

function single(title: string, command: string): Tally {
  if (run(title, command)) return { passed: 1, failed: 0 };
  faults.push(`${title}: ${command}`);
  return { passed: 0, failed: 1 };
}

/** Runs a test runner and reads its report; a run that ends badly is never counted as clean. */
function counted(title: string, run: (file: string) => boolean, count: (report: unknown) => Tally) {
  const file = join(reports, `${title}.json`);
  const endedWell = run(file);
  const tally = existsSync(file) ? count(JSON.parse(readFileSync(file, 'utf8'))) : NONE_RAN;
  return endedWell || tally.failed > 0 ? tally : { ...tally, failed: tally.failed + 1 };
}

function vitest(): Tally {
  const command = 'vitest run --reporter=default --reporter=json';
  return counted(
    'vitest',
    (file) => run('unit', `${command} --outputFile.json="${file}"`),
    (report) => {
      faults.push(...vitestFaults(report));
      return countVitest(report);
    },
  );
}

function browser(isBuilt: boolean): Tally {
  if (!isBuilt) {
    console.log('\n== browser: not run, because the build failed; counted as a failure');
    return { passed: 0, failed: 1 };
  }
  let CHROME_PATH: string;
  try {
    CHROME_PATH = findBrowser();
  } catch (error) {
    console.log(`\n== browser: ${error instanceof Error ? error.message : String(error)}`);
    return { passed: 0, failed: 1 };
  }
  const command =
    'playwright test --config tests/browser/playwright.config.ts --reporter=list,json';
  return counted(
    'playwright',
    (file) => run('browser', command, { CHROME_PATH, PLAYWRIGHT_JSON_OUTPUT_FILE: file }),
    countPlaywright,
  );
}

function all(): Tally[] {
  const checks = [
    single('types', 'tsc --noEmit'),
    single('lint', 'biome check'),
    single('unused', 'knip'),
    vitest(),
  ];
  const build = single('build', 'vite build');
  return [...checks, build, browser(build.failed === 0)];
}

const tallies = all();
rmSync(reports, { recursive: true, force: true });
const passed = tallies.reduce((sum, tally) => sum + tally.passed, 0);
const failed = tallies.reduce((sum, tally) => sum + tally.failed, 0);
if (faults.length > 0) console.log(`\nFailed:\n${faults.map((fault) => `  ${fault}`).join('\n')}`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
