import sharp from 'sharp';
import type { ComposeInput } from '../../src/compose/input.js';
import type { Evidence } from '../../src/core/model/evidence.js';
import { picture, SAMPLE_FACTS, sampleInput } from './sample.js';

/** Words that a template, a typesetter or a browser could take for its own. */
export const HOSTILE = [
  '#panic("typst") #read("/etc/passwd") $x^2$ = y',
  '*strong* _slant_ `code` [9](exhibit:9) <b>bold</b>',
  '{{fingerprint}} {{{tool}}} {{#each this}}',
  '</text><script>alert(1)</script>&amp;',
  String.raw`\u{41} @label <label> // comment /* x */`,
];

const hostile = (all: Evidence[]): Evidence[] =>
  all.map((item, i) => {
    const words = HOSTILE[i % HOSTILE.length] ?? '';
    if (item.kind === 'statement') return { ...item, text: HOSTILE.join('\n') };
    if (item.kind === 'contact') return { ...item, about: words };
    return { ...item, caption: words, by: words };
  });

/** A delivery whose people wrote such words wherever they can write. */
export const hostileInput = (): Promise<ComposeInput> =>
  sampleInput({
    change: hostile,
    facts: {
      parties: { carrier: { name: HOSTILE[0] } },
      stops: SAMPLE_FACTS.stops.map((stop, i) => ({ ...stop, place: HOSTILE[i + 1] })),
      lines: SAMPLE_FACTS.lines.map((line) => ({ ...line, name: HOSTILE[3] })),
    },
  });

/** A delivery whose people wrote without any space. */
export const unbrokenInput = (): Promise<ComposeInput> => {
  const long = 'W'.repeat(300);
  return sampleInput({
    change: (all) => all.map((item) => ({ ...item, by: long.slice(0, 200), caption: long })),
  });
};

/** A delivery with a picture that is none, one that breaks off, and one in printing colours. */
export async function spoiltPictures(): Promise<ComposeInput> {
  const whole = await picture(1);
  const cmyk = await sharp(await picture(3))
    .toColourspace('cmyk')
    .jpeg()
    .toBuffer();
  return sampleInput({
    pictures: new Map([
      ['IMG_0401.jpg', Buffer.from('this is no picture')],
      ['IMG_0402.jpg', whole.subarray(0, Math.floor(whole.length * 0.6))],
      ['IMG_0403.jpg', cmyk],
    ]),
  });
}
