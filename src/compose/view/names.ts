import type { Delivery } from '../../model/delivery.js';
import type { FactNames } from '../words/facts.js';

/**
 * What a stop is called in tables: its place up to the first comma where that tells the stops apart. The
 * whole place stands on the cover and in the table of stops.
 */
export function shortPlaces(places: readonly string[]): string[] {
  const short = places.map((place) => place.split(',')[0]?.trim() ?? place);
  const clear = short.every(
    (name, i) => name.length > 3 && short.every((other, j) => name !== other || places[i] === places[j]),
  );
  return clear ? short : [...places];
}

/** `lettuce-romaine` as it is said when no better name is known. */
export const commonName = (key: string): string => {
  const words = key.replace(/-/g, ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
};

/** What lines and stops of a delivery are called. */
export function factNames(delivery: Pick<Delivery, 'lines' | 'stops'>): FactNames {
  const lines = new Map(delivery.lines.map((line) => [line.id, line.name ?? commonName(line.goods)]));
  const short = shortPlaces(delivery.stops.map((stop) => stop.place));
  const called = new Map(delivery.stops.map((stop, i) => [stop.id, short[i] ?? stop.place]));
  return { line: (id) => lines.get(id) ?? id, stop: (id) => called.get(id) ?? id };
}
