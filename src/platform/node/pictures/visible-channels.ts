import sharp, { type Sharp, type SharpOptions } from 'sharp';
import { withTiff } from './tiff-file.js';

const EXTRA_SAMPLES = 0x0152;
/** Alpha, with colours multiplied by it or not (TIFF 6.0, ExtraSamples). */
const ALPHA = new Set([1, 2]);

/**
 * The upright colours of a TIFF that has channels beside them which are not transparency: the decoder would take the
 * first of them for it, and hide the picture. Undefined for all other TIFFs. Throws what sharp throws.
 */
export async function visibleChannels(path: string, options: SharpOptions): Promise<Sharp | undefined> {
  const extra = withTiff(path, (tiff) =>
    tiff.directory(tiff.first, new Set([EXTRA_SAMPLES])).entries.flatMap((entry) => tiff.shorts(entry)),
  );
  const [only, second] = extra ?? [];
  if (only === undefined || (second === undefined && ALPHA.has(only))) return undefined;
  const { data, info } = await sharp(path, options)
    .autoOrient()
    .removeAlpha()
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  return sharp(data, { raw: { width, height, channels } });
}
