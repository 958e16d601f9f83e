import { readFileSync } from 'node:fs';
import fontkit from '@pdf-lib/fontkit';
import { describe, expect, it } from 'vitest';
import { cleanDeep, drawableCodePoints, fontFiles, glyphCleaner } from '../../src/compose/glyphs.js';

const points = drawableCodePoints();

/** Runs of code points, in hexadecimal, some to a line. */
function inRanges(sorted: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const point of sorted) {
    const last = ranges.at(-1);
    if (last !== undefined && last[1] + 1 === point) last[1] = point;
    else ranges.push([point, point]);
  }
  const words = ranges.map(([first, last]) =>
    (first === last ? [first] : [first, last]).map((point) => point.toString(16)).join('-'),
  );
  const lines = Array.from({ length: Math.ceil(words.length / 10) }, (_, i) =>
    words.slice(10 * i, 10 * i + 10).join(' '),
  );
  return lines.join('\n');
}

describe('the characters that can be printed', () => {
  // `npx vitest run tests/compose/glyphs.test.ts -u` writes them anew, when the shipped fonts change.
  it('are those that every shipped font has a glyph for, as a font library reads them', async () => {
    const [first = [], ...rest] = fontFiles().map((file) => fontkit.create(readFileSync(file)).characterSet);
    const inAll = first.filter((point) => rest.every((set) => set.includes(point))).sort((a, b) => a - b);
    const table = `/**
 * Code points that all shipped fonts have a glyph for. A table, because a font library takes longer to load than a small
 * document takes to set; tests/compose/glyphs.test.ts makes it from the fonts.
 */
export const DRAWABLE = \`
${inRanges(inAll)}
\`;
`;
    await expect(table).toMatchFileSnapshot('../../src/compose/drawable-ranges.ts');
    expect([...points]).toEqual(inAll);
  });
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
