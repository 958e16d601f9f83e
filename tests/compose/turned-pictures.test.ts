import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PageRenderer } from '../../src/compose/document-images/painter.js';
import { preparePictures } from '../../src/compose/pictures.js';
import { typeset } from '../../src/compose/typeset.js';
import { BUILT_AT } from './sample.js';
import { hashOf } from './sample-evidence.js';

/** Red, green, blue and white from upper left to lower right, twice as wide as high. */
const upright = () =>
  sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="160" height="80"><rect width="80" height="40" fill="#f00"/><rect
      x="80" width="80" height="40" fill="#0f0"/><rect y="40" width="80" height="40" fill="#00f"/></svg>`,
    ),
  ).flatten({ background: '#ffffff' });

/** As a camera stores it that says in its Exif block how it is to be turned (Exif 2.32 §4.6.4 A). */
const stored = {
  1: () => upright(),
  2: () => upright().flop(),
  3: () => upright().rotate(180),
  4: () => upright().flip(),
  5: async () => sharp(await upright().rotate(90).png().toBuffer()).flop(),
  6: () => upright().rotate(270),
  7: async () => sharp(await upright().rotate(90).png().toBuffer()).flip(),
  8: () => upright().rotate(90),
} as const;

const PAGES = `#set document(title: "Turned", date: datetime(year: 2026, month: 7, day: 14))
#set page(width: 160pt, height: 80pt, margin: 0pt)
#for name in json("document.json").names { image("assets/" + name, alt: name, width: 160pt, height: 80pt) }
`;

/** The colours of the middle of each quarter, by their largest part. */
async function quarters(page: Uint8Array): Promise<string[]> {
  const { data, info } = await sharp(page).raw().toBuffer({ resolveWithObject: true });
  return [0.25, 0.75].flatMap((y) =>
    [0.25, 0.75].map((x) => {
      const at = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * info.channels;
      const [red = 0, green = 0, blue = 0] = data.subarray(at, at + 3);
      const bright = [red > 127 ? 'red' : '', green > 127 ? 'green' : '', blue > 127 ? 'blue' : ''];
      return bright.filter((name) => name !== '').join(' ');
    }),
  );
}

describe('pictures that are carried over', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'turned-'));
    mkdirSync(join(folder, 'pages'));
    writeFileSync(join(folder, 'pages', 'main.typ'), PAGES);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** The pictures made of files, each on a page of its own. */
  async function onPages(originals: readonly Uint8Array[]) {
    const files = originals.map((bytes) => ({ sha256: hashOf(bytes), type: 'image/jpeg', bytes }));
    const made = await preparePictures(
      files,
      async (hash) => files.find((one) => one.sha256 === hash)?.bytes ?? '',
    );
    const assets = new Map<string, Uint8Array>();
    for (const [i, { sha256 }] of files.entries()) {
      const picture = made.get(sha256);
      expect(picture).toMatchObject({ is: 'picture', width: 160, height: 80, damaged: false });
      if (picture?.is === 'picture') assets.set(`${i + 1}.jpg`, picture.bytes);
    }
    const { pdf, pages } = await typeset({
      pages: join(folder, 'pages'),
      document: { names: [...assets.keys()] },
      assets,
      attachments: [],
      builtAt: BUILT_AT,
    });
    expect(pages).toBe(files.length);
    // The coded data stand in the PDF as they are.
    for (const bytes of assets.values()) expect(Buffer.from(pdf).includes(Buffer.from(bytes))).toBe(true);
    const renderer = new PageRenderer();
    const drawn = await renderer.paint(pdf, pages, 160);
    renderer.close();
    if (drawn.is !== 'drawn') throw new Error('the pages are not drawn');
    return Promise.all(drawn.pages.map(({ bytes }) => quarters(bytes)));
  }

  it('stand upright on the page, however their cameras were held', async () => {
    const files = Object.entries(stored).map(async ([orientation, make]) =>
      (await make())
        .jpeg({ quality: 95 })
        .withMetadata({ orientation: Number(orientation) })
        .toBuffer(),
    );
    const drawn = await onPages(await Promise.all(files));
    expect(drawn).toEqual(files.map(() => ['red', 'green', 'blue', 'red green blue']));
  });

  it('keep the profile of their colours', async () => {
    const drawn = await onPages([await upright().withIccProfile('p3').jpeg({ quality: 95 }).toBuffer()]);
    expect(drawn).toEqual([['red', 'green', 'blue', 'red green blue']]);
  });
});
