import fc from 'fast-check';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { readExif, readExifBlock } from '../../../src/intake/photo/exif.js';
import { readHead } from '../../../src/intake/photo/jpeg/head.worker.js';
import { decodeMeans } from '../../../src/intake/photo/jpeg/scan.worker.js';
import { lookAt } from '../../../src/intake/photo/picture.js';
import { emptyFolder, put } from '../a-delivery.js';

const folder = await emptyFolder();

/** Soft shapes with noise on them, from a fixed beginning: codes of every length. */
function scene(width: number, height: number, channels: 1 | 3, noise = 40): Buffer {
  const pixels = Buffer.alloc(width * height * channels);
  let state = 7;
  for (let i = 0; i < pixels.length; i += 1) {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    const at = Math.floor(i / channels);
    const [x, y] = [at % width, Math.floor(at / width)];
    const soft = 80 + 40 * Math.sin(x / 90 + (i % channels)) + 30 * Math.cos(y / 55);
    pixels[i] = Math.max(0, Math.min(255, soft + (((state >> 16) % 100) * noise) / 100));
  }
  return pixels;
}
const sharpOf = (width: number, height: number, channels: 1 | 3, noise?: number) => {
  const image = sharp(scene(width, height, channels, noise), { raw: { width, height, channels } });
  return channels === 1 ? image.toColourspace('b-w') : image;
};

function meansOf(file: Uint8Array) {
  const head = readHead(file);
  return head === undefined ? undefined : decodeMeans(file, head);
}

/** Decoded whole by libjpeg, and the mean of each 8 × 8 pixels taken. */
async function byLibrary(file: Uint8Array): Promise<Uint8Array> {
  const { data, info } = await sharp(file).raw().toBuffer({ resolveWithObject: true });
  const [columns, rows] = [info.width / 8, info.height / 8];
  const sums = new Float64Array(columns * rows);
  for (let i = 0; i < info.width * info.height; i += 1) {
    const [r = 0, g = 0, b = 0] = data.subarray(i * info.channels, i * info.channels + 3);
    const at = Math.floor(i / info.width / 8) * columns + Math.floor((i % info.width) / 8);
    sums[at] = (sums[at] ?? 0) + (0.299 * r + 0.587 * g + 0.114 * b) / 64;
  }
  return Uint8Array.from(sums, Math.round);
}

function furthest(a: Uint8Array, b: Uint8Array): number {
  expect(a.length).toBe(b.length);
  return a.reduce((most, value, i) => Math.max(most, Math.abs(value - (b[i] ?? 0))), 0);
}

describe('a plain JPEG decoded to block means', () => {
  it.each([1, 30, 75, 95, 100])('is what libjpeg decodes, to rounding, grey, quality %i', async (quality) => {
    const file = await sharpOf(640, 480, 1).jpeg({ quality }).toBuffer();
    const means = meansOf(file);
    expect([means?.width, means?.height]).toEqual([80, 60]);
    expect(furthest(means?.grey ?? new Uint8Array(), await byLibrary(file))).toBeLessThanOrEqual(1);
  });

  it.each([
    ['4:2:0', { chromaSubsampling: '4:2:0' }],
    ['4:4:4', { chromaSubsampling: '4:4:4' }],
    ['with codes made for it', { optimizeCoding: true }],
    ['with the codes of T.81 annex K', { optimizeCoding: false }],
  ])('is what libjpeg decodes, to rounding of colours, %s', async (_, options) => {
    const file = await sharpOf(640, 480, 3, 20)
      .jpeg({ quality: 90, ...options })
      .toBuffer();
    expect(furthest(meansOf(file)?.grey ?? new Uint8Array(), await byLibrary(file))).toBeLessThanOrEqual(2);
  });

  it.each([
    [17, 9],
    [333, 251],
    [8, 8],
    [1, 1],
  ])('%i × %i: blocks that hang over the edge count for what they are', async (width, height) => {
    for (const channels of [1, 3] as const) {
      const means = meansOf(await sharpOf(width, height, channels).jpeg().toBuffer());
      expect([means?.width, means?.height]).toEqual([Math.ceil(width / 8), Math.ceil(height / 8)]);
      expect(means?.grey.length).toBe(Math.ceil(width / 8) * Math.ceil(height / 8));
    }
  });

  it.each([
    ['progressive', (image: Sharp) => image.jpeg({ progressive: true })],
    ['of four inks', (image: Sharp) => image.toColourspace('cmyk').jpeg()],
    ['PNG', (image: Sharp) => image.png()],
  ])('leaves what is coded otherwise to the library: %s', async (_, saved) => {
    expect(meansOf(await saved(sharpOf(64, 64, 3)).toBuffer())).toBeUndefined();
  });
});

