import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { type PreparedPicture, preparePictures } from '../../src/compose/pictures.js';
import { carriedJpeg } from '../../src/core/pictures/carried-jpeg.js';
import { hashOf } from './sample-evidence.js';

const jpeg = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#c04020' } })
    .jpeg()
    .toBuffer();

async function prepare(...files: { bytes: Uint8Array | Error; type?: string }[]): Promise<PreparedPicture[]> {
  const list = files.map(({ bytes, type }, i) => ({
    sha256: hashOf(bytes instanceof Error ? `bad ${i}` : bytes),
    type: type ?? 'image/jpeg',
    bytes,
  }));
  const made = await preparePictures(list, (sha256) => {
    const found = list.find((one) => one.sha256 === sha256)?.bytes ?? new Error('unknown');
    return found instanceof Error ? Promise.reject(found) : Promise.resolve(found);
  });
  return list.map((one) => made.get(one.sha256) ?? { is: 'unreadable', why: 'not prepared' });
}

async function onlyPicture(bytes: Uint8Array) {
  const [made] = await prepare({ bytes });
  if (made?.is !== 'picture') throw new Error(`no picture: ${made?.why}`);
  return { made, meta: await sharp(made.bytes).metadata() };
}

describe('pictures for print', () => {
  it('are not made again where they were made before, and no other is begun once they are not wanted', async () => {
    const files = await Promise.all([10, 20, 30, 40, 50, 60].map((width) => jpeg(width, 10)));
    const list = files.map((bytes) => ({ sha256: hashOf(bytes), type: 'image/jpeg', bytes }));
    const [first] = list;
    const stop = new AbortController();
    const read: string[] = [];
    const known: PreparedPicture = { is: 'unreadable', why: 'made before' };
    const made = await preparePictures(
      list,
      async (sha256) => {
        read.push(sha256);
        stop.abort();
        return list.find((one) => one.sha256 === sha256)?.bytes ?? new Uint8Array();
      },
      { made: new Map(first === undefined ? [] : [[first.sha256, known]]), signal: stop.signal },
    );
    expect(made.get(first?.sha256 ?? hashOf('none'))).toBe(known);
    expect(read).not.toContain(first?.sha256);
    expect(read.length).toBeGreaterThan(0);
    expect(made.size).toBe(read.length + 1);
    expect(made.size).toBeLessThan(list.length);
  });

  it('are made smaller, but never larger', async () => {
    expect((await onlyPicture(await jpeg(4000, 3000))).made).toMatchObject({ width: 1600, height: 1200 });
    expect((await onlyPicture(await jpeg(300, 200))).made).toMatchObject({ width: 300, height: 200 });
  });

  it('are carried over as they are coded where they fit, however they are turned', async () => {
    const file = await sharp(await jpeg(400, 300))
      .withMetadata({ orientation: 6 })
      .withExifMerge({ IFD3: { GPSLatitude: '32/1 41/1 0/1', GPSLatitudeRef: 'N' } })
      .toBuffer();
    const { made } = await onlyPicture(file);
    expect(made).toEqual({ is: 'picture', ...carriedJpeg(file), damaged: false });
    expect(made).toMatchObject({ width: 300, height: 400 });
  });

  const grain = (width: number) =>
    sharp({
      create: {
        width,
        height: width,
        channels: 3,
        noise: { type: 'gaussian', mean: 128, sigma: 60 },
        background: '#808080',
      },
    });
  it.each<[string, () => Promise<Uint8Array>]>([
    ['are too many bytes', () => grain(1000).jpeg({ quality: 100, chromaSubsampling: '4:4:4' }).toBuffer()],
    ['have too many pixels', () => jpeg(1601, 20)],
    ['are not JPEG', () => grain(300).png().toBuffer()],
    [
      'are damaged',
      async () => {
        const file = await grain(300).jpeg().toBuffer();
        // All markers are in place, and most of the coded data are gone.
        return Buffer.concat([file.subarray(0, file.length / 3), file.subarray(-2)]);
      },
    ],
  ])('are made anew where they %s', async (_, make) => {
    const file = await make();
    const { made, meta } = await onlyPicture(file);
    expect(Buffer.from(made.bytes).equals(carriedJpeg(file)?.bytes ?? new Uint8Array())).toBe(false);
    expect(meta).toMatchObject({ format: 'jpeg', space: 'srgb' });
  });

  it('are made anew where parts are black', async () => {
    const bytes = await jpeg(400, 300);
    const sha256 = hashOf(bytes);
    const blackOut = [{ x: 0, y: 0, width: 1, height: 1 }];
    const made = (await preparePictures([{ sha256, type: 'image/jpeg', blackOut }], async () => bytes)).get(
      sha256,
    );
    if (made?.is !== 'picture') throw new Error('no picture');
    expect((await sharp(made.bytes).stats()).channels.every(({ max }) => max < 3)).toBe(true);
  });

  it('that are made anew are turned upright as EXIF says, and carry nothing of it', async () => {
    const turned = await sharp(await jpeg(4000, 3000))
      .withMetadata({ orientation: 6 })
      .withExifMerge({ IFD3: { GPSLatitude: '32/1 41/1 0/1', GPSLatitudeRef: 'N' } })
      .toBuffer();
    expect((await sharp(turned).metadata()).orientation).toBe(6);
    const { made, meta } = await onlyPicture(turned);
    expect(made).toMatchObject({ width: 1200, height: 1600, damaged: false });
    expect(meta.orientation).toBeUndefined();
    expect(meta.exif).toBeUndefined();
  });

  it('of four printing colours become sRGB, which the archive format demands', async () => {
    const cmyk = await sharp(await jpeg(200, 100))
      .toColourspace('cmyk')
      .jpeg()
      .toBuffer();
    expect((await sharp(cmyk).metadata()).space).toBe('cmyk');
    expect((await onlyPicture(cmyk)).meta).toMatchObject({ space: 'srgb', channels: 3 });
  });

  it('that are see-through are put on white', async () => {
    const png = await sharp({
      create: { width: 4, height: 4, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
    })
      .png()
      .toBuffer();
    const { made } = await onlyPicture(png);
    const { data } = await sharp(made.bytes).raw().toBuffer({ resolveWithObject: true });
    expect(data[0]).toBeGreaterThan(250);
  });

  it('cut short are shown as far as they go, and said to be damaged', async () => {
    const noise = await sharp({
      create: {
        width: 600,
        height: 600,
        channels: 3,
        noise: { type: 'gaussian', mean: 128, sigma: 30 },
        background: '#808080',
      },
    })
      .jpeg()
      .toBuffer();
    const { made } = await onlyPicture(noise.subarray(0, Math.floor(noise.length / 2)));
    expect(made.damaged).toBe(true);
  });

  it('that can’t be read say why, and do not stop the others', async () => {
    const good = await jpeg(100, 80);
    const made = await prepare(
      { bytes: Buffer.from('not a picture') },
      { bytes: new Error('the original is gone') },
      { bytes: Buffer.from('ftypheic, but no more'), type: 'image/heic' },
      { bytes: new Uint8Array(0) },
      { bytes: good },
    );
    expect(made.map((one) => one.is)).toEqual([
      'unreadable',
      'unreadable',
      'unreadable',
      'unreadable',
      'picture',
    ]);
    expect(made[1]).toEqual({ is: 'unreadable', why: 'the original is gone' });
    for (const one of made) if (one.is === 'unreadable') expect(one.why).not.toBe('');
  });

  it('of phones that write HEVC are decoded, and not turned twice', async () => {
    const heic = await readFile('fixtures/demo/evidence/photos/IMG_0415.HEIC');
    const [made] = await prepare({ bytes: heic, type: 'image/heic' });
    expect(made).toMatchObject({ is: 'picture', width: 1600, height: 1200, damaged: false });
  });

  it('are the same bytes every time', async () => {
    const bytes = await jpeg(900, 700);
    const [a, b] = [await onlyPicture(bytes), await onlyPicture(bytes)];
    expect(Buffer.from(a.made.bytes).equals(Buffer.from(b.made.bytes))).toBe(true);
  });
});
