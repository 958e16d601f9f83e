import { readFile } from 'node:fs/promises';
import sharp, { type Exif } from 'sharp';
import { describe, expect, it } from 'vitest';
import type { Hint } from '../../../src/intake/draft.js';
import { examinePhoto } from '../../../src/intake/photo/examine-photo.js';
import { readExif } from '../../../src/intake/photo/exif.js';
import { laplacianVariance } from '../../../src/intake/photo/quality.js';
import { distanceMetres } from '../../../src/intake/place.js';
import { recognise } from '../../../src/intake/recognise.js';
import { delivery, emptyFolder, put, someHash } from '../a-delivery.js';

const folder = await emptyFolder();
let made = 0;

/** A picture of noise: sharp, bright, large enough. */
async function picture(format: 'jpeg' | 'png' | 'webp', exif: Exif = {}, size = 480): Promise<Buffer> {
  const noise = Buffer.alloc(size * size * 3);
  for (let i = 0; i < noise.length; i++) noise[i] = (i * 2654435761) >>> 24;
  return sharp(noise, { raw: { width: size, height: size, channels: 3 } })
    .toFormat(format)
    .withExif(exif)
    .toBuffer();
}

async function examined(bytes: Uint8Array, hint: Hint = {}) {
  made += 1;
  const { path, name } = await put(folder, `p${made}`, bytes);
  const { type } = recognise(bytes);
  const file = { name, bytes: bytes.length, sha256: someHash, type };
  return examinePhoto({ path, type, delivery, file, hint });
}
const flagsOf = async (bytes: Uint8Array) => (await examined(bytes)).received.flags.map((f) => f.is);

const AT_LOADING: Exif = {
  IFD0: { Make: 'Invented', Model: 'M-1' },
  IFD2: {
    DateTimeOriginal: '2026:07:14 05:42:10',
    OffsetTimeOriginal: '-07:00',
    SubSecTimeOriginal: '370',
    BodySerialNumber: 'S-9',
  },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '32/1 41/1 24/1',
    GPSLongitudeRef: 'W',
    GPSLongitude: '114/1 37/1 12/1',
    GPSTimeStamp: '12/1 42/1 8/1',
    GPSDateStamp: '2026:07:14',
  },
};

const ON_THE_WAY: Exif = { ...AT_LOADING, IFD3: { ...AT_LOADING.IFD3, GPSLatitude: '35/1 0/1 0/1' } };

describe('a photo', () => {
  it.each(['jpeg', 'png', 'webp'] as const)('%s tells time, place, camera and size', async (format) => {
    const { received, problems } = await examined(await picture(format, AT_LOADING));
    expect(received).toMatchObject({
      kind: 'photo',
      width: 480,
      height: 480,
      camera: { make: 'Invented', model: 'M-1', serial: 'S-9' },
      place: { stop: 'load-1' },
      time: {
        is: 'known',
        instant: '2026-07-14T12:42:08.000Z',
        basis: 'gps',
        zone: 'America/Phoenix',
        stated: '2026-07-14T05:42:10.370-07:00',
      },
    });
    expect(received.place?.gps?.latitude).toBeCloseTo(32.69, 9);
    expect(received.place?.gps?.longitude).toBeCloseTo(-114.62, 9);
    expect(received.flags).toEqual([]);
    expect(problems).toEqual([]);
  });

  it('without zone is read in the zone of the stop that its position shows', async () => {
    const { GPSTimeStamp: _t, GPSDateStamp: _d, ...position } = AT_LOADING.IFD3 ?? {};
    const { received } = await examined(
      await picture('jpeg', { IFD2: { DateTimeOriginal: '2026:07:14 05:42:10' }, IFD3: position }),
    );
    expect(received.time).toMatchObject({ basis: 'place-zone', instant: '2026-07-14T12:42:10.000Z' });
  });

  it('on the way has no stop, and that is no fault', async () => {
    const { received } = await examined(await picture('jpeg', ON_THE_WAY));
    expect(received.flags).toEqual([]);
    expect(received.place?.stop).toBeUndefined();
    expect(received.place?.gps?.latitude).toBeCloseTo(35, 9);
  });

  it('far from every stop at a time that is not of the trip says both', async () => {
    const early: Exif = {
      ...ON_THE_WAY,
      IFD2: { DateTimeOriginal: '2026:07:01 05:42:10', OffsetTimeOriginal: '-07:00' },
      IFD3: { ...ON_THE_WAY.IFD3, GPSDateStamp: '2026:07:01' },
    };
    expect(await flagsOf(await picture('jpeg', early))).toEqual(['far-from-stop', 'outside-stop-window']);
  });

  it('said to be of a stop but far from it says so', async () => {
    const { received } = await examined(await picture('jpeg', ON_THE_WAY), { place: { stop: 'load-1' } });
    expect(received.flags.map((f) => f.is)).toEqual(['far-from-stop']);
    expect(received.place?.stop).toBe('load-1');
  });

  it('that is dark, blurred or tiny is flagged', async () => {
    const flat = (background: string) =>
      sharp({ create: { width: 400, height: 400, channels: 3, background } })
        .jpeg()
        .toBuffer();
    expect(await flagsOf(await flat('#050505'))).toContain('dark');
    expect(await flagsOf(await flat('#909090'))).toContain('blurred');
    expect(
      await flagsOf(
        await sharp(await picture('png'))
          .blur(8)
          .jpeg()
          .toBuffer(),
      ),
    ).toContain('blurred');
    expect(await flagsOf(await picture('jpeg', {}, 100))).toContain('tiny');
  });

  it('cut off is kept, flagged and named, with its time', async () => {
    const whole = await picture('jpeg', AT_LOADING);
    const { received, problems } = await examined(whole.subarray(0, whole.length / 2));
    expect(received.flags.map((f) => f.is)).toContain('picture-unreadable');
    expect(received.time).toMatchObject({ basis: 'gps' });
    expect(problems[0]?.code).toBe('unreadable-file');
  });

  it('that is hardly one throws nothing', async () => {
    const whole = await picture('jpeg', AT_LOADING);
    for (const cut of [3, 12, 40, 200, 400])
      expect(await flagsOf(whole.subarray(0, cut))).toContain('picture-unreadable');
    // Bytes of the EXIF block changed, so that offsets and counts point anywhere.
    for (let i = 20; i < 220; i += 7) {
      const hurt = Buffer.from(whole);
      hurt[i] = 0xff;
      expect((await examined(hurt)).received.kind).toBe('photo');
    }
  });
});