/**
 * A grey picture of three blocks, written by hand: a code of two bits for "no change of the mean" (00) and one for
 * "five bits of change" (01), one for "nothing else in the block" (00), a restart marker after each block.
 */
function byHand({ restarts = [0xd0, 0xd1], bytes = [0b01100000, 0b01111111, 0b00111111] } = {}): Uint8Array {
  const segment = (marker: number, body: number[]) => [0xff, marker, 0, body.length + 2, ...body];
  const codes = (kind: number, symbols: number[]) => [
    kind,
    0,
    symbols.length,
    ...new Array<number>(14).fill(0),
    ...symbols,
  ];
  const [first = 0, second = 0, third = 0] = bytes;
  const [one = 0, two = 0] = restarts;
  return Uint8Array.from([
    ...[0xff, 0xd8],
    ...segment(0xdb, [0, 8, ...new Array<number>(63).fill(1)]),
    ...segment(0xc0, [8, 0, 8, 0, 24, 1, 1, 0x11, 0]),
    ...segment(0xc4, codes(0x00, [0, 5])),
    ...segment(0xc4, codes(0x10, [0])),
    ...segment(0xdd, [0, 1]),
    ...segment(0xda, [1, 1, 0x00, 0, 63, 0]),
    // 01 10000 00…: 16 up; 01 11111 00…: 31 up, where the second byte is needed for the end of block; 00 00: no change.
    ...[first, 0b01111111, 0xff, one, second, 0b00111111, 0xff, two, third, 0xff, 0xd9],
  ]);
}

describe('restart intervals (T.81 §B.2.4.4, §E.1.4)', () => {
  it('begin at the middle of brightness each', () => {
    // 01 10000 0 | 0 1111111 → +16; 01 11111 0 | 0 0111111 is padded wrongly: the padding is not looked at.
    const file = byHand({ bytes: [0b01100000, 0b01111110, 0b00001111] });
    expect([...(meansOf(file)?.grey ?? [])]).toEqual([128 + 16, 128 + 31, 128]);
  });

  it.each([
    ['in the wrong order', byHand({ restarts: [0xd1, 0xd0], bytes: [0b01100000, 0b01111110, 0b00001111] })],
    [
      'where an end of image should not be',
      byHand({ restarts: [0xd9, 0xd1], bytes: [0b01100000, 0b01111110, 0b00001111] }),
    ],
    ['with a byte too many before it', byHand({ bytes: [0b00000000, 0b01111110, 0b00001111] })],
  ])('are none %s', (_, file) => {
    expect(meansOf(file)).toBeUndefined();
  });
});

describe('what is not whole', async () => {
  const whole = await sharpOf(320, 240, 3).jpeg({ quality: 80 }).toBuffer();
  const coded = readHead(whole)?.scanAt ?? 0;

  it('is not decoded, wherever it is cut off', () => {
    expect(coded).toBeGreaterThan(100);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: whole.length - 1 }), (length) => {
        expect(meansOf(whole.subarray(0, length))).toBeUndefined();
        // With an end of image after the cut, as a program for repairing pictures would leave it.
        if (length < whole.length - 4)
          expect(
            meansOf(Buffer.concat([whole.subarray(0, length), Buffer.from([0xff, 0xd9])])),
          ).toBeUndefined();
      }),
      { numRuns: 300 },
    );
  });

  it('or changed at any byte, is decoded or not, and nothing is thrown', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 2, max: whole.length - 1 }), fc.integer({ min: 0, max: 255 })), {
          minLength: 1,
          maxLength: 6,
        }),
        (changes) => {
          const made = Buffer.from(whole);
          for (const [at, value] of changes) made[at] = value;
          const head = readHead(made);
          const means = head === undefined ? undefined : decodeMeans(made, head);
          if (means !== undefined) expect(means.grey.length).toBe(means.width * means.height);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('any bytes behind a beginning of image throw nothing', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        meansOf(Uint8Array.from([0xff, 0xd8, 0xff, ...bytes]));
      }),
      { numRuns: 300 },
    );
  });
});

