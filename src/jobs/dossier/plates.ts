import type { ReadOriginal } from '../../compose/pictures.js';
import { type PreparedPlates, preparePlates } from '../../compose/plates.js';
import type { EvidenceItem } from '../../model/state.js';
import { fits, QUALITIES } from './size.js';

/** Plates at the best quality that leaves room for originals. */
export async function platesWithin(
  evidence: readonly EvidenceItem[],
  read: ReadOriginal,
  mostBytes: number,
): Promise<PreparedPlates> {
  let plates = await preparePlates(evidence, read, QUALITIES[0]);
  for (const quality of QUALITIES.slice(1)) {
    if (fits(plates.bytes, mostBytes, plates.quality)) break;
    plates = await preparePlates(evidence, read, quality);
  }
  return plates;
}
