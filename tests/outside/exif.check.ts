import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import decodeHeic from 'heic-decode';
import sharp from 'sharp';
import { afterAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { zone } from '../../src/core/model/time.js';
import type { RawExif } from '../../src/intake/photo/exif.js';
import { examinePicture } from '../../src/intake/photo/picture.js';
import { recognise } from '../../src/intake/recognise.js';
import { timeInZone } from '../../src/intake/time/event-time.js';
import { makeTiff, type TiffFacts } from '../intake/photo/make-tiff.js';
import { ask, checkWith, exiftool, heifDec, scratch } from './programs.js';

const disk = scratch();
afterAll(disk.end);

const FOLDERS = ['fixtures/photos', 'fixtures/demo/evidence/photos', 'fixtures/bad'];
const PICTURE = /\.(?:jpe?g|png|webp|tiff?|heic)$/i;
const pictures = FOLDERS.flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => PICTURE.test(name))
    .map((name) => join(folder, name)),
);
/** Exif that readers mend in different ways, or a container that is cut: what we read must be true, but may be less. */
const BROKEN =
  /signed\.heic$|(?:offset-outside|directory-loop|huge-count|huge-directory|box-|cut\.|truncated)/;

const told = z.object({
  DateTimeOriginal: z.string().optional(),
  OffsetTimeOriginal: z.string().optional(),
  SubSecTimeOriginal: z.union([z.string(), z.number()]).optional(),
  CreateDate: z.string().optional(),
  OffsetTimeDigitized: z.string().optional(),
  SubSecTimeDigitized: z.union([z.string(), z.number()]).optional(),
  ModifyDate: z.string().optional(),
  OffsetTime: z.string().optional(),
  GPSDateStamp: z.string().optional(),
  GPSTimeStamp: z.string().optional(),
  GPSLatitude: z.number().optional(),
  GPSLatitudeRef: z.string().optional(),
  GPSLongitude: z.number().optional(),
  GPSLongitudeRef: z.string().optional(),
  Make: z.string().optional(),
  Model: z.string().optional(),
  SerialNumber: z.union([z.string(), z.number()]).optional(),
  Software: z.string().optional(),
  Orientation: z.number().optional(),
});

/** The fields that are used, as ExifTool reads them from the file's Exif alone, in the shape of ours. */
function byExifTool(path: string): RawExif {
  const names = Object.keys(told.shape).map((name) => `-EXIF:${name}`);
  const { out } = ask(exiftool, '-j', '-n', '-q', '-q', '-api', 'Compact=0', ...names, path);
  const [tags] = z.array(told).parse(JSON.parse(out.slice(out.indexOf('['), out.lastIndexOf(']') + 1)));
  if (tags === undefined) return {};
  const text = (value: string | number | undefined) => {
    const own = value === undefined ? '' : String(value).trim();
    return own === '' ? undefined : own;
  };
  const clock = text(tags.GPSTimeStamp)?.split(':').map(Number);
  const [h = Number.NaN, m = Number.NaN, s = Number.NaN] = clock ?? [];
  const signed = (degrees: number | undefined, ref: string | undefined, minus: string) =>
    degrees === undefined || ref === undefined ? undefined : ref === minus ? -degrees : degrees;
  const latitude = signed(tags.GPSLatitude, tags.GPSLatitudeRef, 'S');
  const longitude = signed(tags.GPSLongitude, tags.GPSLongitudeRef, 'W');
  const all = {
    dateTimeOriginal: text(tags.DateTimeOriginal),
    offsetTimeOriginal: text(tags.OffsetTimeOriginal),
    subSecTimeOriginal: text(tags.SubSecTimeOriginal),
    createDate: text(tags.CreateDate),
    offsetTimeDigitized: text(tags.OffsetTimeDigitized),
    subSecTimeDigitized: text(tags.SubSecTimeDigitized),
    modifyDate: text(tags.ModifyDate),
    offsetTime: text(tags.OffsetTime),
    gpsDate: text(tags.GPSDateStamp),
    gpsTime: clock === undefined ? undefined : ([h, m, s] as const),
    ...(latitude === undefined || longitude === undefined ? {} : { latitude, longitude }),
    make: text(tags.Make),
    model: text(tags.Model),
    serial: text(tags.SerialNumber),
    software: text(tags.Software),
    orientation: tags.Orientation,
  };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
}

