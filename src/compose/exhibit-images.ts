import type { Sha256 } from '../core/model/evidence.js';
import type { Exhibit, ExhibitImage } from '../core/model/manifest.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { EvidenceItem } from '../core/model/state.js';
import { type DocumentImage, firstPages } from './document-images/first-pages.js';
import {
  FULL_QUALITY,
  type PictureQuality,
  type PreparedPicture,
  type PreparingOptions,
  preparePictures,
  type ReadOriginal,
} from './pictures.js';
import { sha256Hex } from './sha256.js';

/** All exhibit images, by the hash of the original. */
export interface PreparedImages {
  pictures: ReadonlyMap<Sha256, PreparedPicture>;
  documents: ReadonlyMap<Sha256, DocumentImage>;
  /** Total size, bytes. */
  bytes: number;
  quality: PictureQuality;
}

/** Whether an item is shown as a picture: every photo, and documents that came as one. */
export function isShownAsPicture(
  item: EvidenceItem,
): item is Extract<EvidenceItem, { kind: 'photo' | 'document' }> {
  return item.kind === 'photo' || (item.kind === 'document' && item.file.type.startsWith('image/'));
}

/** Prepares the images of exhibits. An unreadable file never stops the others. */
export async function prepareImages(
  evidence: readonly EvidenceItem[],
  readOriginal: ReadOriginal,
  options: PreparingOptions = {},
): Promise<PreparedImages> {
  const { quality = FULL_QUALITY, signal } = options;
  const shown = evidence.filter((item) => item.withheld === undefined);
  // Documents are rendered by a process of their own, beside the threads that scale pictures.
  const [pictures, documents] = await Promise.all([
    preparePictures(
      shown.filter(isShownAsPicture).map((item) => ({
        sha256: item.file.sha256,
        type: item.file.type,
        ...omitUndefined({ blackOut: item.blackOut }),
      })),
      readOriginal,
      options,
    ),
    firstPages(
      shown.flatMap((item) =>
        item.kind === 'document' && !item.file.type.startsWith('image/') && (item.blackOut ?? []).length === 0
          ? [{ sha256: item.file.sha256, type: item.file.type }]
          : [],
      ),
      readOriginal,
      { longest: quality.longest, ...omitUndefined({ signal }) },
    ),
  ]);
  const bytes = [
    ...pictures.values(),
    ...[...documents.values()].flatMap((one) => (one.is === 'pages' ? one.pages : [])),
  ]
    .map((one) => (one.is === 'picture' ? one.bytes.length : 0))
    .reduce((sum, size) => sum + size, 0);
  return { pictures, documents, bytes, quality };
}

/** The picture of each exhibit, by their hashes, for the manifest. */
export function listExhibitImages(
  exhibits: readonly Pick<Exhibit, 'exhibit' | 'file'>[],
  images: PreparedImages,
): ExhibitImage[] {
  return exhibits.flatMap(({ exhibit, file }) => {
    if (file === undefined) return [];
    const picture = images.pictures.get(file.sha256);
    const paper = images.documents.get(file.sha256);
    const shown = picture === undefined ? (paper?.is === 'pages' ? paper.pages : []) : [picture];
    return shown.flatMap((one) =>
      one.is === 'picture'
        ? [{ exhibit, originalSha256: file.sha256, plateSha256: sha256Hex(one.bytes) }]
        : [],
    );
  });
}
