import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { chromium } from '@playwright/test';

/**
 * How every check starts its browser: no calls home, and WebGL2 drawn in software, the same with
 * and without a graphics card. (Playwright itself leaves Chromium's sandbox off, which root needs.)
 */
export const LAUNCH_ARGS = ['--use-angle=swiftshader', ...onlyOurs()];

/**
 * The same for whatever is timed: without the first of those Chromium would paint the page itself on a make-believe
 * graphics card, half a second a frame. This is how it paints where there is none.
 */
export const TIMED_ARGS = ['--disable-gpu', ...onlyOurs()];

function onlyOurs(): string[] {
  return [
    '--enable-unsafe-swiftshader',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-quic',
    '--no-first-run',
  ];
}

const ADVICE =
  'No Chrome or Chromium can be had for the browser tests: install one (on Debian as root: ' +
  'apt-get install chromium), or set CHROME_PATH to its program file, then run npm test again.';

/** Long enough for 200 MB on a slow line, short enough that a dead one does not look like a hang. */
const DOWNLOAD_LIMIT_MS = 180_000;
const INSTALL_LIMIT_MS = 600_000;

/**
 * The program file of a Chrome or Chromium that starts: CHROME_PATH, else one that is installed,
 * else Playwright's own, downloaded if need be, else Debian's package where we are root.
 * Throws one line saying what to do when there is none.
 */
export function findBrowser(): string {
  const { CHROME_PATH } = process.env;
  if (CHROME_PATH) {
    if (starts(CHROME_PATH)) return CHROME_PATH;
    throw new Error(`CHROME_PATH is ${CHROME_PATH}, which does not start: ${ADVICE}`);
  }
  const found = installed() ?? playwrightsOwn() ?? debians();
  if (!found) throw new Error(ADVICE);
  return found;
}

function installed(): string | undefined {
  return usualPlaces().find(starts);
}

function usualPlaces(): string[] {
  if (process.platform === 'win32') {
    const roots = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA']
      .map((name) => process.env[name])
      .filter((root) => root !== undefined);
    const programs = [
      'Google\\Chrome\\Application\\chrome.exe',
      'Chromium\\Application\\chrome.exe',
      'Microsoft\\Edge\\Application\\msedge.exe',
    ];
    return programs.flatMap((program) => roots.map((root) => join(root, program)));
  }
  if (process.platform === 'darwin') {
    const roots = ['/Applications', join(homedir(), 'Applications')];
    const programs = ['Google Chrome', 'Chromium'];
    return programs.flatMap((name) =>
      roots.map((root) => join(root, `${name}.app`, 'Contents', 'MacOS', name)),
    );
  }
  const folders = (process.env.PATH ?? '').split(delimiter);
  const programs = ['google-chrome-stable', 'google-chrome', 'chromium', 'chromium-browser'];
  return programs.flatMap((name) => [...folders, '/opt/google/chrome'].map((f) => join(f, name)));
}

/** A file may be there and not start: a stub that asks for another package, missing libraries. */
function starts(path: string): boolean {
  if (!existsSync(path)) return false;
  // Windows opens a window when asked for the version, and brings its libraries along.
  if (process.platform === 'win32') return true;
  return spawnSync(path, ['--version'], { timeout: 30_000 }).status === 0;
}

function playwrightsOwn(): string | undefined {
  const path = chromium.executablePath();
  if (!existsSync(path)) {
    say('No Chrome or Chromium is installed; trying to download one.');
    const cli = createRequire(import.meta.url).resolve('@playwright/test/cli');
    spawnSync(process.execPath, [cli, 'install', '--no-shell', 'chromium'], {
      timeout: DOWNLOAD_LIMIT_MS,
      stdio: 'ignore',
      env: { ...process.env, PLAYWRIGHT_DOWNLOAD_CONNECTION_TIMEOUT: '10000' },
    });
  }
  return starts(path) ? path : undefined;
}

function debians(): string | undefined {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/etc/debian_version') || !existsSync('/usr/bin/apt-get')) return;
  say("It cannot be downloaded here; installing Debian's chromium.");
  const result = spawnSync('sh', ['-c', 'apt-get update && apt-get install -y chromium'], {
    timeout: INSTALL_LIMIT_MS,
    encoding: 'utf8',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  if (result.status !== 0) say(result.stderr.trim());
  return installed();
}

function say(line: string): void {
  process.stderr.write(`${line}\n`);
}
