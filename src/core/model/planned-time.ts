import type { Stop } from './delivery.js';
import { milliseconds, readLocal } from './time.js';

/** Planned time of a stop, milliseconds UTC; a wall time that happened twice is read as the earlier. */
export function plannedTime({ planned, zone }: Stop): number | undefined {
  if (planned === undefined) return undefined;
  const reading = readLocal(planned, zone);
  switch (reading.is) {
    case 'one':
      return milliseconds(reading.instant);
    case 'twice':
      return milliseconds(reading.earlier);
    case 'never':
      return milliseconds(reading.shifted);
  }
}