/** A little-endian TIFF of tag directories alone, by tag number (TIFF 6.0 §2; Exif 2.32 §4.6). */
function tiffOf(exif: [tag: number, text: string][], gps: [tag: number, value: string | number[]][]): Buffer {
  const out = Buffer.alloc(1024);
  out.write('II*\0', 0, 'latin1');
  out.writeUInt32LE(8, 4);
  let data = 400;
  const entry = (at: number, tag: number, value: string | number[] | { offset: number }): void => {
    out.writeUInt16LE(tag, at);
    if (!Array.isArray(value) && typeof value === 'object') {
      out.writeUInt16LE(4, at + 2);
      out.writeUInt32LE(1, at + 4);
      out.writeUInt32LE(value.offset, at + 8);
      return;
    }
    const bytes = typeof value === 'string' ? Buffer.from(`${value}\0`) : Buffer.alloc(value.length * 8);
    if (Array.isArray(value))
      for (const [i, n] of value.entries()) {
        bytes.writeUInt32LE(n, i * 8);
        bytes.writeUInt32LE(1, i * 8 + 4);
      }
    out.writeUInt16LE(typeof value === 'string' ? 2 : 5, at + 2);
    out.writeUInt32LE(typeof value === 'string' ? bytes.length : value.length, at + 4);
    if (bytes.length <= 4) bytes.copy(out, at + 8);
    else {
      out.writeUInt32LE(data, at + 8);
      bytes.copy(out, data);
      data += bytes.length;
    }
  };
  out.writeUInt16LE(2, 8);
  entry(10, 0x8769, { offset: 100 });
  entry(22, 0x8825, { offset: 250 });
  for (const [start, list] of [
    [100, exif],
    [250, gps],
  ] as const) {
    out.writeUInt16LE(list.length, start);
    for (const [i, [tag, value]] of list.entries()) entry(start + 2 + i * 12, tag, value);
  }
  return out;
}

describe('the tags of the Exif standard, by their numbers', () => {
  it('0x9003, 0x9010, 0x9011, 0x9012, 0x9291, GPS 0x0007 and 0x001D are read as written', async () => {
    const { path } = await put(
      folder,
      'tags.tif',
      tiffOf(
        [
          [0x9003, '2026:07:14 05:42:10'],
          [0x9010, '-06:00'],
          [0x9011, '-07:00'],
          [0x9012, '-05:00'],
          [0x9291, '370'],
        ],
        [
          [0x0007, [12, 42, 8]],
          [0x001d, '2026:07:14'],
        ],
      ),
    );
    expect(await readExif(path, undefined)).toEqual({
      dateTimeOriginal: '2026:07:14 05:42:10',
      offsetTime: '-06:00',
      offsetTimeOriginal: '-07:00',
      offsetTimeDigitized: '-05:00',
      subSecTimeOriginal: '370',
      gpsTime: [12, 42, 8],
      gpsDate: '2026:07:14',
    });
  });
});

describe('EXIF of a HEIC file', () => {
  it('is read from the demonstration photo', async () => {
    const path = 'fixtures/demo/evidence/photos/IMG_0415.HEIC';
    expect(recognise(await readFile(path)).type).toBe('image/heic');
    expect(await readExif(path, (await sharp(path).metadata()).exif)).toMatchObject({
      dateTimeOriginal: '2026:07:14 04:21:06',
      offsetTimeOriginal: '-07:00',
    });
  });
});

describe('distance along the ellipsoid', () => {
  // Points and metres from the documentation of GeographicLib.
  it.each([
    ['JFK to LHR', 40.6, -73.8, 51.6, -0.5, 5551759.4],
    ['Wellington to Salamanca', -41.32, 174.81, 40.96, -5.5, 19959679.267],
  ])('%s', (_, lat1, lon1, lat2, lon2, metres) => {
    expect(
      distanceMetres({ latitude: lat1, longitude: lon1 }, { latitude: lat2, longitude: lon2 }),
    ).toBeCloseTo(metres, 2);
  });
});

describe('variance of the Laplacian', () => {
  const square = (grey: Uint8Array) => laplacianVariance({ grey, width: 5, height: 5 });
  it('is 0 for an even surface and for an even slope, and that of the definition for one dot', () => {
    expect(square(new Uint8Array(25).fill(7))).toBe(0);
    expect(square(Uint8Array.from({ length: 25 }, (_, i) => (i % 5) * 10))).toBe(0);
    const dot = new Uint8Array(25);
    dot[12] = 10;
    // Nine inner pixels: −40 in the middle, 10 at its four neighbours, 0 in the corners: (1600 + 4·100)/9 − 0.
    expect(square(dot)).toBeCloseTo(2000 / 9, 9);
  });
});
