import fc from 'fast-check';
import sharp, { type Sharp } from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { carriedJpeg } from '../../../src/core/pictures/carried-jpeg.js';
import { cases } from '../../properties.js';

/** A picture whose four corners differ, with grain. */
const scene = (): Sharp => {
  const data = Buffer.from(
    Array.from({ length: 64 * 48 * 3 }, (_, i) => {
      const [x, y, c] = [Math.floor(i / 3) % 64, Math.floor(i / 192), i % 3];
      return (x * 3 + y * 2 * c + ((i * i) % 31)) % 256;
    }),
  );
  return sharp(data, { raw: { width: 64, height: 48, channels: 3 } });
};

/** Pixels as a viewer shows them. */
const pixels = (bytes: Uint8Array) => sharp(bytes).autoOrient().raw().toBuffer({ resolveWithObject: true });

const carried = (bytes: Uint8Array) => {
  const found = carriedJpeg(bytes);
  if (found === undefined) throw new Error('it is not carried over');
  return found;
};

/** With a segment put behind the first marker. */
const withSegment = (jpeg: Uint8Array, marker: number, content: Uint8Array | string) => {
  const inside = Buffer.from(content);
  const head = Buffer.from([0xff, marker, (inside.length + 2) >> 8, (inside.length + 2) & 0xff]);
  return Buffer.concat([jpeg.subarray(0, 2), head, inside, jpeg.subarray(2)]);
};

describe('a JPEG that is carried over', () => {
  it.each<[string, () => Sharp]>([
    ['in colours of full size', () => scene().jpeg({ chromaSubsampling: '4:4:4' })],
    ['in colours of half the size', () => scene().jpeg({ chromaSubsampling: '4:2:0' })],
    ['in grey', () => scene().toColourspace('b-w').jpeg()],
    ['in many scans', () => scene().jpeg({ progressive: true })],
    ['with the profile of a screen', () => scene().withIccProfile('p3').jpeg()],
    ...[1, 2, 3, 4, 5, 6, 7, 8].map((orientation): [string, () => Sharp] => [
      `with orientation ${orientation}`,
      () => scene().withMetadata({ orientation }).jpeg(),
    ]),
  ])('%s looks as it did', async (_, make) => {
    const file = await make().toBuffer();
    const { bytes, width, height } = carried(file);
    const [before, after] = [await pixels(file), await pixels(bytes)];
    expect(after.info).toEqual(before.info);
    expect(after.data.equals(before.data)).toBe(true);
    expect([width, height]).toEqual([before.info.width, before.info.height]);
    expect((await sharp(bytes).metadata()).icc).toEqual((await sharp(file).metadata()).icc);
  });

  it('has nothing that was written beside the picture', async () => {
    const plain = await scene().withIccProfile('srgb').jpeg().toBuffer();
    const told = await scene()
      .jpeg()
      .withMetadata({ orientation: 6 })
      .withExifMerge({
        IFD0: { Make: 'SECRET' },
        IFD2: { DateTimeOriginal: '2026:07:14 04:10:00', UserComment: 'SECRET' },
        IFD3: { GPSLatitude: '32/1 41/1 0/1', GPSLatitudeRef: 'N' },
      })
      .withXmp('<x:xmpmeta xmlns:x="adobe:ns:meta/">SECRET</x:xmpmeta>')
      .toBuffer();
    const commented = withSegment(withSegment(told, 0xfe, 'SECRET'), 0xe2, 'MPF\0SECRET');
    const followed = Buffer.concat([commented, Buffer.from('SECRET'), plain]);
    const { bytes } = carried(followed);
    expect(Buffer.from(followed).includes('SECRET')).toBe(true);
    expect(Buffer.from(bytes).includes('SECRET')).toBe(false);
    const { exif, ...rest } = await sharp(bytes).metadata();
    expect(rest).toMatchObject({ format: 'jpeg', orientation: 6 });
    // `Exif`, a head of eight bytes, one entry of twelve with its count, and where the next directory is: nowhere.
    expect(exif?.length).toBe(6 + 8 + 2 + 12 + 4);
    // The picture of a file that told nothing is the same, but for the way it is turned.
    expect(bytes.length - carried(plain).bytes.length).toBe(36);
  });

  it('that tells nothing has the same pieces as its file, so that anyone can compare them', async () => {
    const { bytes } = carried(await scene().jpeg().toBuffer());
    expect(Buffer.from(carried(bytes).bytes).equals(Buffer.from(bytes))).toBe(true);
  });

  it.each<[string, () => Promise<Uint8Array>]>([
    ['is a PNG', () => scene().png().toBuffer()],
    ['has no bytes', async () => new Uint8Array()],
    ['ends before its picture does', async () => (await scene().jpeg().toBuffer()).subarray(0, -20)],
    ['has four colours for printing', () => scene().toColourspace('cmyk').jpeg().toBuffer()],
    [
      'is in red, green and blue by the names of its colours',
      async () => {
        const file = await scene().jpeg().toBuffer();
        const frame = file.indexOf(Buffer.from([0xff, 0xc0]));
        for (const [i, letter] of ['R', 'G', 'B'].entries()) file.write(letter, frame + 10 + 3 * i, 'latin1');
        return file;
      },
    ],
    [
      'is in red, green and blue by Adobe’s mark',
      async () => withSegment(await scene().jpeg().toBuffer(), 0xee, `Adobe\0d${'\0'.repeat(5)}`),
    ],
    [
      'has a profile that is none',
      async () =>
        withSegment(await scene().jpeg().toBuffer(), 0xe2, `ICC_PROFILE\0\x01\x01${'x'.repeat(200)}`),
    ],
    [
      'has a profile for other colours',
      async () => {
        const profile = (await sharp(await scene().withIccProfile('cmyk').jpeg().toBuffer()).metadata()).icc;
        const parts = Buffer.concat([
          Buffer.from('ICC_PROFILE\0\x01\x01'),
          (profile ?? Buffer.alloc(0)).subarray(0, 60_000),
        ]);
        return withSegment(await scene().jpeg().toBuffer(), 0xe2, parts);
      },
    ],
    [
      'is coded in another way',
      async () => {
        const file = await scene().jpeg().toBuffer();
        file[file.indexOf(Buffer.from([0xff, 0xc0])) + 1] = 0xc9;
        return file;
      },
    ],
  ])('is none that %s', async (_, make) => {
    expect(carriedJpeg(await make())).toBeUndefined();
  });
});

describe('whatever the bytes are', () => {
  let file: Buffer;
  beforeAll(async () => {
    file = await scene()
      .withExif({ IFD0: { Orientation: '3', Make: 'Demo' } })
      .jpeg()
      .toBuffer();
  });

  it('carrying over ends, and what is carried over is carried over as it is', () => {
    const changed = fc
      .array(fc.tuple(fc.nat(file.length - 1), fc.nat(255)), { maxLength: 6 })
      .map((changes) => {
        const bytes = Buffer.from(file);
        for (const [at, value] of changes) bytes[at] = value;
        return bytes;
      });
    fc.assert(
      fc.property(changed, (bytes) => {
        const found = carriedJpeg(bytes);
        if (found === undefined) return;
        expect(found.bytes.length).toBeLessThanOrEqual(bytes.length + 36);
        expect(Buffer.from(carried(found.bytes).bytes).equals(Buffer.from(found.bytes))).toBe(true);
      }),
      { numRuns: cases(1000) },
    );
  });
});
