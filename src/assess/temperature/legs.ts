import type { Line } from '../../model/delivery.js';
import type { Band, Custody, Span } from '../../model/results.js';
import { wayBetween } from '../custody.js';
import type { Moments } from '../moments.js';
import type { RecordedDoor } from './causes.js';

/** The way between two neighbouring stops of the bill. */
export interface Leg {
  leg: number;
  from: string;
  to: string;
  custody: Custody;
  /** Lines aboard: on at this stop or before, off at the next or after. */
  lines: string[];
  bands: Band[];
}

/**
 * The legs of a delivery with more than two stops, from the doors closed at each stop to the doors opened at the
 * next. Ends without an event stand in as for custody; a leg between stops without any event is left out, and so is
 * one with nothing aboard.
 */
export function legsOf(
  moments: Moments,
  lines: readonly Line[],
  bands: readonly Band[],
  log: Span | undefined,
): Leg[] {
  const { stops } = moments;
  if (stops.length < 3) return [];
  const place = new Map(stops.map((stop, index) => [stop.id, index]));
  return stops.slice(0, -1).flatMap((stop, index) => {
    const next = stops[index + 1];
    const aboard = lines
      .filter((line) => (place.get(line.from) ?? 0) <= index && (place.get(line.to) ?? 0) > index)
      .map((line) => line.id);
    if (next === undefined || aboard.length === 0) return [];
    const ends = {
      ...(index === 0 && log !== undefined ? { from: log.from } : {}),
      ...(index === stops.length - 2 && log !== undefined ? { to: log.to } : {}),
    };
    const custody = wayBetween(moments, stop.id, next.id, ends);
    if (custody === undefined) return [];
    const held = bands
      .map((band) => ({ ...band, lines: band.lines.filter((line) => aboard.includes(line)) }))
      .filter((band) => band.lines.length > 0);
    return [{ leg: index + 1, from: stop.id, to: next.id, custody, lines: aboard, bands: held }];
  });
}

/** Doors that people recorded as opened, each until the next closing or departure on record. */
export function recordedDoors({ events }: Moments): RecordedDoor[] {
  return events.flatMap((opened, index) => {
    if (opened.event !== 'doors-opened') return [];
    const closed = events
      .slice(index + 1)
      .find((one) => one.event === 'doors-closed' || one.event === 'departed');
    return [
      {
        from: opened.at,
        to: closed?.at ?? opened.at,
        evidence: closed === undefined ? [opened.evidence] : [opened.evidence, closed.evidence],
      },
    ];
  });
}
