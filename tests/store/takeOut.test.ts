import { beforeEach, expect, test } from 'vitest';
import { rename } from '../../src/job/edits.ts';
import { jobStore } from '../../src/store/job.ts';
import { usePage } from '../../src/store/page.ts';
import { tellTakenOut } from '../../src/store/takeOut.ts';
import { benchJob } from './benchJob.ts';

const notice = () => usePage.getState().notice;
const title = () => jobStore.getState().job?.title;

beforeEach(() => {
  jobStore.getState().put(benchJob('j', 'whole'));
  jobStore.getState().edit((job) => rename(job, 'less'));
});

test('what was taken out is put back by one tap, and then looked at', () => {
  let looked = false;
  tellTakenOut('It is out.', () => {
    looked = true;
  });
  expect(notice()?.text).toBe('It is out.');
  notice()?.actions?.[0]?.act();
  expect(title()).toBe('whole');
  expect(looked).toBe(true);
  expect(notice()).toBeNull();
});

test('after another edit nothing is offered that would take back the wrong one', () => {
  tellTakenOut('It is out.');
  jobStore.getState().edit((job) => rename(job, 'something else'));
  expect(notice()).toBeNull();
  expect(title()).toBe('something else');
});

test('a message that came meanwhile stays', () => {
  tellTakenOut('It is out.');
  usePage.getState().change({ notice: { tone: 'said', text: 'Another.' } });
  jobStore.getState().edit((job) => rename(job, 'something else'));
  expect(notice()?.text).toBe('Another.');
});
