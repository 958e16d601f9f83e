import type { Sha256 } from '../../model/evidence.js';
import type { ExhibitImage } from '../../model/manifest.js';
import type { DossierContents } from '../check-attachments.js';
import type { CheckResults } from '../check-results.js';
import type { PagePicture, PicturePlace } from '../pdf/pictures.js';

/** Points: a quarter of an inch. A picture that is smaller shows nothing. */
const LEAST_SIDE = 18;
/** Points: what a letterhead takes on the first page, 20 mm. */
const HIGHEST_LETTERHEAD = 57;

/**
 * The pictures of the file against the list of the manifest: each listed one is of its exhibit's original and is printed
 * whole, as it is coded; each printed one is listed, but for a letterhead. That a picture was made from its original is
 * the signer's word until the two are compared.
 */
export function checkExhibitImages({ manifest, pictures }: DossierContents, results: CheckResults): void {
  if (pictures === undefined) return;
  const { plates } = manifest;
  if (plates === undefined) {
    results.fail('plates.listed', 'the manifest has no list of printed pictures');
    return;
  }
  const originals = new Map(manifest.exhibits.map(({ exhibit, file }) => [exhibit, file?.sha256]));
  const withheld = new Set(manifest.leftOut.map(({ sha256 }) => sha256));
  // A copy shows pictures of evidence whose entry it gives as a hash alone.
  const isOfExhibit = ({ exhibit, originalSha256 }: ExhibitImage) =>
    originals.has(exhibit)
      ? originals.get(exhibit) === originalSha256
      : manifest.record.leftOut !== undefined && withheld.has(originalSha256);
  const listed = new Map<Sha256, number>();
  for (const { exhibit, plateSha256 } of plates) listed.set(plateSha256, exhibit);
  const wrong = [
    ...plates.flatMap((plate) => wrongPlate(plate, isOfExhibit(plate), pictures)),
    ...pictures.flatMap((one) => wrongPicture(one, listed.get(one.sha256))),
  ];
  const letterheads = pictures.filter(({ sha256 }) => !listed.has(sha256)).length;
  results.failIf(
    'plates.listed',
    wrong,
    `${plates.length} pictures are printed as listed${letterheads === 0 ? '' : `, beside the letterhead of page 1`}; that each was made from its original is the signer's word`,
  );
}

function wrongPlate(
  { exhibit, plateSha256 }: ExhibitImage,
  isOfExhibit: boolean,
  pictures: readonly PagePicture[],
): string[] {
  if (!isOfExhibit) return [`the picture of exhibit ${exhibit} is said to be made from another original`];
  return pictures.some(({ sha256 }) => sha256 === plateSha256)
    ? []
    : [`the picture of exhibit ${exhibit} is not in the pages as listed`];
}

function wrongPicture({ altered, places }: PagePicture, exhibit: number | undefined): string[] {
  const name = exhibit === undefined ? 'a picture of no exhibit' : `the picture of exhibit ${exhibit}`;
  if (altered.length > 0) return [`${name} is shown otherwise than it is coded (${altered.join(', ')})`];
  const [first] = places;
  if (first === undefined) return [`${name} lies in the file and is not on a page`];
  if (places.some(({ onPage }) => !onPage)) return [`${name} stands over the edge of page ${first.page}`];
  if (exhibit === undefined)
    return places.every(isLetterhead) ? [] : [`page ${first.page} shows a picture that is not listed`];
  return places.some(({ width, height }) => Math.min(width, height) >= LEAST_SIDE)
    ? []
    : [`${name} is too small to be seen on page ${first.page}`];
}

const isLetterhead = ({ page, height }: PicturePlace): boolean => page === 1 && height <= HIGHEST_LETTERHEAD;
