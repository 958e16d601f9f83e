import type { Stop } from './delivery.js';
import { meaningsOf, milliseconds, readLocal } from './time.js';

/** Planned time of a stop, milliseconds UTC; a wall time that happened twice is read as the earlier. */
export function plannedTime({ planned, zone }: Stop): number | undefined {
  if (planned === undefined) return undefined;
  return milliseconds(meaningsOf(readLocal(planned, zone))[0]);
}
