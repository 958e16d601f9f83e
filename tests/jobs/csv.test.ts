import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/jobs/csv.js';

/** What another reader of CSV makes of the rows. */
const read = (rows: string[][]): string[][] =>
  parse(csvOf(['one', 'two'], rows), { record_delimiter: '\r\n', from: 2 });

describe('tables that the tool writes as CSV', () => {
  // OWASP "CSV Injection": a cell that begins with one of = + - @ tab return can be run.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1'])('begin no cell with %j', (text) => {
    expect(read([[text, 'x']])).toEqual([[`'${text}`, 'x']]);
  });

  it.each(['a\n=1+1', 'a\r=1+1', 'a\r\n=1+1', '\n=1+1'])('keep %j in its cell', (text) => {
    expect(csvOf(['a', 'b'], [[text, 'x']])).toBe(`a,b\r\n"${text}",x\r\n`);
  });

  it('keep numbers plain, below zero too, and what is not known empty', () => {
    expect(csvOf(['a', 'b', 'c'], [[-0.5, 1e-7, undefined]])).toBe('a,b,c\r\n-0.5,1e-7,\r\n');
  });

  it('give back any text that begins with a letter', () => {
    const cell = fc.string({ unit: 'grapheme' }).map((text) => `a${text}`);
    const rows = fc.array(fc.tuple(cell, cell), { minLength: 1 });
    fc.assert(
      fc.property(rows, (said) => {
        expect(read(said)).toEqual(said);
      }),
    );
  });

  it('have as many rows as they were given, whatever breaks of lines stand in a cell', () => {
    const cell = fc.array(fc.constantFrom('\n', '\r', '"', ',', '=', 'a')).map((parts) => parts.join(''));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (said) => {
        expect(read(said)).toHaveLength(said.length);
      }),
    );
  });
});
