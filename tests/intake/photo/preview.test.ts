import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { withExif } from '../../../fixtures/demo/make/exif.js';
import { readExif } from '../../../src/intake/photo/exif.js';
import { examinePicture } from '../../../src/intake/photo/picture.js';
import { emptyFolder, put } from '../a-delivery.js';

const folder = await emptyFolder();
const WIDTH = 1600;
const HEIGHT = 1200;

/** A drawn photo of a load, as large as the demonstration's. */
const drawn = await sharp('fixtures/demo/evidence/photos/IMG_0411.jpg').autoOrient().toBuffer();
const photo = await sharp(drawn).resize(WIDTH, HEIGHT, { fit: 'cover' }).jpeg({ quality: 85 }).toBuffer();
const preview = (of: Buffer, width = 160, height = 120) =>
  sharp(of).resize(width, height, { fit: 'fill' }).jpeg({ quality: 75 }).toBuffer();

interface Facts {
  orientation?: 1 | 6;
  preview?: Buffer;
}
const stored = (image: Buffer, facts: Facts) =>
  withExif(image, {
    make: 'Invented',
    model: 'M-1',
    orientation: 1,
    width: WIDTH,
    height: HEIGHT,
    taken: '2026:07:14 05:42:08',
    offset: '-07:00',
    ...facts,
  });

const seen = async (bytes: Buffer) => examinePicture((await put(folder, 'p.jpg', bytes)).path, 'image/jpeg');
const bitsApart = (a = '', b = '') =>
  (BigInt(`0x${a}`) ^ BigInt(`0x${b}`)).toString(2).replaceAll('0', '').length;

const dark = await sharp(photo).linear(0.1, 0).jpeg().toBuffer();
const blurred = await sharp(photo)
  .blur(WIDTH / 100)
  .jpeg()
  .toBuffer();
const good = await preview(photo);
const other = await sharp('fixtures/demo/evidence/photos/IMG_0404.jpg')
  .resize(WIDTH, HEIGHT, { fit: 'cover' })
  .jpeg({ quality: 85 })
  .toBuffer();

describe('a photo with a preview in its Exif block', () => {
  it('is judged by it when that is clear, which is faster, and can be fooled', async () => {
    const { size, flags } = await seen(stored(photo, { preview: good }));
    expect([size, flags]).toEqual([{ width: WIDTH, height: HEIGHT }, []]);
    const { sceneHash } = await seen(stored(other, { preview: good }));
    expect(sceneHash).toBe((await seen(stored(photo, { preview: good }))).sceneHash);
    expect(bitsApart(sceneHash, (await seen(stored(other, {}))).sceneHash)).toBeGreaterThan(10);
  });

  it('tells what its Exif block says, as by the file itself', async () => {
    const { path } = await put(folder, 'e.jpg', stored(photo, { preview: good }));
    const { exif } = await examinePicture(path, 'image/jpeg');
    expect(exif).toEqual(await readExif(path, undefined));
    expect(exif).toMatchObject({ make: 'Invented', dateTimeOriginal: '2026:07:14 05:42:08' });
  });

  it.each([
    ['160 × 120', 160, 120],
    ['320 × 240', 320, 240],
    ['512 × 384', 512, 384],
  ])('shows the same scene as without, preview %s', async (_, width, height) => {
    const short = await seen(stored(photo, { preview: await preview(photo, width, height) }));
    const long = await seen(stored(photo, {}));
    expect(bitsApart(short.sceneHash, long.sceneHash)).toBeLessThanOrEqual(1);
  });

  it('is turned upright, with its preview', async () => {
    const lying = await sharp(photo).rotate(-90).resize(WIDTH, HEIGHT, { fit: 'fill' }).toBuffer();
    const short = await seen(stored(lying, { orientation: 6, preview: await preview(lying) }));
    const long = await seen(stored(lying, { orientation: 6 }));
    expect(bitsApart(short.sceneHash, long.sceneHash)).toBeLessThanOrEqual(1);
  });
});

describe('a photo is decoded to its end', async () => {
  const without = stored(blurred, {});
  const withPreview = (of: Buffer, small: Buffer) => stored(of, { preview: small });
  /** As a program leaves it that writes when it changed the picture, and not the preview anew. */
  const editedLater = (bytes: Buffer) => {
    // The time of change is the first that stands in the block.
    const later = Buffer.from(bytes);
    later.write('2026:07:15', later.indexOf('2026:07:14'));
    return later;
  };

  it.each<[string, Buffer, string[]]>([
    ['without a preview', without, ['blurred']],
    ['when its preview is dark', withPreview(dark, await preview(dark)), ['dark']],
    ['when its preview is blurred', withPreview(blurred, await preview(blurred)), ['blurred']],
    ['when its preview has another shape', withPreview(blurred, await preview(photo, 160, 90)), ['blurred']],
    ['when its preview is very small', withPreview(blurred, await preview(photo, 80, 60)), ['blurred']],
    ['when something speaks of editing', editedLater(withPreview(blurred, good)), ['blurred']],
    ['when its preview is broken', withPreview(blurred, good.subarray(0, good.length / 2)), ['blurred']],
    ['when its preview is no picture', withPreview(blurred, Buffer.alloc(900, 'x')), ['blurred']],
  ])('%s', async (_, bytes, flags) => {
    expect((await seen(bytes)).flags.map(({ is }) => is)).toEqual(flags);
  });

  it('when it is cut off, and that is said', async () => {
    const whole = withPreview(photo, good);
    const { flags, exif } = await seen(whole.subarray(0, whole.length - 9000));
    expect(flags.map(({ is }) => is)).toEqual(['picture-unreadable']);
    expect(exif.make).toBe('Invented');
  });

  it('when sectors of it are lost, and that is said', async () => {
    const hurt = withPreview(photo, good);
    hurt.fill(0, hurt.length - 20_000, hurt.length - 12_000);
    expect((await seen(hurt)).flags.map(({ is }) => is)).toEqual(['picture-unreadable']);
  });
});
