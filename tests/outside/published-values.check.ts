import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { publishedValues } from '../../src/core/reference/published-values.js';
import { loadQuotations } from '../../src/core/reference/quotations.js';
import { numbersMissing } from '../core/reference/cells.js';

/**
 * Texts of United States law, which may be kept (17 U.S.C. 105), as the annual edition of the Code of Federal Regulations of
 * 2015 prints them: github.com/18F/allregs at 0f10affa243f1d129291dfe5109f791d42ec4920.
 */
const TEXTS = join(import.meta.dirname, 'texts');
const kept = readFileSync(join(TEXTS, 'SHA256SUMS'), 'utf8')
  .trim()
  .split('\n')
  .map((line) => line.split(/\s+/))
  .map(([sha256 = '', file = '']) => ({ source: file.replace(/\.txt$/, ''), file, sha256 }));
const quotations = await loadQuotations();
const squeezed = (text: string) => text.replace(/\s+/g, ' ').trim();

describe('values against the texts they were taken from', () => {
  it('four texts are kept', () => {
    expect(kept.map(({ source }) => source)).toEqual([
      '21-cfr-118.4',
      '21-cfr-1250.27',
      '9-cfr-381.66',
      '9-cfr-590.50',
    ]);
  });

  it.each(kept)('$source is the text that was read', ({ file, sha256 }) => {
    expect(
      createHash('sha256')
        .update(readFileSync(join(TEXTS, file)))
        .digest('hex'),
    ).toBe(sha256);
  });

  it.each(kept)('every value of $source stands in it, in the words quoted', ({ source, file }) => {
    const text = squeezed(readFileSync(join(TEXTS, file), 'utf8'));
    const values = publishedValues().filter((value) => value.source.id === source);
    expect(values.length).toBeGreaterThan(0);
    for (const value of values) {
      const quotation = quotations.get(value.passage) ?? '';
      for (const part of quotation.split(' ... ')) expect(text).toContain(squeezed(part));
      expect(numbersMissing(value, text)).toEqual([]);
    }
  });

  it('of every other text a quotation is kept, and the number stands in it', () => {
    const missing = publishedValues().filter(
      (value) => numbersMissing(value, quotations.get(value.passage) ?? '').length > 0,
    );
    expect(missing.map(({ passage }) => passage)).toEqual([]);
  });
});
