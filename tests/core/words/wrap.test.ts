import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NBSP } from '../../../src/core/words/spaces.js';
import { hanging, lengthOf, wrap } from '../../../src/core/words/wrap.js';

describe('wrapping', () => {
  it('breaks at spaces', () => {
    expect(wrap('one two three four', 9)).toEqual(['one two', 'three', 'four']);
  });

  it('keeps a number and its unit on one line, with a plain space', () => {
    expect(wrap(`within 2.0${NBSP}°F for 23${NBSP}h${NBSP}36${NBSP}min`, 15)).toEqual([
      'within 2.0 °F',
      'for 23 h 36 min',
    ]);
  });

  it('breaks inside a word that is longer than a line, never inside a character', () => {
    expect(wrap('𝒂𝒃𝒄𝒅 e', 3)).toEqual(['𝒂𝒃𝒄', '𝒅 e']);
  });

  it('stands further lines under the text behind a mark', () => {
    expect(hanging('one two three', 9, '- ')).toEqual(['- one two', '  three']);
    expect(hanging('one two three', 9, '', '  ')).toEqual(['one two', '  three']);
  });

  it('loses no word and keeps to the width', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ minLength: 1, maxLength: 30 })),
        fc.integer({ min: 1, max: 40 }),
        (words, width) => {
          const text = words.join(' ');
          const lines = wrap(text, width);
          for (const line of lines) expect(lengthOf(line)).toBeLessThanOrEqual(width);
          expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(NBSP, '').replaceAll(' ', ''));
        },
      ),
    );
  });
});
