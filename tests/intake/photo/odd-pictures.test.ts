import { open } from 'node:fs/promises';
import { join } from 'node:path';
import sharp, { type Exif } from 'sharp';
import { describe, expect, it } from 'vitest';
import { examinePhoto } from '../../../src/intake/photo/examine-photo.js';
import { examinePicture } from '../../../src/intake/photo/picture.js';
import { recognise } from '../../../src/intake/recognise.js';
import { delivery, emptyFolder, put, someHash } from '../a-delivery.js';
import { makeTiff, type TiffFacts } from './make-tiff.js';

const folder = await emptyFolder();
let made = 0;
const [width, height] = [400, 400];

/** Soft shapes under noise: bright, sharp and with a scene. */
const pixels = (samples: number) => {
  const bytes = Buffer.alloc(width * height * samples);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let c = 0; c < samples; c++)
        bytes[(y * width + x) * samples + c] =
          c > 2
            ? 255
            : 90 + 60 * Math.sin(x / 70 + y / 40) + (((x * 31 + y * 17 + c * 7) * 2654435761) >>> 26);
  return bytes;
};
const EXIF: Exif = {
  IFD0: { Make: 'Invented', Model: 'M-1' },
  IFD2: { DateTimeOriginal: '2026:07:14 05:42:10', OffsetTimeOriginal: '-07:00' },
};
const drawn = () => sharp(pixels(3), { raw: { width, height, channels: 3 } }).withExif(EXIF);

async function examined(bytes: Uint8Array) {
  made += 1;
  const { path, name } = await put(folder, `p${made}`, bytes);
  const recognised = recognise(bytes);
  const file = { name, bytes: bytes.length, sha256: someHash, type: recognised.type };
  return (await examinePhoto({ path, type: recognised.type, delivery, file })).received;
}
const KNOWN = {
  flags: [],
  width,
  height,
  camera: { make: 'Invented', model: 'M-1' },
  time: { is: 'known', instant: '2026-07-14T12:42:10.000Z' },
  sceneHash: expect.any(String),
};
const TAGS: Pick<TiffFacts, 'main' | 'exif' | 'gps'> = {
  main: [
    [0x010f, 'Invented\0'],
    [0x0110, 'M-1\0'],
  ],
  exif: [
    [0x9003, '2026:07:14 05:42:10\0'],
    [0x9011, '-07:00\0'],
  ],
  gps: [
    [1, 'N\0'],
    [
      2,
      {
        rationals: [
          [32, 1],
          [41, 1],
          [24, 1],
        ],
      },
    ],
    [3, 'W\0'],
    [
      4,
      {
        rationals: [
          [114, 1],
          [37, 1],
          [12, 1],
        ],
      },
    ],
  ],
};
const tiff = (facts: Partial<TiffFacts> = {}) => {
  const { samples = 3 } = facts;
  const { head, tail } = makeTiff({ width, height, samples, pixels: pixels(samples), ...TAGS, ...facts });
  return Buffer.concat([head, tail]);
};

