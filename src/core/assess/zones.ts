import type { Stop } from '../model/delivery.js';
import type { Zone } from '../model/time.js';

/** The zone of a stop; without a stop, of the first stop. */
export function zoneAt(stops: readonly Stop[], stop?: string): Zone {
  return (stops.find((one) => one.id === stop) ?? stops[0])?.zone ?? ('UTC' as Zone);
}
