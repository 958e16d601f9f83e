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

/** What a step to the next finer quality adds at the least: it has more than half as many pixels again. */
const LEAST_GROWTH = 1.2;

/**
 * Many pictures are made once, not once for each quality: a sample tells which will do, from the coarsest on, which
 * costs least to try.
 */
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
  let chosen = coarser.at(-1) ?? best;
  for (const next of [...QUALITIES].reverse()) {
    const bytes = (await preparePlates(sample, read, next)).bytes * step;
    if (fits(bytes, mostBytes, next)) chosen = next;
    if (!fits(bytes * LEAST_GROWTH, mostBytes, best)) break;
  }
  return chosen;
}
