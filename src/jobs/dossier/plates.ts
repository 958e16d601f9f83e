import type { PictureQuality, ReadOriginal } from '../../compose/pictures.js';
import { isPicture, type PreparedPlates, preparePlates } from '../../compose/plates.js';
import type { EvidenceItem } from '../../model/state.js';
import { fits, QUALITIES } from './size.js';

/** Of so many pictures, evenly spread, the size of all is judged before all are made. */
const SAMPLE = 12;

/** Plates at the best quality that leaves room for originals. */
export async function platesWithin(
  evidence: readonly EvidenceItem[],
  read: ReadOriginal,
  mostBytes: number,
): Promise<PreparedPlates> {
  const likely = await likelyQuality(evidence, read, mostBytes);
  const from = QUALITIES.indexOf(likely);
  let plates = await preparePlates(evidence, read, likely);
  for (const quality of QUALITIES.slice(from + 1)) {
    if (fits(plates.bytes, mostBytes, plates.quality)) break;
    plates = await preparePlates(evidence, read, quality);
  }
  return plates;
}

/** Many pictures are made once, not once for each quality: a sample tells which will do. */
async function likelyQuality(
  evidence: readonly EvidenceItem[],
  read: ReadOriginal,
  mostBytes: number,
): Promise<PictureQuality> {
  const [best, ...coarser] = QUALITIES;
  const pictures = evidence.filter((item) => item.withheld === undefined && isPicture(item));
  if (best === undefined) throw new Error('there is no quality to choose from');
  if (pictures.length <= SAMPLE) return best;
  const step = pictures.length / SAMPLE;
  const sample = Array.from({ length: SAMPLE }, (_, i) => pictures[Math.floor(i * step)]).filter(
    (item) => item !== undefined,
  );
  let chosen = best;
  for (const next of [undefined, ...coarser]) {
    if (next !== undefined) chosen = next;
    const { bytes } = await preparePlates(sample, read, chosen);
    if (fits(bytes * step, mostBytes, chosen)) break;
  }
  return chosen;
}
