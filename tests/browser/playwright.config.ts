import { defineConfig } from '@playwright/test';
import { findBrowser, LAUNCH_ARGS } from './findBrowser.ts';
import { freePort } from './freePort.ts';

// Playwright reads this file once more in each worker: what is found first is handed on.
process.env.CHROME_PATH = findBrowser();
process.env.ROUNDHAND_TEST_PORT ??= String(await freePort());
const port = process.env.ROUNDHAND_TEST_PORT;
const url = `http://127.0.0.1:${port}/`;

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  // Software drawing takes both cores of a small machine; a second page only slows the first.
  workers: 1,
  retries: 0,
  forbidOnly: true,
  timeout: 90_000,
  expect: { timeout: 15_000 },
  reporter: 'list',
  use: {
    baseURL: url,
    viewport: { width: 1440, height: 900 },
    actionTimeout: 15_000,
    navigationTimeout: 30_000,
    trace: 'off',
    launchOptions: { executablePath: process.env.CHROME_PATH, args: LAUNCH_ARGS },
  },
  webServer: {
    command: `npx vite preview --host 127.0.0.1 --port ${port} --strictPort`,
    cwd: '../..',
    env: { BROWSER: 'none' },
    url,
    timeout: 60_000,
  },
});
