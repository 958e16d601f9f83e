import { isShownAsPicture, type PreparedImages, prepareImages } from '../../compose/exhibit-images.js';
import {
  mostBytesOf,
  type PictureQuality,
  type PreparingOptions,
  type ReadOriginal,
} from '../../compose/pictures.js';
import type { EvidenceItem } from '../../core/model/state.js';
import { fits, QUALITIES } from './size.js';

/** Size of the evenly spread sample by which the size of all pictures is estimated. */
const SAMPLE = 12;

export interface PendingImages {
  images: Promise<PreparedImages>;
  /** Settles when the last tenth of the pictures is started, or all are made; rejects when they fail. */
  nearlyMade: Promise<unknown>;
}

/** Starts the exhibit images at the best quality that leaves room for originals. Once aborted they are incomplete. */
export function beginImages(
  evidence: readonly EvidenceItem[],
  read: ReadOriginal,
  mostBytes: number,
  signal: AbortSignal,
): PendingImages {
  let onLastTenth = (): void => undefined;
  const lastTenth = new Promise<void>((resolve) => {
    onLastTenth = resolve;
  });
  const images = imagesWithin(evidence, read, mostBytes, { signal, onLastTenth });
  const nearlyMade = Promise.race([lastTenth, images]);
  // The caller awaits the result later; until then a rejection must not count as unhandled.
  for (const one of [images, nearlyMade]) one.catch(() => undefined);
  return { images, nearlyMade };
}

async function imagesWithin(
  evidence: readonly EvidenceItem[],
  read: ReadOriginal,
  mostBytes: number,
  { signal, onLastTenth }: Required<Pick<PreparingOptions, 'signal' | 'onLastTenth'>>,
): Promise<PreparedImages> {
  const likely = await likelyQuality(evidence, mostBytes, (sample, quality) =>
    prepareImages(sample, read, { quality, signal }),
  );
  let images = await prepareImages(evidence, read, { ...likely, signal, onLastTenth });
  for (const quality of QUALITIES.slice(QUALITIES.indexOf(likely.quality) + 1)) {
    if (fits(images.bytes, mostBytes, images.quality)) break;
    images = await prepareImages(evidence, read, { quality, signal });
  }
  return images;
}

/** Smallest growth of a picture from one quality to the next finer one: it has more than half as many pixels again. */
const LEAST_GROWTH = 1.2;

/** A quality, and the pictures made in it for the estimate. */
interface Likely {
  quality: PictureQuality;
  made: PreparedImages['pictures'];
}

/**
 * Many pictures are made once, not once for each quality. Where their files are not small enough for the best, a sample
 * tells which quality will do, from the coarsest on, which costs least to try.
 */
async function likelyQuality(
  evidence: readonly EvidenceItem[],
  mostBytes: number,
  prepare: (sample: readonly EvidenceItem[], quality: PictureQuality) => Promise<PreparedImages>,
): Promise<Likely> {
  const [best, ...coarser] = QUALITIES;
  const pictures = evidence.filter(isShownAsPicture).filter((item) => item.withheld === undefined);
  if (best === undefined) throw new Error('there is no quality to choose from');
  const enough = fits(
    mostBytesOf(
      pictures.map(({ file }) => file),
      best,
    ),
    mostBytes,
    best,
  );
  if (enough || pictures.length <= SAMPLE) return { quality: best, made: new Map() };
  const step = pictures.length / SAMPLE;
  const sample = Array.from({ length: SAMPLE }, (_, i) => pictures[Math.floor(i * step)]).filter(
    (item) => item !== undefined,
  );
  let chosen: Likely = { quality: coarser.at(-1) ?? best, made: new Map() };
  for (const quality of [...QUALITIES].reverse()) {
    const tried = await prepare(sample, quality);
    const bytes = tried.bytes * step;
    if (fits(bytes, mostBytes, quality)) chosen = { quality, made: tried.pictures };
    if (!fits(bytes * LEAST_GROWTH, mostBytes, best)) break;
  }
  return chosen;
}
