import { beforeAll, describe, expect, it } from 'vitest';
import { cleanDeep, drawableCodePoints, glyphCleaner } from '../../src/compose/glyphs.js';

let points: ReadonlySet<number>;
beforeAll(async () => {
  points = await drawableCodePoints();
});

describe('text made fit for print', () => {
  it.each([
    [
      'what the fonts have stays',
      'Ortega, Peña: 36 °F – “ok” → ½ ≥ −1',
      'Ortega, Peña: 36 °F – “ok” → ½ ≥ −1',
    ],
    ['a letter the fonts lack is a box', '冷 load', '□ load'],
    ['an emoji is one box, its style mark gone', '⚠️ 🥬', /^(□|⚠) □$/],
    ['a reversal of the reading direction shows', 'seal \u202e8174', 'seal [U+202E]8174'],
    ['an invisible space shows', '36\u200b0', '36[U+200B]0'],
    ['a soft hyphen shows', 'so\u00adft', 'so[U+00AD]ft'],
    ['a control character shows', 'a\u0007b\0', 'a[U+0007]b[U+0000]'],
    ['a lone half of a pair shows', 'x\ud83d', 'x[U+D83D]'],
    ['private use shows', '\ue000', '[U+E000]'],
    ['a combining accent joins its letter', 'Pen\u0303a', 'Peña'],
    ['line feeds stay, tabs become spaces', 'a\n\tb', 'a\n b'],
    ['wide spaces are spaces', 'a\u3000b', 'a b'],
  ])('%s', (_, given, expected) => {
    const shown = glyphCleaner(points).clean(given);
    if (expected instanceof RegExp) expect(shown).toMatch(expected);
    else expect(shown).toBe(expected);
  });

  it('names what was replaced, and how often', () => {
    const cleaner = glyphCleaner(points);
    cleanDeep({ a: ['冷冷', { b: 'x\u202e' }], n: 3 }, cleaner);
    expect(cleaner.replaced()).toEqual([
      { point: 'U+202E', count: 1, shownAs: '[U+202E]' },
      { point: 'U+51B7', count: 2, shownAs: '□' },
    ]);
  });
});
