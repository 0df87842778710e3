import { expect, test } from 'vitest';
import { buffersIn } from '../../src/store/buffersIn.ts';

test('the memory of every typed array is found once, however deep it lies', () => {
  const [deep, shared] = [new Float64Array([1, 2]), new ArrayBuffer(16)];
  const value = {
    none: null,
    text: 'as is',
    list: [{ deep }, 3],
    halves: [new Float32Array(shared, 0, 2), new Uint8Array(shared, 8)],
  };
  expect(new Set(buffersIn(value))).toEqual(new Set([deep.buffer, shared]));
  expect(buffersIn(value)).toHaveLength(2);
  expect(buffersIn('text')).toEqual([]);
});

test('what is handed over keeps its figures; the original keeps its memory', () => {
  const value = { field: new Float64Array([1, Number.NaN, 3]) };
  const copy = structuredClone(value);
  const handed = structuredClone(copy, { transfer: buffersIn(copy) });
  expect(handed).toEqual(value);
  expect(copy.field).toHaveLength(0);
  expect(value.field).toHaveLength(3);
});
