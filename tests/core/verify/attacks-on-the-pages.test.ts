import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { type PDFDocument, type PDFImage, PDFName, PDFRawStream, type PDFRef } from '#pdf-lib';
import { sha256Of } from '../../../src/core/ledger/tree.js';
import { toInstant } from '../../../src/core/model/time.js';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { signPdf } from '../../../src/signing/sign-pdf.js';
import { type Parts, PHOTO, sampleParts, samplePdf } from '../../signing/sample.js';
import { countingBytes, SIGNED_AT } from '../../signing/sample-identity.js';
import { failed, identity } from './forge.js';

/** Everything here is signed with the key that the reader trusts: the signer lies. */
const trusted = [identity.certificateDer];
const key = PDFName.of;
/** What the manifest lists. */
type Listing = 'listed' | 'elsewhere' | 'empty' | 'none';
type Touch = (document: PDFDocument, picture: PDFImage) => void | Promise<void>;

let shown: Buffer;
let other: Buffer;
beforeAll(async () => {
  const plain = (background: string) =>
    sharp({ create: { width: 40, height: 30, channels: 3, background } })
      .jpeg()
      .toBuffer();
  [shown, other] = await Promise.all([plain('#334455'), plain('#cc8844')]);
});

/** A dossier whose exhibit 1 is printed as the listed picture, before `touch` changes it. */
async function checked(touch: Touch = () => undefined, list: Listing = 'listed') {
  const sample = sampleParts();
  const plate = {
    exhibit: list === 'elsewhere' ? 9 : 1,
    originalSha256: sha256Of(PHOTO),
    plateSha256: sha256Of(shown),
  };
  const { plates: _, ...manifest } = sample.manifest;
  const parts: Parts = {
    ...sample,
    manifest: list === 'none' ? manifest : { ...manifest, plates: list === 'empty' ? [] : [plate] },
  };
  const pdf = await samplePdf(parts, async (document) => {
    const picture = await document.embedJpg(shown);
    await touch(document, picture);
    await document.flush();
  });
  const bytes = await signPdf(pdf, identity, { at: toInstant(SIGNED_AT.getTime()), random: countingBytes() });
  return verifyDossier(bytes, { trusted });
}
const print = (document: PDFDocument, picture: PDFImage, size = 100) =>
  document.getPage(0).drawImage(picture, { x: 20, y: 20, width: size, height: size * 0.75 });
/** The dictionary of a picture, once it stands in the file. */
async function alter(document: PDFDocument, { ref }: { ref: PDFRef }, entries: Record<string, unknown>) {
  await document.flush();
  const stream = document.context.lookup(ref);
  if (!(stream instanceof PDFRawStream)) throw new Error('no picture');
  for (const [name, value] of Object.entries(entries))
    stream.dict.set(key(name), document.context.obj(value as string));
}

it('a picture that is printed as listed, and a letterhead on page one, are sound', async () => {
  const found = await checked(async (document, picture) => {
    print(document, picture);
    const letterhead = await document.embedJpg(other);
    document.getPage(0).drawImage(letterhead, { x: 20, y: 150, width: 60, height: 40 });
  });
  expect(failed(found)).toEqual([]);
  expect(found.checks.find(({ id }) => id === 'plates.listed')?.detail).toMatch(/beside the letterhead/);
});