describe('pictures of less common forms', () => {
  it('AVIF', async () => {
    expect(recognise(await drawn().resize(64).avif({ effort: 0 }).toBuffer()).type).toBe('image/avif');
    expect(await examined(await drawn().avif({ quality: 90, effort: 0 }).toBuffer())).toMatchObject(KNOWN);
  });

  it.each<[string, Partial<TiffFacts>]>([
    ['TIFF', {}],

    ['TIFF with one channel more that is no transparency', { samples: 4, extra: 0 }],
    ['TIFF with two channels more', { samples: 5, extra: 0 }],
    ['TIFF in grey with a channel more', { samples: 2, extra: 0 }],
    ['BigTIFF', { big: true }],
    ['BigTIFF with two channels more', { big: true, samples: 5, extra: 0 }],
  ])('%s', async (_, facts) => {
    const received = await examined(tiff(facts));
    expect(received).toMatchObject(KNOWN);
    expect(received.place?.gps?.latitude).toBeCloseTo(32.69, 9);
    expect(received.place?.gps?.longitude).toBeCloseTo(-114.62, 9);
  });

  it.each([false, true])('a TIFF whose tags lie behind 200 MB of nothing (BigTIFF: %s)', async (big) => {
    const at = 200 * 1024 * 1024;
    const { head, tail } = makeTiff({ width, height, samples: 3, pixels: pixels(3), big, ...TAGS }, at);
    const path = join(folder, `far-${big}.tif`);
    const file = await open(path, 'w');
    await file.write(head, 0, head.length, 0);
    await file.write(tail, 0, tail.length, at);
    await file.close();
    const begun = performance.now();
    const { exif } = await examinePicture(path, 'image/tiff');
    expect(exif).toMatchObject({ make: 'Invented', dateTimeOriginal: '2026:07:14 05:42:10' });
    expect(performance.now() - begun).toBeLessThan(3000);
  });

  it('a PNG whose Exif stands behind its pixels', async () => {
    const png = await drawn().png().toBuffer();
    const at = png.indexOf('eXIf') - 4;
    const end = at + png.readUInt32BE(at) + 12;
    const late = Buffer.concat([
      png.subarray(0, at),
      png.subarray(end, -12),
      png.subarray(at, end),
      png.subarray(-12),
    ]);
    expect(await examined(late)).toMatchObject(KNOWN);
    late.writeUInt8(7, late.length - 13);
    expect((await examined(late)).camera).toBeUndefined();
  });

  it('a JPEG with stray bytes between the markers of its head', async () => {
    const jpeg = await drawn().jpeg({ quality: 90 }).toBuffer();
    const end = 4 + jpeg.readUInt16BE(4);
    const stray = Buffer.from([0, 1, 2, 0xff, 0x00, 0x55]);
    expect(await examined(Buffer.concat([jpeg.subarray(0, end), stray, jpeg.subarray(end)]))).toMatchObject(
      KNOWN,
    );
  });
});

describe('Exif that is not in order', () => {
  const withThumbnail = async (place: number, length: number, cut = 0) => {
    const jpeg = await sharp(pixels(3), { raw: { width, height, channels: 3 } })
      .jpeg({ quality: 90 })
      .toBuffer();
    const { tail } = makeTiff({ width: 1, height: 1, samples: 3, pixels: Buffer.alloc(0), ...TAGS }, 8);
    // The second directory, which the first one points to, names the thumbnail.
    const block = Buffer.concat([Buffer.from('II*\0\x08\0\0\0', 'latin1'), tail]);
    const next = 8 + 2 + 12 * block.readUInt16LE(8);
    const second = Buffer.alloc(2 + 24 + 4);
    second.writeUInt16LE(2, 0);
    second.writeUInt16LE(0x0201, 2);
    second.writeUInt16LE(4, 4);
    second.writeUInt32LE(1, 6);
    second.writeUInt32LE(place < 0 ? block.length + 30 : place, 10);
    second.writeUInt16LE(0x0202, 14);
    second.writeUInt16LE(4, 16);
    second.writeUInt32LE(1, 18);
    second.writeUInt32LE(length, 22);
    block.writeUInt32LE(block.length, next);
    const whole = Buffer.concat([
      Buffer.from('Exif\0\0', 'latin1'),
      block,
      second,
      Buffer.from([0xff, 0xd8, 9, 9]),
    ]);
    const content = whole.subarray(0, whole.length - cut);
    const marker = Buffer.from([0xff, 0xe1, 0, 0]);
    marker.writeUInt16BE(content.length + 2, 2);
    return Buffer.concat([jpeg.subarray(0, 2), marker, content, jpeg.subarray(2)]);
  };

  it.each<[string, number, number, number]>([
    ['a thumbnail that is no picture', -1, 4, 0],
    ['a thumbnail beyond the block', 60_000, 4000, 0],
    ['a thumbnail longer than the block', -1, 4_000_000, 0],
    ['a thumbnail that is cut off', -1, 4, 3],
    ['a directory of the thumbnail that is cut off', -1, 4, 20],
    ['a directory of the thumbnail that is missing', -1, 4, 34],
  ])('%s costs neither time nor place nor camera', async (_, place, length, cut) => {
    const received = await examined(await withThumbnail(place, length, cut));
    expect(received).toMatchObject(KNOWN);
    expect(received.place?.gps?.latitude).toBeCloseTo(32.69, 9);
  });

  it.each([
    ['without a closing NUL', 'Invented', 'M-1'],
    ['with a count that spans what follows', 'Invented\0\0\0M-1 and more', 'M-1\0\0junk'],
  ])('make and model %s end where they end', async (_, make, model) => {
    const received = await examined(
      tiff({
        main: [
          [0x010f, make],
          [0x0110, model],
        ],
      }),
    );
    expect(received.camera).toEqual({ make: 'Invented', model: 'M-1' });
  });
});
