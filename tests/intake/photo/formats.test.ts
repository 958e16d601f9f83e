import { readdirSync, readFileSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import type { FlagName } from '../../../src/core/model/evidence.js';
import { examinePhoto } from '../../../src/intake/photo/examine-photo.js';
import { readExif, readExifBlock } from '../../../src/intake/photo/exif.js';
import { examinePicture } from '../../../src/intake/photo/picture.js';
import { recognise } from '../../../src/intake/recognise.js';
import { cases } from '../../properties.js';
import { delivery, emptyFolder, put, someHash } from '../a-delivery.js';

const PHOTOS = 'fixtures/photos';
const files = readdirSync(PHOTOS).filter((name) => name !== 'make.js');

async function examined(path: string) {
  const { type } = recognise(readFileSync(path));
  const file = { name: path, bytes: statSync(path).size, sha256: someHash, type };
  return (await examinePhoto({ path, type, delivery, file })).received;
}
const bitsApart = (a = '', b = '') =>
  (BigInt(`0x${a}`) ^ BigInt(`0x${b}`)).toString(2).replaceAll('0', '').length;

/** What every whole phone picture of the fixtures says. */
const KNOWN = {
  kind: 'photo',
  width: 480,
  height: 360,
  flags: [],
  place: { stop: 'load-1' },
  camera: { make: 'Demo', model: 'Phone A' },
  time: { is: 'known', basis: 'gps', instant: '2026-07-14T12:42:08.000Z', zone: 'America/Phoenix' },
  statedTimes: { camera: '2026-07-14T05:42:10.370', offsetMinutes: -420, gps: '2026-07-14T12:42:08.000Z' },
};

describe('pictures as phones and cameras write them', async () => {
  const plain = await examined(join(PHOTOS, 'plain.jpg'));

  it.each([
    'plain.jpg',
    'progressive.jpg',
    'grey.jpg',
    'four-inks.jpg',
    'deep.png',
    'see-through.png',
    'palette.png',
    'lossy.webp',
    'lossless.webp',
    'plain.tif',
    'deep.tif',
    'phone.heic',
    'full-exif.jpg',
    'late-exif.jpg',
  ])('%s tells time, place and camera, and is known for the same scene', async (name) => {
    const received = await examined(join(PHOTOS, name));
    expect(received).toMatchObject(KNOWN);
    // The words in the picture differ, the scene does not.
    expect(bitsApart(received.sceneHash, plain.sceneHash)).toBeLessThanOrEqual(12);
  });

  it.each([2, 3, 4, 5, 6, 7, 8])('orientation %i is kept, and looked at upright', async (orientation) => {
    const received = await examined(join(PHOTOS, `orientation-${orientation}.jpg`));
    expect(received).toMatchObject({
      orientation,
      time: KNOWN.time,
      flags: [],
      width: orientation > 4 ? 360 : 480,
    });
    const upright = await examined(join(PHOTOS, 'orientation-3.jpg'));
    expect(bitsApart(received.sceneHash, upright.sceneHash)).toBeLessThanOrEqual(6);
  });

  it.each<[string, object, FlagName[]]>([
    ['no-exif.jpg', { time: { is: 'none' } }, ['no-capture-time']],
    ['blank-date.jpg', { time: { is: 'none' } }, ['no-capture-time']],
    ['zero-date.jpg', { time: { is: 'none' } }, ['no-capture-time']],
    [
      'local-only.jpg',
      { time: { basis: 'place-zone', instant: '2026-07-14T12:42:10.000Z' }, place: { stop: 'load-1' } },
      ['time-zone-unknown'],
    ],
    // In November, in either of the two zones of the stops.
    ['happened-twice.jpg', { time: { is: 'local', local: '2026-11-01T01:30:00' } }, ['time-zone-unknown']],
    [
      'south-east.jpg',
      { time: { basis: 'gps', instant: '2026-07-14T12:42:08.000Z' }, place: { gps: { latitude: -31.55 } } },
      [],
    ],
    [
      'old-fix.jpg',
      { time: { basis: 'offset', instant: '2026-07-14T12:42:10.370Z', uncertaintySeconds: 731 } },
      [],
    ],
    [
      'big-endian.jpg',
      {
        time: { basis: 'offset', instant: '2026-07-14T12:42:10.370Z' },
        camera: { make: 'Demo', model: 'Camera B', serial: 'B-0042' },
      },
      [],
    ],
    ['no-hemisphere.jpg', { time: { basis: 'gps' }, place: { stop: 'load-1' } }, []],
  ])('%s', async (name, is, flags) => {
    const received = await examined(join(PHOTOS, name));
    expect(received).toMatchObject(is);
    expect(received.flags.map((flag) => flag.is)).toEqual(flags);
  });

  it('degrees without a hemisphere are no position', async () => {
    expect((await examined(join(PHOTOS, 'no-hemisphere.jpg'))).place?.gps).toBeUndefined();
  });

  it('50 megapixels, as one photo', { timeout: 60_000 }, async () => {
    const { path } = await put(
      await emptyFolder(),
      'large.jpg',
      await sharp(join(PHOTOS, 'plain.jpg'))
        .resize({ width: 8660, height: 5774, fit: 'fill', kernel: 'nearest' })
        .jpeg({ quality: 60 })
        .toBuffer(),
    );
    const { size, flags, sceneHash } = await examinePicture(path, 'image/jpeg');
    expect([size?.width, size?.height]).toEqual([8660, 5774]);
    expect(flags).toEqual([]);
    expect(bitsApart(sceneHash, plain.sceneHash)).toBeLessThanOrEqual(4);
  });
});

describe('pictures that something is wrong with are kept, and say what', () => {
  it.each([
    ['cut.png', /decoded to the end/],
    ['cut.webp', /decoded to the end/],
    ['cut.heic', /decoded to the end/],
    ['box-of-nothing.heic', /decoded to the end/],
    ['box-past-the-end.heic', /decoded to the end/],
    ['flood.png', /60000 × 60000 pixels are more than 120 million/],
  ])('%s', async (name, detail) => {
    const { flags } = await examined(join(PHOTOS, name));
    const said = flags.find((flag) => flag.is === 'picture-unreadable')?.detail;
    expect(said).toMatch(detail);
    // The record goes to strangers: where it lay on a machine is nobody's business.
    expect(said).not.toMatch(/[\\/]/);
  });

  // Offsets outside, a directory that points at itself, a count of 4 thousand million, a directory of 65,535.
  it.each([
    'offset-outside.jpg',
    'directory-loop.jpg',
    'huge-count.jpg',
    'huge-directory.jpg',
    'empty-exif.jpg',
  ])('%s: the picture is whole, its Exif is not, and takes no time', async (name) => {
    const before = performance.now();
    const { flags, sceneHash, time } = await examined(join(PHOTOS, name));
    expect(performance.now() - before).toBeLessThan(2000);
    expect(flags.map((flag) => flag.is)).not.toContain('picture-unreadable');
    expect(sceneHash).toBeDefined();
    expect(['none', 'known']).toContain(time.is);
  });

  it('every fixture is examined without an exception', async () => {
    expect(files.length).toBeGreaterThan(40);
    for (const name of files) expect((await examined(join(PHOTOS, name))).kind).toBe('photo');
  });
});

describe('Exif that a stranger wrote', async () => {
  const folder = await emptyFolder();
  const whole = readFileSync(join(PHOTOS, 'plain.jpg'));
  const start = whole.indexOf('Exif\0\0') + 6;
  const length = whole.readUInt16BE(start - 8) - 8;
  const known = new Set(['string', 'number', 'object']);
  const read = async (bytes: Uint8Array) => {
    const { exif } = await readExifBlock(bytes.subarray(start, start + length));
    for (const value of Object.values(exif)) expect(known.has(typeof value)).toBe(true);
    if (exif.latitude !== undefined) expect(Math.abs(exif.latitude)).toBeLessThanOrEqual(90);
    if (exif.longitude !== undefined) expect(Math.abs(exif.longitude)).toBeLessThanOrEqual(180);
  };

  it('of any bytes never throws', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ minLength: length, maxLength: length }), async (bytes) => {
        const made = Buffer.from(whole);
        made.set(bytes, start);
        await read(made);
      }),
      { numRuns: cases(60) },
    );
  });

  it('with a true header and any bytes behind it never throws', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.integer({ min: 8, max: length - 1 }), fc.integer({ min: 0, max: 255 })), {
          minLength: 1,
          maxLength: 12,
        }),
        async (changes) => {
          const made = Buffer.from(whole);
          for (const [at, value] of changes) made[start + at] = value;
          await read(made);
        },
      ),
      { numRuns: cases(200) },
    );
  });

  /** A TIFF header, and a directory of one tag: the maker, of so many letters at an offset. */
  function directory(at: number, count: number, offset: number): Buffer {
    const bytes = Buffer.alloc(26);
    bytes.write('II*\0', 'latin1');
    bytes.writeUInt32LE(at, 4);
    bytes.writeUInt16LE(1, 8);
    bytes.writeUInt16LE(0x010f, 10);
    bytes.writeUInt16LE(2, 12);
    bytes.writeUInt32LE(count, 14);
    bytes.writeUInt32LE(offset, 18);
    return bytes;
  }

  it('is read from its own bytes alone, not from what lies behind them in memory', async () => {
    const memory = Buffer.concat([directory(8, 16, 26), Buffer.from('of another photo')]);
    expect((await readExifBlock(memory)).exif.make).toBe('of another photo');
    expect((await readExifBlock(memory.subarray(0, 26))).exif).toEqual({});
  });

  it('of thousands of tags that each name all of it is read for those that are used', async () => {
    const count = 20_000;
    const bytes = Buffer.alloc(10 + 12 * count + 4, 'x');
    bytes.write('II*\0\x08\0\0\0', 'latin1');
    bytes.writeUInt16LE(count, 8);
    for (let i = 0; i < count; i++) {
      const at = 10 + 12 * i;
      bytes.writeUInt16LE(i + 1, at);
      bytes.writeUInt16LE(3, at + 2);
      bytes.writeUInt32LE(Math.floor(bytes.length / 2) - 8, at + 4);
      bytes.writeUInt32LE(8, at + 8);
    }
    bytes.writeUInt32LE(0, bytes.length - 4);
    const before = process.memoryUsage().arrayBuffers;
    expect(Object.keys((await readExifBlock(bytes)).exif)).toEqual([]);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(100e6);
  });

  it.each([
    ['in the middle of a long file', 60_000_000, 30_000_000],
    ['at the end of one of which only the ends are read', 200_000_000, 199_999_900],
  ])('is found %s', async (_, size, at) => {
    const path = join(folder, 'long.tif');
    const made = directory(at, 16, at + 18);
    const file = await open(path, 'w');
    await file.truncate(size);
    await file.write(made.subarray(0, 8), 0, 8, 0);
    await file.write(made.subarray(8), 0, 18, at);
    await file.write(Buffer.from('Maker of cameras'), 0, 16, at + 18);
    await file.close();
    expect(await readExif(path, undefined)).toEqual({ make: 'Maker of cameras' });
  });

  // ISO/IEC 14496-12, §4.2: a length of 1 stands for the 64 bits behind the kind, one of 0 for the rest of the file.
  const box = (length: number, kind: string, ...rest: (string | Buffer)[]) => {
    const head = Buffer.alloc(4);
    head.writeUInt32BE(length);
    return Buffer.concat([
      head,
      Buffer.from(kind),
      ...rest.map((one) => Buffer.from(one as string, 'latin1')),
    ]);
  };
  const brand = box(24, 'ftyp', 'heic\0\0\0\0mif1heic');
  const room = Buffer.alloc(400);
  it.each([
    ['a box without a length', [brand, box(0, 'free'), room]],
    [
      'a box in meta that leads back',
      [brand, box(0, 'meta', '\0\0\0\0', box(1, 'free', '\0\0\0\0\xff\xff\xff\xe8')), room],
    ],
    [
      'boxes shorter than their heads',
      [brand, box(400, 'meta', '\0\0\0\0'), Buffer.alloc(4000, '\0\0\0\x04')],
    ],
    ['its end in its brands', [brand.subarray(0, 14)]],
  ])('of a HEIF file with %s is none, and ends', async (_, parts) => {
    const { path } = await put(folder, 'boxes.heic', Buffer.concat(parts));
    expect(await readExif(path, undefined)).toEqual({});
  });
});
