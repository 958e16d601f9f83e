import sharp, { type Sharp } from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { canonicalBytes } from '../../../src/core/ledger/canonical.js';
import { leafHash, sha256Of, treeHash } from '../../../src/core/ledger/tree.js';
import type { Manifest } from '../../../src/core/model/manifest.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { toInstant } from '../../../src/core/model/time.js';
import { carriedJpeg } from '../../../src/core/pictures/carried-jpeg.js';
import { verifyDossier } from '../../../src/jobs/verify.js';
import { signPdf } from '../../../src/signing/sign-pdf.js';
import { asLines, ledgerEntries, type Parts, relist, sampleParts, samplePdf } from '../../signing/sample.js';
import { countingBytes, SIGNED_AT } from '../../signing/sample-identity.js';
import { identity } from './forge.js';

/** A wall with a dark display on it, seven bright strokes in the display, and grain as sensors have it. */
const scene = (strokes: number): Sharp => {
  const bars = Array.from(
    { length: strokes },
    (_, i) => `<rect x="${250 + i * 40}" y="210" width="18" height="80" fill="#f4e9c0"/>`,
  ).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600"><defs><linearGradient id="g"><stop
    stop-color="#445"/><stop offset="1" stop-color="#cdd"/></linearGradient></defs><rect width="800" height="600"
    fill="url(#g)"/><rect x="220" y="180" width="360" height="140" fill="#101418"/>${bars}</svg>`;
  return sharp(Buffer.from(svg))
    .flatten()
    .composite([
      {
        input: {
          create: {
            width: 800,
            height: 600,
            channels: 3,
            background: '#808080',
            noise: { type: 'gaussian', mean: 128, sigma: 18 },
          },
        },
        blend: 'soft-light',
      },
    ]);
};
/** As plates are made: upright, smaller, packed anew. */
const plateOf = (original: Uint8Array, quality = 82) =>
  sharp(original)
    .autoOrient()
    .resize({ width: 700, height: 700, fit: 'inside' })
    .jpeg({ quality })
    .toBuffer();

let original: Buffer;
beforeAll(async () => {
  original = await scene(7).jpeg({ quality: 90 }).toBuffer();
});

/** A dossier that holds an original and says that a picture of its page was made from it. */
async function judged(file: Uint8Array, plate: Uint8Array, attach = true) {
  const entries = ledgerEntries();
  const entry = JSON.parse(Buffer.from(entries[1] ?? '').toString());
  entry.body.file = { name: 'a.jpg', bytes: file.length, sha256: sha256Of(file), type: 'image/jpeg' };
  entries[1] = canonicalBytes(entry);
  const leaves = entries.map(leafHash);
  const sample = sampleParts();
  const attached = sample.attached
    .map((one) => (one.what === 'ledger' ? { ...one, bytes: asLines(entries) } : one))
    .map((one) => (one.name === 'e1.jpg' ? { ...one, bytes: file } : one))
    .filter(({ name }) => attach || name !== 'e1.jpg');
  const listed = relist({ ...sample, attached });
  const manifest: Manifest = {
    ...listed.manifest,
    record: { size: leaves.length, root: treeHash(leaves), leaves },
    exhibits: sample.manifest.exhibits.map((one) => {
      if (one.exhibit !== 1) return one;
      const { attachedAs: _, ...rest } = one;
      return {
        ...rest,
        file: entry.body.file,
        ...omitUndefined({ attachedAs: attach ? 'e1.jpg' : undefined }),
      };
    }),
    leftOut: [
      ...sample.manifest.leftOut,
      ...(attach
        ? []
        : [{ name: 'a.jpg', bytes: file.length, sha256: sha256Of(file), why: 'size-budget' as const }]),
    ],
    plates: [{ exhibit: 1, originalSha256: sha256Of(file), plateSha256: sha256Of(plate) }],
  };
  const parts: Parts = { ...listed, manifest };
  const pdf = await samplePdf(parts, async (document) => {
    const image = await document.embedJpg(plate);
    document.getPage(0).drawImage(image, { x: 20, y: 20, width: 100, height: 75 });
    await document.flush();
  });
  const bytes = await signPdf(pdf, identity, { at: toInstant(SIGNED_AT.getTime()), random: countingBytes() });
  const found = await verifyDossier(bytes, { trusted: [identity.certificateDer], pictures: true });
  const failed = found.checks.filter(({ result }) => result === 'failed').map(({ id }) => id);
  return { failed, alike: found.checks.find(({ id }) => id === 'plates.alike') };
}

describe('a printed picture that was carried over', () => {
  const turned = () => scene(7).jpeg().withMetadata({ orientation: 6 }).toBuffer();
  const carried = (file: Uint8Array) => carriedJpeg(file)?.bytes ?? new Uint8Array();

  it.each<[string, () => Promise<Uint8Array>]>([
    ['as it lay', async () => original],
    ['and is turned on the page', turned],
  ])('%s is compared byte for byte', async (_, make) => {
    const file = await make();
    expect(await judged(file, carried(file))).toMatchObject({
      failed: [],
      alike: { result: 'passed', detail: '1 carried over byte for byte' },
    });
  });

  it('but turned in another way than its camera data ask is not like it', async () => {
    const file = await turned();
    const plate = carried(file).slice();
    // The value of the one entry of the Exif block.
    const at = Buffer.from(plate).indexOf(Buffer.from([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6])) + 9;
    plate[at] = 1;
    expect((await judged(file, plate)).failed).toEqual(['plates.alike']);
  });
});

describe('a printed picture and its original', () => {
  it.each<[string, () => Promise<[Uint8Array, Uint8Array]>]>([
    ['scaled and packed anew', async () => [original, await plateOf(original)]],
    ['packed as coarsely as it gets', async () => [original, await plateOf(original, 64)]],
    [
      'turned upright, as its camera data ask',
      async () => {
        const turned = await sharp(original).rotate(270).withMetadata({ orientation: 6 }).jpeg().toBuffer();
        return [turned, await plateOf(turned)];
      },
    ],
    [
      'from PNG with clear parts, on white',
      async () => {
        const png = await scene(7).ensureAlpha(0.6).png().toBuffer();
        return [png, await sharp(png).resize(700).flatten({ background: '#ffffff' }).jpeg().toBuffer()];
      },
    ],
  ])('%s is like it', async (_, make) => {
    expect(await judged(...(await make()))).toMatchObject({ failed: [], alike: { result: 'passed' } });
  });

  const edited = async (change: (picture: Sharp) => Sharp) => {
    const { data, info } = await sharp(original).raw().toBuffer({ resolveWithObject: true });
    return plateOf(
      await change(sharp(data, { raw: info }))
        .jpeg({ quality: 95 })
        .toBuffer(),
    );
  };
  const patch = { input: { create: { width: 26, height: 84, channels: 3, background: '#101418' } } } as const;
  it.each<[string, () => Promise<Uint8Array>]>([
    ['of another scene', async () => plateOf(await scene(0).negate().jpeg().toBuffer())],
    ['mirrored', () => edited((p) => p.flop())],
    ['turned', () => edited((p) => p.rotate(180))],
    ['lying on its side', () => edited((p) => p.rotate(90))],
    ['cropped', () => edited((p) => p.extract({ left: 40, top: 30, width: 720, height: 540 }))],
    [
      'with one stroke of the display painted over',
      () => edited((p) => p.composite([{ ...patch, left: 246, top: 208 }])),
    ],
    ['made brighter', () => edited((p) => p.modulate({ brightness: 1.4 }))],
  ])('%s is not', async (_, make) => {
    const { failed, alike } = await judged(original, await make());
    expect(failed).toEqual(['plates.alike']);
    expect(alike?.detail).toBe('the picture of exhibit 1 is not like its original');
  });

  it.each<[string, () => Promise<Uint8Array>, string]>([
    [
      'is a drawing, which could load things',
      async () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
      'of a kind that is not decoded here',
    ],
    [
      'is a HEIC',
      async () => Buffer.from('\0\0\0\x18ftypheic\0\0\0\0', 'latin1'),
      'of a kind that is not decoded here',
    ],
    ['is damaged', async () => original.subarray(0, original.length / 2), 'cannot be compared'],
    ['is a bomb of pixels', async () => bomb(), 'cannot be compared'],
  ])('is not compared when the original %s', async (_, make, why) => {
    const { failed, alike } = await judged(await make(), await plateOf(original));
    expect(failed).toEqual([]);
    expect(alike).toMatchObject({ result: 'not-checked', detail: expect.stringContaining(why) });
  });

  it('is not compared when the original is not inside', async () => {
    const { alike } = await judged(original, await plateOf(original), false);
    expect(alike).toMatchObject({ result: 'not-checked', detail: 'exhibits 1: the original is not inside' });
  });
});

/** A PNG of a few bytes that says it is 60,000 by 60,000 (CWE-409). */
async function bomb(): Promise<Buffer> {
  const png = await sharp({ create: { width: 1, height: 1, channels: 3, background: '#000' } })
    .png()
    .toBuffer();
  png.writeUInt32BE(60_000, 16);
  png.writeUInt32BE(60_000, 20);
  const { crc32 } = await import('node:zlib');
  png.writeUInt32BE(crc32(png.subarray(12, 29)), 29);
  return png;
}
