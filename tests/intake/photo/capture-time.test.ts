import { describe, expect, it } from 'vitest';
import { zone } from '../../../src/core/model/time.js';
import { captureTime, exifWall, statedTimes } from '../../../src/intake/photo/capture-time.js';
import { editingTraces } from '../../../src/intake/photo/editing.js';
import type { RawExif } from '../../../src/intake/photo/exif.js';

const phoenix = zone.parse('America/Phoenix');
const local: RawExif = { dateTimeOriginal: '2026:07:14 05:42:10' };
const offset: RawExif = { ...local, offsetTimeOriginal: '-07:00' };
const gps = (h: number, m: number, s: number): RawExif => ({ gpsDate: '2026:07:14', gpsTime: [h, m, s] });

describe('capture time, by the best basis there is', () => {
  it.each<[string, RawExif, string | undefined, string, string, number]>([
    [
      'GPS time that agrees',
      { ...offset, ...gps(12, 42, 8) },
      undefined,
      'gps',
      '2026-07-14T12:42:08.000Z',
      2,
    ],
    [
      'GPS time beside a local time in the place',
      { ...local, ...gps(12, 42, 8) },
      'place',
      'gps',
      '2026-07-14T12:42:08.000Z',
      2,
    ],
    ['GPS time alone', gps(12, 42, 8), undefined, 'gps', '2026-07-14T12:42:08.000Z', 30],
    [
      'GPS time beside a local time of unknown zone',
      { ...local, ...gps(12, 41, 50) },
      undefined,
      'gps',
      '2026-07-14T12:41:50.000Z',
      20,
    ],
    [
      'a fix from four minutes before',
      { ...offset, ...gps(12, 38, 0) },
      undefined,
      'offset',
      '2026-07-14T12:42:10.000Z',
      250,
    ],
    [
      'a camera set to another zone',
      { ...local, offsetTimeOriginal: '-08:00', ...gps(12, 42, 8) },
      undefined,
      'gps',
      '2026-07-14T12:42:08.000Z',
      30,
    ],
    ['a slow camera', { ...offset, ...gps(12, 50, 0) }, undefined, 'gps', '2026-07-14T12:50:00.000Z', 30],
    [
      'GPS time without a date',
      { ...offset, gpsTime: [12, 42, 8] },
      undefined,
      'gps',
      '2026-07-14T12:42:08.000Z',
      2,
    ],
    ['local time with offset', offset, undefined, 'offset', '2026-07-14T12:42:10.000Z', 1],
    [
      'local time with offset +05:45',
      { ...local, offsetTimeOriginal: '+05:45' },
      undefined,
      'offset',
      '2026-07-13T23:57:10.000Z',
      1,
    ],
    ['local time in the zone of the place', local, 'place', 'place-zone', '2026-07-14T12:42:10.000Z', 1],
    [
      'sub-seconds (tag 0x9291)',
      { ...offset, subSecTimeOriginal: '370' },
      undefined,
      'offset',
      '2026-07-14T12:42:10.370Z',
      1,
    ],
    [
      'sub-seconds of one digit',
      { ...offset, subSecTimeOriginal: '3 ' },
      undefined,
      'offset',
      '2026-07-14T12:42:10.300Z',
      1,
    ],
  ])('%s', (_, exif, place, basis, instant, uncertaintySeconds) => {
    const { time, flags } = captureTime(exif, place === undefined ? undefined : phoenix);
    expect(time).toMatchObject({ is: 'known', basis, instant, uncertaintySeconds });
    expect(flags).toEqual([]);
  });

  it('is local when no zone is known, never UTC', () => {
    const { time, flags } = captureTime(local, undefined);
    expect(time).toMatchObject({ is: 'local', local: '2026-07-14T05:42:10' });
    expect(flags.map((f) => f.is)).toEqual(['time-zone-unknown']);
  });

  // Exif 2.32: blank or zero means unknown.
  it.each(['    :  :     :  :  ', '0000:00:00 00:00:00', '2026:02:30 01:00:00', '2026:07:14 25:00:00', ''])(
    'is none for "%s"',
    (dateTimeOriginal) => {
      const { time, flags } = captureTime({ dateTimeOriginal }, phoenix);
      expect(time.is).toBe('none');
      expect(flags.map((f) => f.is)).toEqual(['no-capture-time']);
      expect(exifWall(dateTimeOriginal)).toBeUndefined();
    },
  );

  it('of an hour that happened twice reaches over both', () => {
    const { time, flags } = captureTime(
      { dateTimeOriginal: '2026:11:01 01:30:00' },
      zone.parse('America/Chicago'),
    );
    expect(time).toMatchObject({
      is: 'known',
      instant: '2026-11-01T06:30:00.000Z',
      uncertaintySeconds: 3601,
    });
    expect(flags.map((f) => f.is)).toEqual(['time-happened-twice']);
  });
});

describe('what the photo states is kept beside what was chosen', () => {
  it.each<[string, RawExif, object | undefined]>([
    ['nothing', {}, undefined],
    ['a local time', local, { camera: '2026-07-14T05:42:10' }],
    ['with its offset', offset, { camera: '2026-07-14T05:42:10', offsetMinutes: -420 }],
    [
      'an old fix that was not taken',
      { ...offset, ...gps(12, 38, 0) },
      { camera: '2026-07-14T05:42:10', offsetMinutes: -420, gps: '2026-07-14T12:38:00.000Z' },
    ],
    ['satellite time alone', gps(12, 38, 0), { gps: '2026-07-14T12:38:00.000Z' }],
    [
      'the offset of the time of change, where both times are the same',
      { ...local, modifyDate: '2026:07:14 05:42:10', offsetTime: '-07:00' },
      { camera: '2026-07-14T05:42:10', offsetMinutes: -420 },
    ],
    [
      'not the offset of a later change',
      { ...local, modifyDate: '2026:07:15 05:42:10', offsetTime: '-07:00' },
      { camera: '2026-07-14T05:42:10' },
    ],
    [
      'the time of digitising with its own fraction',
      { createDate: '2026:07:14 05:42:10', subSecTimeDigitized: '25', subSecTimeOriginal: '9' },
      { camera: '2026-07-14T05:42:10.250' },
    ],
  ])('%s', (_, exif, stated) => expect(statedTimes(exif)).toEqual(stated));
});

describe('traces of editing', () => {
  it.each<[string, RawExif, number]>([
    ['an editor signed it', { ...local, software: 'GIMP 2.10' }, 1],
    ['changed an hour later', { ...local, modifyDate: '2026:07:14 06:42:10' }, 1],
    ["a phone's system version", { ...local, software: '17.5.1', modifyDate: '2026:07:14 05:42:10' }, 0],
    ['nothing', local, 0],
  ])('%s', (_, exif, count) => expect(editingTraces(exif)).toHaveLength(count));
});
