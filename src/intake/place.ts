import geodesic from 'geographiclib-geodesic';
import type { Delivery, Stop } from '../core/model/delivery.js';
import { plannedAt, STOP_WINDOW_HOURS, stopWindowFlags } from '../core/model/delivery-flags.js';
import type { Flag } from '../core/model/evidence.js';
import { type EventTime, knownMilliseconds, type Zone } from '../core/model/time.js';

/** Radius of a stop in metres: dock, yard and the queue before the gate. */
export const AT_STOP_METRES = 5_000;
export interface Coordinates {
  latitude: number;
  longitude: number;
}

/** Metres between two points along the WGS 84 ellipsoid (Karney 2013, by GeographicLib). */
export function distanceMetres(a: Coordinates, b: Coordinates): number {
  const line = geodesic.Geodesic.WGS84.Inverse(a.latitude, a.longitude, b.latitude, b.longitude);
  return line.s12 ?? Number.NaN;
}

/** The stop with the nearest coordinates, and its distance in metres. */
export function nearestStop(
  delivery: Delivery,
  gps: Coordinates,
): { stop: Stop; metres: number } | undefined {
  let nearest: { stop: Stop; metres: number } | undefined;
  for (const stop of delivery.stops) {
    if (stop.at === undefined) continue;
    const [latitude, longitude] = stop.at;
    const metres = distanceMetres(gps, { latitude, longitude });
    if (nearest === undefined || metres < nearest.metres) nearest = { stop, metres };
  }
  return nearest;
}

/** The only stop whose planned time is within the window of an instant (milliseconds UTC). */
export function stopByTime(delivery: Delivery, at: number): Stop | undefined {
  const near = delivery.stops.filter((stop) => {
    const planned = plannedAt(stop);
    return planned !== undefined && Math.abs(at - planned) <= (STOP_WINDOW_HOURS / 2) * 3_600_000;
  });
  return near.length === 1 ? near[0] : undefined;
}

/** From a day before the first planned time to a day after the last, milliseconds UTC; undefined when nothing is planned. */
export function tripSpan(delivery: Delivery): { from: number; to: number } | undefined {
  const planned = delivery.stops.flatMap((stop) => plannedAt(stop) ?? []);
  if (planned.length === 0) return undefined;
  const spare = STOP_WINDOW_HOURS * 3_600_000;
  return { from: Math.min(...planned) - spare, to: Math.max(...planned) + spare };
}

/** Flags for a position far from the stop, and a time far from its planned time. */
export function stopFlags(stop: Stop, gps: Coordinates | undefined, time: EventTime): Flag[] {
  const flags: Flag[] = [];
  if (gps !== undefined && stop.at !== undefined) {
    const [latitude, longitude] = stop.at;
    const metres = distanceMetres(gps, { latitude, longitude });
    if (metres > AT_STOP_METRES)
      flags.push({
        is: 'far-from-stop',
        detail: `${(metres / 1000).toFixed(1)} km from ${stop.place} (${stop.id})`,
      });
  }
  flags.push(...stopWindowFlags(stop, knownMilliseconds(time)));
  return flags;
}

/** The common zone of all stops; undefined where they differ. */
export function onlyZone(delivery: Delivery): Zone | undefined {
  const [zone, other] = new Set(delivery.stops.map((stop) => stop.zone));
  return other === undefined ? zone : undefined;
}
