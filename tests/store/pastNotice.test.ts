/** Metal gone past the target is said once at the top of the notebook, kept right, and taken back when it is none. */
import { beforeEach, expect, test } from 'vitest';
import { say, usePage } from '../../src/store/page.ts';
import { notePast } from '../../src/store/pastNotice.ts';

const notice = () => usePage.getState().notice;
const WORDS = { head: 'At 3:00 the wall lies outside.', ways: ['Have a bushing made to suit.'] };

beforeEach(() => {
  notePast('elsewhere', null);
  say(null);
});

test('with what is still possible, a line each', () => {
  notePast('b s', WORDS);
  expect(notice()).toMatchObject({
    tone: 'said',
    text: 'At 3:00 the wall lies outside. What is still possible:',
    more: ['Have a bushing made to suit.'],
  });
});

test('put away, it does not come back with the next reading', () => {
  notePast('b s', WORDS);
  say(null);
  notePast('b s', { ...WORDS, head: 'At 3:00 it lies farther outside.' });
  expect(notice()).toBeNull();
});

test('while it stands its figures follow the readings', () => {
  notePast('b s', WORDS);
  notePast('b s', { ...WORDS, head: 'At 3:00 it lies farther outside.' });
  expect(notice()?.text).toContain('farther outside');
});

test('it goes when the wall is nowhere past the target any more', () => {
  notePast('b s', WORDS);
  notePast('b s', null);
  expect(notice()).toBeNull();
});

test('another survey has its own, and another message is left alone', () => {
  notePast('b s', WORDS);
  notePast('b t', { ...WORDS, head: 'At 6:00 the wall lies outside.' });
  expect(notice()?.text).toContain('At 6:00');
  say({ tone: 'said', text: 'Saved.' });
  notePast('b t', null);
  expect(notice()?.text).toBe('Saved.');
});
