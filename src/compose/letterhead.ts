import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { DossierError } from '../core/model/error.js';
import { type CarrierTemplates, letterheadOf } from './templates.js';

/** Largest size in pixels: 16 mm high at 600 per inch, and as wide as the page. */
const WIDE = 2400;
const HIGH = 400;

/** Dots per inch at which an SVG is drawn before it is fitted. */
const DENSITY = 600;

/**
 * The letterhead as an opaque picture, upright and without its embedded data: the pages have no transparency, so that
 * whoever verifies them need not ask what shows through. Throws `bad-template`.
 */
export async function readLetterhead(
  templates: CarrierTemplates,
): Promise<{ asset: string; bytes: Uint8Array } | undefined> {
  const file = letterheadOf(templates);
  if (file === undefined) return undefined;
  try {
    const png = await sharp(await readFile(file), { failOn: 'warning', density: DENSITY })
      .autoOrient()
      .resize({ width: WIDE, height: HIGH, fit: 'inside', withoutEnlargement: true })
      .toColourspace('srgb')
      .flatten({ background: 'white' })
      .png()
      .toBuffer();
    return { asset: 'letterhead.png', bytes: png };
  } catch (cause) {
    throw new DossierError('bad-template', 'the letterhead is no picture that can be read', {
      where: { file },
      fix: 'Give it as SVG, PNG or JPEG.',
      cause,
    });
  }
}
