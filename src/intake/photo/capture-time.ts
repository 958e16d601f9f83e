import type { EvidenceOf } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { knownMilliseconds, toInstant, type Zone, zone as zoneSchema } from '../../core/model/time.js';
import {
  type TimedWithFlags,
  TO_THE_SECOND,
  timeInZone,
  timeWithOffset,
  zoneOfOffset,
} from '../time/event-time.js';
import { readOffset, toLocalTime } from '../time/wall-time.js';
import type { RawExif } from './exif.js';

/** Seconds within which two clocks agree. */
const AGREE = 10;
/** Possible age of a satellite fix when nothing shows how old it is. */
const FIX_AGE = 30;
const QUARTER_HOUR = 900;

/**
 * Time of capture, by the best basis that the photo offers.
 * Satellite time (GPSDateStamp, GPSTimeStamp) is UTC, but it is the time of the last fix, not of the shutter.
 * - The camera's own time (with its offset, or in the zone of the place) agrees within 10 s: basis `gps`, uncertain
 * by the difference.
 * - The fix is older than the camera's time: it was probably kept from before, so the camera's time is taken with
 * the difference as its uncertainty. Only when the difference is whole quarters of an hour (to 10 s) is the camera
 * set to another zone, and the fix is taken.
 * - The fix is later than the camera's time: the camera is slow, since no fix comes from the future; basis `gps`.
 * - The camera has a local time and no zone is known: basis `gps`; the part that no zone explains is the
 * uncertainty. Without satellite time: local time with its offset, then in the zone of the place, then local of
 * unknown zone.
 * @param placeZone the zone of a local time without offset
 * @param shownIn the zone that a time known without it is shown in
 */
export function captureTime(exif: RawExif, placeZone: Zone | undefined, shownIn = placeZone): TimedWithFlags {
  const stated = statedTime(exif);
  const camera = stated === undefined ? undefined : cameraTime(stated, placeZone, shownIn);
  const cameraAt = camera === undefined ? undefined : knownMilliseconds(camera.time);
  const gpsAt = gpsTime(exif, cameraAt);
  if (gpsAt !== undefined) {
    const byGps = (seconds: number): TimedWithFlags => ({
      time: {
        is: 'known',
        instant: toInstant(gpsAt),
        zone:
          shownIn ?? (stated?.offset === undefined ? zoneSchema.parse('UTC') : zoneOfOffset(stated.offset)),
        basis: 'gps',
        uncertaintySeconds: Math.max(TO_THE_SECOND, Math.ceil(seconds)),
        ...omitUndefined({ stated: stated?.text }),
      },
      flags: [],
    });
    if (stated === undefined) return byGps(FIX_AGE);
    if (camera === undefined || cameraAt === undefined) return byGps(unexplained(stated.wall - gpsAt));
    const late = (cameraAt - gpsAt) / 1000;
    if (Math.abs(late) <= AGREE) return byGps(Math.abs(late));
    if (late < 0 || otherZone(late)) return byGps(FIX_AGE);
    return late <= camera.uncertainty ? camera : widened(camera, late);
  }
  if (camera !== undefined) return camera;
  if (stated === undefined) {
    const why = 'the photo does not say when it was taken';
    return { time: { is: 'none', why }, flags: [{ is: 'no-capture-time', detail: why }] };
  }
  const why = 'the photo states a local time without zone, and its place is not known';
  return {
    time: { is: 'local', local: toLocalTime(stated.wall), why },
    flags: [{ is: 'time-zone-unknown', detail: why }],
  };
}

/** The times that the file states, before one is chosen; undefined when it states none. */
export function statedTimes(exif: RawExif): EvidenceOf<'photo'>['statedTimes'] {
  const stated = statedTime(exif);
  const zoned = stated?.offset === undefined ? stated?.wall : stated.wall - stated.offset * 60_000;
  const gps = gpsTime(exif, zoned);
  if (stated === undefined && gps === undefined) return undefined;
  return {
    ...omitUndefined({
      camera: stated && toLocalTime(stated.wall),
      offsetMinutes: stated?.offset,
      gps: gps === undefined ? undefined : toInstant(gps),
    }),
  };
}

interface Stated {
  wall: number;
  offset?: number;
  text: string;
}

