import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { DossierError } from '../core/model/error.js';
import { type CarrierTemplates, letterheadOf } from './templates.js';

/** Largest size in pixels: 16 mm high at 600 per inch, and as wide as the page. */
const WIDE = 2400;
const HIGH = 400;

/** An SVG as it is; a picture as PNG, upright and without its embedded data. Throws `bad-template`. */
export async function readLetterhead(
  templates: CarrierTemplates,
): Promise<{ asset: string; bytes: Uint8Array } | undefined> {
  const file = letterheadOf(templates);
  if (file === undefined) return undefined;
  try {
    const bytes = await readFile(file);
    // An SVG is checked by rendering it: one that can't be rendered would stop the typesetter.
    const drawn = sharp(bytes, { failOn: 'warning' });
    if (file.endsWith('.svg')) {
      await drawn.metadata();
      return { asset: 'letterhead.svg', bytes };
    }
    const png = await drawn
      .autoOrient()
      .resize({ width: WIDE, height: HIGH, fit: 'inside', withoutEnlargement: true })
      .toColourspace('srgb')
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
