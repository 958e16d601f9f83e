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
