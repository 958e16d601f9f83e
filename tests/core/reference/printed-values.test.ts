import { describe, expect, it } from 'vitest';
import { publishedValues } from '../../../src/core/reference/published-values.js';
import { loadQuotations } from '../../../src/core/reference/quotations.js';
import { printedAmount } from '../../../src/core/reference/value-cell.js';
import { fingerprintOf, numbersMissing } from './cells.js';
import CSV from './printed-values.csv?raw';

/**
 * Every value as it was taken from its source, with a fingerprint of the sentence it stands in, kept apart from the library:
 * a value or sentence that is changed in one place alone fails here.
 */
const PRINTED = CSV.trim().split('\n').slice(1);
const quotations = await loadQuotations();

const lines = await Promise.all(
  publishedValues().map(async (value) =>
    [
      value.goods,
      value.quantity,
      ...(value.at === undefined ? [''] : [String(value.at)]),
      printedAmount(value),
      value.only ?? '',
      value.passage,
      await fingerprintOf(quotations.get(value.passage) ?? ''),
    ]
      .map((cell) => (/[",]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell))
      .join(','),
  ),
);

describe('the reference library', () => {
  it('is as printed, line by line', () => {
    const [have, want] = [new Set(lines), new Set(PRINTED)];
    expect(lines.filter((line) => !want.has(line))).toEqual([]);
    expect(PRINTED.filter((line) => !have.has(line))).toEqual([]);
    expect(lines.length).toBe(PRINTED.length);
  });

  it('has the words of every passage', () => {
    expect(publishedValues().filter(({ passage }) => (quotations.get(passage) ?? '') === '')).toEqual([]);
  });

  it('has no words that no value stands in', () => {
    const used = new Set(publishedValues().map(({ passage }) => passage));
    expect([...quotations.keys()].filter((passage) => !used.has(passage))).toEqual([]);
  });

  it('has every number in the words that it is said to stand in', () => {
    const missing = publishedValues().flatMap((value) =>
      numbersMissing(value, quotations.get(value.passage) ?? '').map(
        (number) => `${value.passage} ${value.goods} ${value.quantity}: ${number}`,
      ),
    );
    expect([...new Set(missing)]).toEqual([]);
  });

  it('and the check of that would find one that is not', () => {
    const value = publishedValues().find(({ passage }) => passage === 'new-england 1');
    if (value === undefined) throw new Error('no value');
    expect(numbersMissing(value, 'Asparagus | 32-37 | 95')).toEqual([36]);
    expect(numbersMissing({ ...value, printed: [{ low: 0.5, high: 1, unit: 'weeks' }] }, '1/2-1')).toEqual(
      [],
    );
    expect(numbersMissing({ ...value, printed: [{ low: 31, high: 33, unit: '°F' }] }, '32 ± 1°F')).toEqual(
      [],
    );
    expect(numbersMissing({ ...value, printed: [{ low: 31, high: 34, unit: '°F' }] }, '32 ± 1°F')).toEqual([
      34,
    ]);
  });
});
