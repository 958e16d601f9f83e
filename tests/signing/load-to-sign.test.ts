import { describe, expect, it } from 'vitest';
import { PDFDocument, PDFInvalidObject, PDFName } from '#pdf-lib';
import { plainPdf } from '../../src/compose/plain-pdf.js';
import { loadToSign } from '../../src/signing/load-to-sign.js';
import { samplePdf } from './sample.js';

const SAVE = { useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false };

/** A document with links and a structure of two elements, as typeset pages have. */
async function tagged(options = SAVE): Promise<Uint8Array> {
  const document = await PDFDocument.load(await samplePdf(), { updateMetadata: false });
  const { context, catalog } = document;
  const [tree, top] = [context.nextRef(), context.nextRef()];
  const p = context.register(context.obj({ Type: 'StructElem', S: 'P', P: top, K: [0] }));
  context.assign(top, context.obj({ Type: 'StructElem', S: 'Document', P: tree, K: [p] }));
  context.assign(
    tree,
    context.obj({ Type: 'StructTreeRoot', K: [top], ParentTree: { Nums: [0, [p]] }, ParentTreeNextKey: 1 }),
  );
  catalog.set(PDFName.of('StructTreeRoot'), tree);
  const link = context.register(
    context.obj({ Type: 'Annot', Subtype: 'Link', Rect: [0, 0, 9, 9], Contents: '(endobj)' }),
  );
  document.getPage(0).node.set(PDFName.of('Annots'), context.obj([link]));
  return document.save(options);
}

async function everything(pdf: Uint8Array): Promise<string[]> {
  const { context } = await PDFDocument.load(pdf, { updateMetadata: false });
  return context.enumerateIndirectObjects().map(([ref, object]) => {
    const bytes = new Uint8Array(object.sizeInBytes());
    object.copyBytesInto(bytes, 0);
    return `${ref.toString()} ${Buffer.from(bytes).toString('latin1')}`;
  });
}

const carriedIn = ({ context }: PDFDocument) =>
  context.enumerateIndirectObjects().filter(([, object]) => object instanceof PDFInvalidObject).length;

describe('a PDF that is loaded to be signed', () => {
  it('has every object as it was, most of them unread', async () => {
    const pdf = await tagged();
    const document = await loadToSign(pdf);
    expect(carriedIn(document)).toBeGreaterThan(5);
    expect(await everything(await document.save(SAVE))).toEqual(await everything(pdf));
  });

  it('gives new objects numbers that none has', async () => {
    const pdf = await tagged();
    const { context } = await loadToSign(pdf);
    const numbers = plainPdf(pdf)?.objects.map(({ number }) => number) ?? [];
    expect(context.nextRef().objectNumber).toBe(Math.max(...numbers) + 1);
  });

  it.each<[string, () => Promise<Uint8Array>]>([
    ['has its objects packed', () => tagged({ ...SAVE, useObjectStreams: true })],
    [
      'was added to',
      async () => {
        const pdf = Buffer.from(await tagged()).toString('latin1');
        return Buffer.from(pdf.replace(/trailer\n<</, 'trailer\n<</Prev 9'), 'latin1');
      },
    ],
  ])('is read whole when it %s', async (_, make) => {
    const pdf = await make();
    expect(plainPdf(pdf)).toBeUndefined();
    expect(carriedIn(await loadToSign(pdf))).toBe(0);
  });
});
