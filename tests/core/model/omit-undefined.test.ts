import fc from 'fast-check';
import { expect, it } from 'vitest';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';

it('leaves out what is undefined and keeps every other value, null, zero and nothing among them', () => {
  const row: number | undefined = undefined;
  expect(Object.keys(omitUndefined({ a: 0, b: row, c: null, d: '', e: false }))).toEqual([
    'a',
    'c',
    'd',
    'e',
  ]);
});

it('keeps the order and the value of every field that has one', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.option(fc.jsonValue(), { nil: undefined })), (fields) => {
      const kept = omitUndefined(fields);
      expect(Object.entries(kept)).toEqual(Object.entries(fields).filter(([, value]) => value !== undefined));
    }),
  );
});
