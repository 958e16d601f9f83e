import { sha256Of } from '../../ledger/tree.js';
import { latin1 } from '../../model/bytes.js';
import { carriedJpeg } from '../../pictures/carried-jpeg.js';
import type { PictureComparer } from '../../ports/picture-comparer.js';
import type { DossierContents } from '../check-attachments.js';
import type { CheckResults } from '../check-results.js';

/** The natural logarithm of two shapes' ratio: two in a hundred are rounding of small pictures. */
const MOST_SHAPE = 0.02;
/** Steps of grey. Scaling and packing anew moved no block by more than 5 in the pictures that were tried. */
const MOST_GREY = 24;

/**
 * Holds every printed picture against its original where that is inside. One that was carried over has the coded data of
 * its original, byte for byte, so that nothing in it can have been changed. One that was made anew is compared upright,
 * in grey, block by block of a sixty-fourth of the longer side: that finds another picture, one that was turned, cropped
 * or mirrored, and a part that was painted over; not a change within a block that keeps its mean.
 */
export async function checkPictureLikeness(
  { manifest, pictures, attached }: DossierContents,
  results: CheckResults,
  comparer: PictureComparer,
): Promise<void> {
  const wrong: string[] = [];
  const open = new Map<string, number[]>();
  const leave = (why: string, exhibit: number) => open.set(why, [...(open.get(why) ?? []), exhibit]);
  const inside = new Map(
    manifest.attachments.flatMap(({ what, sha256, name }) =>
      what === 'original' ? [[sha256, name] as const] : [],
    ),
  );
  const printed = new Map(pictures?.map(({ sha256, bytes }) => [sha256, bytes]));
  let [same, alike] = [0, 0];
  try {
    for (const { exhibit, originalSha256, plateSha256 } of manifest.plates ?? []) {
      const name = inside.get(originalSha256);
      const original = name === undefined ? undefined : await attached(name);
      const plate = printed.get(plateSha256);
      if (original === undefined || plate === undefined) leave('the original is not inside', exhibit);
      else if (sha256Of(original) !== originalSha256) leave('the original is not the listed one', exhibit);
      else if (isCarriedOver(original, plate)) same += 1;
      else if (!isPlain(original) || !isPlain(plate))
        leave('it is of a kind that is not decoded here', exhibit);
      else {
        const apart = await comparer.compare(original, plate);
        if ('why' in apart) leave(`it cannot be compared: ${apart.why.slice(0, 100)}`, exhibit);
        else if (apart.shape > MOST_SHAPE || apart.worst > MOST_GREY)
          wrong.push(`the picture of exhibit ${exhibit} is not like its original`);
        else alike += 1;
      }
    }
  } finally {
    comparer.close();
  }
  const left = [...open].map(([why, exhibits]) => `exhibits ${exhibits.join(', ')}: ${why}`);
  const found = [
    ...(same > 0 ? [`${same} carried over byte for byte`] : []),
    ...(alike > 0 ? [`${alike} like their originals`] : []),
  ].join(', ');
  if (wrong.length > 0) results.failIf('plates.alike', wrong, '');
  else if (found === '') results.skip('plates.alike', left.join('; ') || 'No printed pictures are listed.');
  else
    results.noteIf(
      'plates.alike',
      left.map((words) => `${found}; not compared: ${words}`),
      found,
    );
}

/** Whether the picture of a page is that of the original as it is coded there, without what was written beside it. */
function isCarriedOver(original: Uint8Array, plate: Uint8Array): boolean {
  const carried = carriedJpeg(original)?.bytes;
  return carried?.length === plate.length && sha256Of(carried) === sha256Of(plate);
}

/** JPEG, PNG, WebP and TIFF by their first bytes: no drawing program, no film, nothing that loads anything. */
function isPlain(bytes: Uint8Array): boolean {
  const head = latin1(bytes, 0, 12);
  return (
    head.startsWith('\xff\xd8\xff') ||
    head.startsWith('\x89PNG\r\n\x1a\n') ||
    (head.startsWith('RIFF') && head.endsWith('WEBP')) ||
    head.startsWith('II*\0') ||
    head.startsWith('MM\0*')
  );
}