describe('a picture that is not what the list says', () => {
  const lies: [string, Touch, Listing?][] = [
    [
      'another is printed, and the listed one lies in the file',
      async (document) => {
        print(document, await document.embedJpg(other));
      },
    ],
    [
      'another is printed over it',
      async (document, picture) => {
        print(document, picture);
        print(document, await document.embedJpg(other), 110);
      },
    ],
    ['the listed one is too small to be seen', (document, picture) => print(document, picture, 3)],
    [
      'the listed one stands beside the paper',
      (document, picture) =>
        document.getPage(0).drawImage(picture, { x: 290, y: 20, width: 100, height: 75 }),
    ],
    ['a list of another original', print, 'elsewhere'],
    ['no list', print, 'none'],
    ['a list that leaves it out', print, 'empty'],
    ...(
      [
        ['inverted (§8.9.5.2)', { Decode: [1, 0, 1, 0, 1, 0] }],
        ['with colours that are not drawn (§8.9.6.4)', { Mask: [0, 255, 0, 255, 0, 255] }],
        ['with nothing but its name for a mask', { SMask: 'None' }],
        ['as a stencil (§8.9.6.2)', { ImageMask: true }],
      ] as const
    ).map(([name, entries]): [string, Touch] => [
      name,
      async (document, picture) => {
        print(document, picture);
        await alter(document, picture, entries);
      },
    ]),
    [
      'its bytes twice, once plain and unprinted, once inverted and printed',
      async (document, picture) => {
        const twin = await document.embedJpg(shown);
        print(document, twin);
        await alter(document, twin, { Decode: [1, 0, 1, 0, 1, 0] });
        await picture.embed();
      },
    ],
  ];
  it.each(lies)('%s', async (_, touch, list) => {
    const found = await checked(touch, list);
    expect(found.verdict).toBe('broken');
    expect(failed(found)).toEqual(['plates.listed']);
  });

  it('a picture that stands in the content of the page itself (§8.9.7)', async () => {
    const found = await checked((document, picture) => {
      print(document, picture);
      const content = document.context.stream('BI /W 1 /H 1 /BPC 8 /CS /G ID x EI');
      document.getPage(0).node.addContentStream(document.context.register(content));
    });
    expect(failed(found)).toEqual(['plates.listed']);
  });
});

describe('pages that are not plain', () => {
  const page = (document: PDFDocument, name: string, value: unknown) =>
    document.getPage(0).node.set(key(name), document.context.obj(value as string));
  const link = { Type: 'Annot', Subtype: 'Link', Rect: [0, 0, 300, 100], Border: [0, 0, 0] };
  it.each<[string, (document: PDFDocument) => void]>([
    ['cropped', (d) => page(d, 'CropBox', [0, 0, 100, 200])],
    ['turned', (d) => page(d, 'Rotate', 180)],
    ['with a unit of its own', (d) => page(d, 'UserUnit', 2)],
    ['whose lower left corner is elsewhere', (d) => page(d, 'MediaBox', [10, 0, 300, 200])],
    [
      'of which the order of pages states the box',
      (d) => void d.context.register(d.context.obj({ Type: 'Pages', Kids: [], Count: 0, Rotate: 90 })),
    ],
    ['with see-through drawing', (d) => void d.context.register(d.context.obj({ Type: 'ExtGState', ca: 0 }))],
    [
      'with a state of graphics that does not say so',
      (d) => void d.context.register(d.context.obj({ BM: 'Difference' })),
    ],
    ['with a pattern', (d) => void d.context.register(d.context.obj({ PatternType: 1 }))],
    [
      'with a font of drawings',
      (d) => void d.context.register(d.context.obj({ Type: 'Font', Subtype: 'Type3' })),
    ],
    [
      'with a form',
      (d) => void d.context.register(d.context.stream('0 0 9 9 re f', { Type: 'XObject', Subtype: 'Form' })),
    ],
    [
      'with a link that covers half of it in one program and not in another',
      (d) => {
        const drawn = d.context.register(d.context.stream('', { Type: 'XObject', Subtype: 'Form' }));
        page(d, 'Annots', [d.context.obj({ ...link, AP: { N: drawn } })]);
      },
    ],
    ['with a link that has a colour', (d) => page(d, 'Annots', [d.context.obj({ ...link, C: [1, 1, 1] })])],
  ])('%s', async (_, touch) => {
    const found = await checked((document, picture) => {
      print(document, picture);
      touch(document);
    });
    expect(found.verdict).toBe('broken');
    expect(failed(found)).toEqual(['pdf.plain-pages']);
  });

  it('a link without a drawing is no fault', async () => {
    const found = await checked((document, picture) => {
      print(document, picture);
      page(document, 'Annots', [document.context.obj(link)]);
    });
    expect(failed(found)).toEqual([]);
  });
});
