/** What a run of checks came to. */
export interface Tally {
  readonly passed: number;
  readonly failed: number;
}

/** A runner that left no report, or ran no test, has failed once. */
export const NONE_RAN: Tally = { passed: 0, failed: 1 };

interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly {
    name: string;
    status: string;
    message?: string;
    assertionResults: readonly { fullName: string; status: string; failureMessages: string[] }[];
  }[];
}

interface PlaywrightReport {
  readonly stats: { expected: number; unexpected: number; flaky: number; skipped: number };
  readonly errors: readonly unknown[];
}

/** Skipped and todo tests are failures here; so is a file that broke before its first test. */
export function countVitest(report: unknown): Tally {
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } =
    report as VitestReport;
  const broken = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  );
  const failed = numFailedTests + numPendingTests + numTodoTests + broken.length;
  return orNone({ passed: numPassedTests, failed });
}

/** A line for each test that did not pass, with the first line of why; for a file that broke, its own. */
export function vitestFaults(report: unknown): string[] {
  return (report as VitestReport).testResults.flatMap(
    ({ name, status, message = '', assertionResults }) => {
      const line = (what: string, why = '') => `${name} > ${what}: ${why.split('\n')[0]}`;
      if (status === 'failed' && assertionResults.length === 0) return [line('the file', message)];
      return assertionResults
        .filter((one) => one.status !== 'passed')
        .map((one) => line(one.fullName, one.failureMessages[0] ?? one.status));
    },
  );
}

/** Skipped and flaky tests are failures here; so are errors outside any test. */
export function countPlaywright(report: unknown): Tally {
  const { stats, errors } = report as PlaywrightReport;
  const failed = stats.unexpected + stats.flaky + stats.skipped + errors.length;
  return orNone({ passed: stats.expected, failed });
}

function orNone(tally: Tally): Tally {
  return tally.passed + tally.failed > 0 ? tally : NONE_RAN;
}