/** Degrees to a ten-millionth, a centimetre: beyond that the two print differently. */
const rounded = (exif: RawExif): RawExif => ({
  ...exif,
  ...omitUndefined({
    latitude: exif.latitude === undefined ? undefined : Number(exif.latitude.toFixed(7)),
    longitude: exif.longitude === undefined ? undefined : Number(exif.longitude.toFixed(7)),
  }),
});

const byUs = async (path: string): Promise<RawExif> =>
  rounded((await examinePicture(path, recognise(readFileSync(path)).type)).exif);

/** Less common forms, made here: tags far behind, in 64 bits, behind pixels, and text without an end. */
async function oddPictures(): Promise<string[]> {
  const tags = {
    main: [
      [0x010f, 'Invented'],
      [0x0110, 'M-1\0\0\0'],
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
  } satisfies Partial<TiffFacts>;
  const pixels = Buffer.alloc(16 * 16 * 5, 120);
  const tiff = (big: boolean, samples: number) => {
    const made = makeTiff({
      width: 16,
      height: 16,
      samples,
      pixels: pixels.subarray(0, 256 * samples),
      big,
      ...tags,
    });
    return Buffer.concat([made.head, made.tail]);
  };
  const png = await sharp(pixels.subarray(0, 768), { raw: { width: 16, height: 16, channels: 3 } })
    .png()
    .withExif({ IFD0: { Make: 'Invented' }, IFD2: { DateTimeOriginal: '2026:07:14 05:42:10' } })
    .toBuffer();
  const at = png.indexOf('eXIf') - 4;
  const end = at + png.readUInt32BE(at) + 12;
  return [
    disk.put('plain.tif', tiff(false, 3)),
    disk.put('extra.tif', tiff(false, 5)),
    disk.put('big.tif', tiff(true, 3)),
    disk.put(
      'late.png',
      Buffer.concat([png.subarray(0, at), png.subarray(end, -12), png.subarray(at, end), png.subarray(-12)]),
    ),
  ];
}

describe('every field that is used of a photo', () => {
  checkWith(exiftool, 'of less common forms: the same', async () => {
    for (const path of await oddPictures()) {
      const [ours, theirs] = [await byUs(path), rounded(byExifTool(path))];
      expect({ path, ...ours }).toMatchObject({ path, ...theirs });
      // It reads no position from a BigTIFF.
      const { latitude, longitude, ...others } = ours;
      expect({ path, ...(path.endsWith('big.tif') ? others : ours) }).toEqual({ path, ...theirs });
    }
  });

  test('there are photos to ask about', () => expect(pictures.length).toBeGreaterThan(60));

  for (const path of pictures.filter((one) => !BROKEN.test(one)))
    checkWith(exiftool, `${path}: the same`, async () => {
      expect(await byUs(path)).toEqual(rounded(byExifTool(path)));
    });

  for (const path of pictures.filter((one) => BROKEN.test(one)))
    checkWith(exiftool, `${path}: nothing that it does not read too`, async () => {
      // It gives up at a box whose length is wrong; the Exif behind it is that of the whole file.
      // The library that signed the other HEIC left the places of its parts as they were before.
      const whole = /box-|signed\.heic/.test(path) ? 'fixtures/photos/phone.heic' : path;
      expect(rounded(byExifTool(whole))).toMatchObject(await byUs(path));
    });
});

describe('HEIC pixels', () => {
  // Both use libheif, ours compiled to WebAssembly and without the other's choice of colour conversion.
  for (const path of pictures.filter((one) => /\.heic$/i.test(one) && !BROKEN.test(one)))
    checkWith(heifDec, `${path}: the same to within a few levels`, async () => {
      const file = join(disk.folder, 'decoded.png');
      expect(ask(heifDec, path, file).status).toBe(0);
      const { data: theirs, info } = await sharp(file)
        .removeAlpha()
        .raw()
        .toBuffer({ resolveWithObject: true });
      const ours = await decodeHeic({ buffer: readFileSync(path) });
      expect([ours.width, ours.height]).toEqual([info.width, info.height]);
      let sum = 0;
      let most = 0;
      for (let i = 0; i < info.width * info.height; i++)
        for (let c = 0; c < 3; c++) {
          const off = Math.abs((ours.data[i * 4 + c] ?? 0) - (theirs[i * 3 + c] ?? 0));
          sum += off;
          most = Math.max(most, off);
        }
      expect(sum / (info.width * info.height * 3)).toBeLessThan(1);
      expect(most).toBeLessThan(24);
    });
});

// IANA time zone database, rules read there and dates worked by hand.
describe('zones of the IANA database', () => {
  const HOUR = 3600;
  test.each<[string, string, string, string, number]>([
    // Kathmandu: +05:45 since 1986; Chatham: +12:45, in summer +13:45; Eucla +08:45.
    ['Asia/Kathmandu', '2026-07-14T12:00:00', 'one', '2026-07-14T06:15:00.000Z', 1],
    ['Pacific/Chatham', '2026-07-14T12:00:00', 'one', '2026-07-13T23:15:00.000Z', 1],
    ['Pacific/Chatham', '2026-01-14T12:00:00', 'one', '2026-01-13T22:15:00.000Z', 1],
    ['Australia/Eucla', '2026-01-14T12:00:00', 'one', '2026-01-14T03:15:00.000Z', 1],
    // St. John's: −03:30, in summer −02:30.
    ['America/St_Johns', '2026-07-14T12:00:00', 'one', '2026-07-14T14:30:00.000Z', 1],
    // Phoenix never changes; the Navajo Nation (Denver's rules) does.
    ['America/Phoenix', '2026-03-08T02:30:00', 'one', '2026-03-08T09:30:00.000Z', 1],
    ['America/Denver', '2026-03-08T02:30:00', 'time-never-happened', '2026-03-08T09:30:00.000Z', 1 + HOUR],
    // Lord Howe: half an hour, back on April 5, 2026 at 02:00, on again on October 4 at 02:00.
    [
      'Australia/Lord_Howe',
      '2026-04-05T01:45:00',
      'time-happened-twice',
      '2026-04-04T14:45:00.000Z',
      1 + HOUR / 2,
    ],
    [
      'Australia/Lord_Howe',
      '2026-10-04T02:15:00',
      'time-never-happened',
      '2026-10-03T15:45:00.000Z',
      1 + HOUR / 2,
    ],
    // Santiago: back at 24:00 on April 4, 2026, on at 24:00 on September 5.
    ['America/Santiago', '2026-04-04T23:30:00', 'time-happened-twice', '2026-04-05T02:30:00.000Z', 1 + HOUR],
    ['America/Santiago', '2026-09-06T00:30:00', 'time-never-happened', '2026-09-06T04:30:00.000Z', 1 + HOUR],
    // Mexico City has had no summer time since October 2022.
    ['America/Mexico_City', '2026-07-14T12:00:00', 'one', '2026-07-14T18:00:00.000Z', 1],
  ])('%s %s: %s', (name, local, is, instant, uncertaintySeconds) => {
    const { time, flags } = timeInZone(Date.parse(`${local}Z`), zone.parse(name), 'place-zone', 1);
    expect(time).toMatchObject({ instant, uncertaintySeconds });
    expect(flags.map((flag) => flag.is)).toEqual(is === 'one' ? [] : [is]);
  });

  test.each(['CST', 'EST', 'MST', 'CET', 'GMT', 'PST8PDT', 'Japan', 'America/Phenix', '', '+02:00'])(
    '"%s" is refused',
    (name) => expect(zone.safeParse(name).success).toBe(false),
  );
  test.each(['UTC', 'Etc/GMT+6', 'America/Argentina/Buenos_Aires', 'Europe/Berlin'])('%s is taken', (name) =>
    expect(zone.safeParse(name).success).toBe(true),
  );
});
