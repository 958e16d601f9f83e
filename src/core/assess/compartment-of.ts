import type { Delivery } from '../model/delivery.js';
import type { EvidenceItem } from '../model/state.js';

/** The compartment that evidence is of: the one that it names, else that of its line. */
export function compartmentOf(
  { place, line }: Pick<EvidenceItem, 'place' | 'line'>,
  { lines }: Pick<Delivery, 'lines'>,
): string | undefined {
  return place?.compartment ?? lines.find(({ id }) => id === line)?.compartment;
}
