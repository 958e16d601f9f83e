import { type Position, position } from '../../../core/model/evidence.js';
import type { PulpReading } from '../../../core/model/results.js';

type Reading = Pick<PulpReading, 'celsius' | 'position'>;

/** Plain average of readings, °C. */
export const meanOf = (readings: readonly Reading[]): number =>
  readings.reduce((sum, { celsius }) => sum + celsius, 0) / readings.length;

/** The change at each position that was read at both ends, mean less mean, K; a position of one end alone has none. */
export function samePlaceChanges(
  loading: readonly Reading[],
  delivery: readonly Reading[],
): { position: Position; kelvin: number }[] {
  return position.options.flatMap((place) => {
    const [before, after] = [loading, delivery].map((all) => all.filter((one) => one.position === place));
    if (before === undefined || after === undefined || before.length * after.length === 0) return [];
    return [{ position: place, kelvin: meanOf(after) - meanOf(before) }];
  });
}
