import { readdir, readFile } from 'node:fs/promises';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { scan } from '../../../src/intake/photo/jpeg-scan.js';
import { cases } from '../../properties.js';

const PHOTOS = 'fixtures/photos';

/** Noise on soft shapes: coded data of every kind. */
const [width, height] = [640, 480];
const pixels = Buffer.alloc(width * height * 3);
for (let i = 0, state = 7; i < pixels.length; i += 1) {
  state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
  pixels[i] = 100 + 60 * Math.sin(i / 900) + ((state >> 16) % 60);
}
const image = () => sharp(pixels, { raw: { width, height, channels: 3 } });
const photo = await image().jpeg({ quality: 85 }).toBuffer();
const SCAN_AT = photo.indexOf(Buffer.from([0xff, 0xda])) + 14;
const END = photo.length - 2;

const changed = (change: (bytes: Buffer) => void, from = photo) => {
  const bytes = Buffer.from(from);
  change(bytes);
  return bytes;
};

describe('the markers of a JPEG (ITU-T T.81 annex B)', () => {
  it.each([
    ['sequential', {}],
    ['progressive, in several scans', { progressive: true }],
    ['with tables of its own', { optimizeCoding: true, mozjpeg: true }],
    ['with colour at full size', { chromaSubsampling: '4:4:4' }],
  ])('%s: all in place, with its size', async (_, options) => {
    const bytes = await image().jpeg(options).toBuffer();
    expect(scan(bytes)).toEqual({ is: 'whole', width, height, exif: undefined });
  });

  it('every whole photo of fixtures/photos is in order, with the Exif block that sharp finds', async () => {
    // The even surface of four-inks.jpg is coded as zeros, which looks like a lost sector.
    const names = (await readdir(PHOTOS)).filter((name) => /(?<!inks)\.jpg$/.test(name));
    expect(names.length).toBeGreaterThan(20);
    for (const name of names) {
      const bytes = await readFile(`${PHOTOS}/${name}`);
      const { width, height, exif } = await sharp(bytes, { failOn: 'none' }).metadata();
      const read = scan(bytes);
      if (read.is !== 'whole') throw new Error(`${name} is ${read.is}`);
      expect({ name, size: [read.width, read.height] }).toEqual({ name, size: [width, height] });
      const plain = exif?.subarray(exif.toString('latin1', 0, 4) === 'Exif' ? 6 : 0);
      expect(Buffer.from(read.exif ?? []).equals(plain ?? Buffer.alloc(0))).toBe(true);
    }
  });

  it('what lies behind the end of image, such as a film, is left alone', () => {
    expect(scan(Buffer.concat([photo, Buffer.alloc(9000)])).is).toBe('whole');
  });

  it('restart markers have to be numbered in turn', () => {
    // A scan of blocks that are all alike needs no coder: any two stuffed bytes between markers will do.
    const head = photo.subarray(0, SCAN_AT);
    const coded = (...numbers: number[]) =>
      Buffer.concat([
        head,
        ...numbers.map((n) => Buffer.from([0x12, 0x34, 0xff, 0xd0 + n])),
        Buffer.from([0x56, 0xff, 0xd9]),
      ]);
    expect(scan(coded(0, 1, 2, 3, 4, 5, 6, 7, 0, 1)).is).toBe('whole');
    expect(scan(coded(0, 1, 3)).is).toBe('doubtful');
    expect(scan(coded(1)).is).toBe('doubtful');
  });

  it('cut off anywhere, it is known to be, from its size on', () => {
    const cut = (length: number) => scan(photo.subarray(0, length));
    fc.assert(
      fc.property(fc.integer({ min: SCAN_AT, max: photo.length - 1 }), (length) => {
        expect(cut(length)).toEqual({ is: 'cut-off', width, height, exif: undefined });
      }),
    );
    for (let length = 0; length < SCAN_AT; length += 1) expect(cut(length).is).not.toBe('whole');
  });

  it.each<[string, Buffer]>([
    ['zeros of a sector', Buffer.alloc(512)],
    ['the beginning of another photo', photo.subarray(0, 512)],
    ['ones of an erased sector', Buffer.alloc(512, 0xff)],
    ['16 KB of text', Buffer.alloc(16 * 1024, 'all good, unit running. ')],
  ])('%s in its middle puts it out of order', (_, other) => {
    fc.assert(
      fc.property(fc.integer({ min: SCAN_AT, max: END - other.length }), (at) => {
        expect(scan(changed((bytes) => other.copy(bytes, at))).is).not.toBe('whole');
      }),
    );
  });

  it.each<[string, Buffer]>([
    ['nothing', Buffer.alloc(0)],
    ['only its first marker', Buffer.from([0xff, 0xd8])],
    ['first and last marker alone', Buffer.from([0xff, 0xd8, 0xff, 0xd9])],
    ['a frame without a scan', Buffer.concat([photo.subarray(0, SCAN_AT - 14), Buffer.from([0xff, 0xd9])])],
    ['a scan without data', Buffer.concat([photo.subarray(0, SCAN_AT), Buffer.from([0xff, 0xd9])])],
    ['another kind of file', Buffer.from('%PDF-1.7\n')],
  ])('%s is no photo', (_, bytes) => {
    expect(scan(bytes).is).toBe('doubtful');
  });

  it('a head with any byte changed never leads astray', () => {
    fc.assert(
      fc.property(fc.nat(SCAN_AT), fc.nat(255), (at, value) => {
        const read = scan(
          changed((bytes) => {
            bytes[at] = value;
          }),
        );
        expect(read.is === 'doubtful' || (read.width > 0 && read.height > 0)).toBe(true);
      }),
      { numRuns: cases(500) },
    );
  });
});