/** Original time, or the time of digitising where only that is present: for a camera they are equal. */
function statedTime(exif: RawExif): Stated | undefined {
  const original = exifWall(exif.dateTimeOriginal);
  const wall = original ?? exifWall(exif.createDate);
  if (wall === undefined) return undefined;
  const [offset, fractionDigits] =
    original === undefined
      ? [exif.offsetTimeDigitized, exif.subSecTimeDigitized]
      : [exif.offsetTimeOriginal ?? offsetOfChange(exif), exif.subSecTimeOriginal];
  const minutes = offset === undefined ? undefined : readOffset(offset);
  const fraction = Number(`0.${/^\d+/.exec(fractionDigits ?? '')?.[0] ?? '0'}`);
  const whole = wall + Math.floor(fraction * 1000);
  return {
    wall: whole,
    text: `${toLocalTime(whole)}${minutes === undefined ? '' : offset}`,
    ...omitUndefined({ offset: minutes }),
  };
}

/** OffsetTime (0x9010) belongs to the time of change; it applies to the capture where both times are equal. */
function offsetOfChange(exif: RawExif): string | undefined {
  return exif.modifyDate === exif.dateTimeOriginal ? exif.offsetTime : undefined;
}

/** `2026:07:14 05:42:10`; blanks and zeros mean unknown (Exif 2.32, tag 0x9003). */
export function exifWall(text: string | undefined): number | undefined {
  const match = /^(\d{4}):(\d{2}):(\d{2})[ T](\d{2}):(\d{2}):(\d{2})/.exec(text ?? '');
  if (match === null) return undefined;
  const [y = 0, mo = 0, d = 0, h = 0, mi = 0, s = 0] = match.slice(1).map(Number);
  const at = Date.UTC(y, mo - 1, d, h, mi, s);
  const date = new Date(at);
  const real =
    y >= 1970 && date.getUTCMonth() === mo - 1 && date.getUTCDate() === d && h < 24 && mi < 60 && s < 60;
  return real ? at : undefined;
}

function cameraTime(
  stated: Stated,
  placeZone: Zone | undefined,
  shownIn: Zone | undefined,
): (TimedWithFlags & { uncertainty: number }) | undefined {
  if (stated.offset !== undefined) {
    const time = timeWithOffset(
      { wall: stated.wall, offset: stated.offset },
      shownIn,
      TO_THE_SECOND,
      stated.text,
    );
    return { time, flags: [], uncertainty: TO_THE_SECOND };
  }
  if (placeZone === undefined) return undefined;
  const placed = timeInZone(stated.wall, placeZone, 'place-zone', TO_THE_SECOND, stated.text);
  return { ...placed, uncertainty: placed.time.is === 'known' ? placed.time.uncertaintySeconds : 0 };
}

/**
 * Milliseconds of the satellite fix. Without a date, on the day nearest to the camera's time; undefined without
 * both.
 */
function gpsTime(exif: RawExif, cameraAt: number | undefined): number | undefined {
  if (exif.gpsTime === undefined) return undefined;
  const [h, m, s] = exif.gpsTime;
  if (!(h >= 0 && h < 24 && m >= 0 && m < 60 && s >= 0 && s < 61)) return undefined;
  const ofDay = Math.round(((h * 60 + m) * 60 + s) * 1000);
  const date = exif.gpsDate?.replaceAll(/[-/.]/g, ':');
  const day = exifWall(date === undefined ? undefined : `${date} 00:00:00`);
  if (day !== undefined) return day + ofDay;
  if (cameraAt === undefined) return undefined;
  const DAY = 86_400_000;
  const sameDay = Math.floor(cameraAt / DAY) * DAY + ofDay;
  return [sameDay - DAY, sameDay, sameDay + DAY].reduce((best, at) =>
    Math.abs(at - cameraAt) < Math.abs(best - cameraAt) ? at : best,
  );
}

function otherZone(seconds: number): boolean {
  const rest = unexplained(seconds * 1000);
  return seconds > QUARTER_HOUR / 2 && seconds <= 14 * 3600 + AGREE && rest <= AGREE;
}

/**
 * Distance of a difference (ms) from whole quarters of an hour, in seconds: the part that no zone's offset
 * explains.
 */
function unexplained(difference: number): number {
  const seconds = difference / 1000;
  return Math.abs(seconds - Math.round(seconds / QUARTER_HOUR) * QUARTER_HOUR);
}

function widened(camera: TimedWithFlags, seconds: number): TimedWithFlags {
  if (camera.time.is !== 'known') return camera;
  return { flags: camera.flags, time: { ...camera.time, uncertaintySeconds: Math.ceil(seconds) } };
}
