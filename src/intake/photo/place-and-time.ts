import type { Delivery, Stop } from '../../core/model/delivery.js';
import type { Flag } from '../../core/model/evidence.js';
import { knownMilliseconds, milliseconds, type Zone } from '../../core/model/time.js';
import { zoneRules } from '../../core/model/zone-rules.js';
import {
  AT_STOP_METRES,
  type Coordinates,
  nearestStop,
  onlyZone,
  stopByTime,
  stopFlags,
  tripSpan,
} from '../place.js';
import type { TimedWithFlags } from '../time/event-time.js';
import { captureTime, statedTimes } from './capture-time.js';
import type { RawExif } from './exif.js';

export interface PlacedPhoto {
  /** The photo's stop; undefined in transit and where nothing shows it. */
  stop: Stop | undefined;
  timed: TimedWithFlags;
  /** Flags for what does not fit. */
  flags: Flag[];
}

/**
 * The stop of a photo, and its time in the zone that follows: by what a person stated, by position, or by time. A
 * position far from every stop is a photo in transit, which has no stop; that is flagged only when its time is
 * outside the trip.
 */
export function placeAndTime(
  exif: RawExif,
  gps: Coordinates | undefined,
  delivery: Delivery,
  said: string | undefined,
): PlacedPhoto {
  const told = delivery.stops.find((s) => s.id === said);
  const nearest = gps === undefined ? undefined : nearestStop(delivery, gps);
  const here = told ?? (nearest !== undefined && nearest.metres <= AT_STOP_METRES ? nearest.stop : undefined);
  if (here !== undefined) {
    const timed = captureTime(exif, here.zone);
    return { stop: here, timed, flags: stopFlags(here, gps, timed.time) };
  }
  if (nearest !== undefined) return onTheWay(exif, gps, delivery, nearest.stop);
  return byTime(exif, delivery);
}

/**
 * A time with an offset is shown in the zone of a stop that has this offset then, else with the offset. Without one
 * the nearest stop's zone is taken; satellite time stays, but a local time can be off by as much as the zones of
 * the stops differ, which its uncertainty covers.
 */
function onTheWay(
  exif: RawExif,
  gps: Coordinates | undefined,
  delivery: Delivery,
  nearest: Stop,
): PlacedPhoto {
  const offset = statedTimes(exif)?.offsetMinutes;
  const timed =
    offset === undefined
      ? inNearestZone(exif, delivery, nearest)
      : captureTime(exif, onlyZone(delivery), zoneWithOffset(exif, delivery, offset));
  const at = knownMilliseconds(timed.time);
  const trip = tripSpan(delivery);
  if (at !== undefined && (trip === undefined || (at >= trip.from && at <= trip.to)))
    return { stop: undefined, timed, flags: [] };
  return { stop: undefined, timed, flags: stopFlags(nearest, gps, timed.time) };
}

function inNearestZone(exif: RawExif, delivery: Delivery, nearest: Stop): TimedWithFlags {
  const timed = captureTime(exif, nearest.zone);
  const { time } = timed;
  if (time.is !== 'known' || time.basis !== 'place-zone' || onlyZone(delivery) !== undefined) return timed;
  const spread = delivery.stops.map((stop) => {
    const at = knownMilliseconds(captureTime(exif, stop.zone).time);
    return at === undefined ? 0 : Math.abs(at - milliseconds(time.instant)) / 1000;
  });
  const detail = `read in the zone of ${nearest.id}, the nearest stop; the photo states no zone and was taken on the way`;
  return {
    time: { ...time, uncertaintySeconds: time.uncertaintySeconds + Math.max(...spread) },
    flags: [...timed.flags, { is: 'time-zone-unknown', detail }],
  };
}

/** The zone of a stop in which the stated offset applies at the photo's time. */
function zoneWithOffset(exif: RawExif, delivery: Delivery, offset: number): Zone | undefined {
  const at = knownMilliseconds(captureTime(exif, undefined).time);
  if (at === undefined) return undefined;
  return delivery.stops.find((stop) => zoneRules(stop.zone).offset(at) === offset)?.zone;
}

/** Without a position: the stop with the nearest planned time. */
function byTime(exif: RawExif, delivery: Delivery): PlacedPhoto {
  const offset = statedTimes(exif)?.offsetMinutes;
  const shown = offset === undefined ? undefined : zoneWithOffset(exif, delivery, offset);
  const only = onlyZone(delivery);
  const timed = captureTime(exif, only, only ?? shown);
  const at = knownMilliseconds(timed.time);
  if (at !== undefined) {
    const stop = stopByTime(delivery, at);
    if (stop === undefined) return { stop, timed, flags: [] };
    const here = captureTime(exif, stop.zone);
    return { stop, timed: here, flags: stopFlags(stop, undefined, here.time) };
  }
  // A local time without zone: the stop with the nearest planned time, read in that stop's own zone.
  const fitting = delivery.stops.flatMap((stop) => {
    const own = captureTime(exif, stop.zone);
    const moment = knownMilliseconds(own.time);
    return moment !== undefined && stopByTime(delivery, moment) === stop ? [{ stop, timed: own }] : [];
  });
  const [one] = fitting;
  if (one === undefined || fitting.length > 1) return { stop: undefined, timed, flags: [] };
  const detail = `read in the zone of ${one.stop.id}, near whose planned time it falls; the photo itself states no zone`;
  return { ...one, flags: [{ is: 'time-zone-unknown', detail }] };
}
