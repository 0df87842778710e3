import { describe, expect, it } from 'vitest';
import { countPlaywright, countVitest, NONE_RAN, vitestFaults } from './counts.ts';

const vitest = (over: object) => ({
  numPassedTests: 0,
  numFailedTests: 0,
  numPendingTests: 0,
  numTodoTests: 0,
  testResults: [],
  ...over,
});
const playwright = (stats: object, errors: unknown[] = []) => ({
  stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 0, ...stats },
  errors,
});

describe('the closing count', () => {
  it('adds up what passed and failed', () => {
    expect(countVitest(vitest({ numPassedTests: 7, numFailedTests: 2 }))).toEqual({
      passed: 7,
      failed: 2,
    });
    expect(countPlaywright(playwright({ expected: 3, unexpected: 1 }))).toEqual({
      passed: 3,
      failed: 1,
    });
  });

  it('takes skipped, unfinished and flaky tests for failures', () => {
    const report = vitest({ numPassedTests: 1, numPendingTests: 1, numTodoTests: 1 });
    expect(countVitest(report).failed).toBe(2);
    expect(countPlaywright(playwright({ expected: 1, skipped: 1, flaky: 1 })).failed).toBe(2);
  });

  it('takes a file that broke before its first test for a failure', () => {
    const testResults = [{ status: 'failed', assertionResults: [] }];
    expect(countVitest(vitest({ numPassedTests: 4, testResults })).failed).toBe(1);
    expect(countPlaywright(playwright({ expected: 4 }, [new Error('no server')])).failed).toBe(1);
  });

  it('names each test that did not pass, and why', () => {
    const ended = (fullName: string, status: string, ...failureMessages: string[]) => ({
      fullName,
      status,
      failureMessages,
    });
    const testResults = [
      {
        name: 'a.test.ts',
        status: 'failed',
        assertionResults: [
          ended('sums', 'passed'),
          ended('rounds', 'failed', 'expected 1 to be 2\n  at a line'),
          ended('waits', 'skipped'),
        ],
      },
      { name: 'b.test.ts', status: 'failed', message: 'no such module', assertionResults: [] },
    ];
    expect(vitestFaults(vitest({ testResults }))).toEqual([
      'a.test.ts > rounds: expected 1 to be 2',
      'a.test.ts > waits: skipped',
      'b.test.ts > the file: no such module',
    ]);
  });

  it('takes a run without tests for a failure', () => {
    expect(countVitest(vitest({}))).toEqual(NONE_RAN);
    expect(countPlaywright(playwright({}))).toEqual(NONE_RAN);
  });
});