describe('a large photo, looked at by block means', async () => {
  const [width, height] = [3264, 2448];
  const small = await sharpOf(408, 306, 3).png().toBuffer();
  const large = (input: Uint8Array, sigma = 0) => {
    const image = sharp(input).resize(width, height, { kernel: 'cubic', fit: 'fill' });
    return sigma === 0 ? image : image.blur(sigma);
  };
  const seen = async (name: string, bytes: Uint8Array, type = 'image/jpeg') =>
    lookAt((await put(folder, name, bytes)).path, type);
  const bitsApart = (a = '', b = '') =>
    (BigInt(`0x${a}`) ^ BigInt(`0x${b}`)).toString(2).replaceAll('0', '').length;
  const photo = await large(small).jpeg({ quality: 85 }).toBuffer();
  const flagsOf = async (bytes: Uint8Array) => (await seen('p.jpg', bytes)).flags.map(({ is }) => is);

  it('shows the same scene as its copies that are looked at by the library', async () => {
    const { sceneHash, metadata, flags } = await seen('a.jpg', photo);
    expect({ ...metadata, exif: undefined }).toEqual({ width, height, exif: undefined });
    expect(flags).toEqual([]);
    for (const [name, type, copy] of [
      ['a.png', 'image/png', await sharp(photo).png({ compressionLevel: 1 }).toBuffer()],
      ['b.jpg', 'image/jpeg', await sharp(photo).jpeg({ progressive: true }).toBuffer()],
      ['c.jpg', 'image/jpeg', await sharp(photo).resize(1280).jpeg({ quality: 70 }).toBuffer()],
    ] as const)
      expect(bitsApart(sceneHash, (await seen(name, copy, type)).sceneHash)).toBeLessThanOrEqual(2);
  });

  it('is dark or blurred as the library would find it', async () => {
    const dark = await sharp(photo).linear(0.05, 0).jpeg().toBuffer();
    expect(await flagsOf(dark)).toEqual(['dark']);
    // By 1 % of the width.
    expect(
      await flagsOf(
        await large(small, width / 100)
          .jpeg()
          .toBuffer(),
      ),
    ).toEqual(['blurred']);
  });

  it('is unreadable when it is cut off', async () => {
    expect(await flagsOf(photo.subarray(0, photo.length / 2))).toEqual(['picture-unreadable']);
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('is turned upright, orientation %i', async (orientation) => {
    const turned = await sharp(photo).withMetadata({ orientation }).jpeg({ quality: 90 }).toBuffer();
    const upright = await sharp(turned).autoOrient().resize({ width: 900 }).png().toBuffer();
    const [stored, seenUpright] = [await seen('t.jpg', turned), await seen('u.png', upright, 'image/png')];
    expect(stored.metadata?.width).toBe(width);
    expect(bitsApart(stored.sceneHash, seenUpright.sceneHash)).toBeLessThanOrEqual(2);
  });

  it('tells what its Exif block says, as by the file itself', async () => {
    const bytes = await sharp(photo)
      .withExif({
        IFD0: { Make: 'Demo', Model: 'Phone A', Software: '17.1' },
        IFD2: { DateTimeOriginal: '2026:07:14 05:42:10', OffsetTimeOriginal: '-07:00' },
        IFD3: {
          GPSLatitudeRef: 'N',
          GPSLatitude: '32/1 41/1 24/1',
          GPSLongitudeRef: 'W',
          GPSLongitude: '114/1 37/1 12/1',
        },
      })
      .jpeg()
      .toBuffer();
    const { path } = await put(folder, 'e.jpg', bytes);
    const { metadata, exifKnown } = await lookAt(path, 'image/jpeg');
    expect(exifKnown).toBe(true);
    const said = await readExifBlock(metadata?.exif);
    expect(said).toEqual(await readExif(path, undefined));
    expect(said).toMatchObject({ make: 'Demo', dateTimeOriginal: '2026:07:14 05:42:10', latitude: 32.69 });
  });
});
