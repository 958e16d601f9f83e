import { describe, expect, it } from 'vitest';
import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, PDFNumber, PDFStream } from '#pdf-lib';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { toInstant } from '../../src/core/model/time.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import { signPdf } from '../../src/signing/sign-pdf.js';
import type { VisiblePlace } from '../../src/signing/widget.js';
import { samplePdf } from './sample.js';
import { countingBytes, SIGNED_AT, sampleIdentity } from './sample-identity.js';

const identity = sampleIdentity();
const key = PDFName.of;
const PLACE: VisiblePlace = { page: 'last', rectangle: [20, 30, 220, 90], alt: 'Firma de Ñandú' };

/** The smallest structure tree: a document with one paragraph, and two keys given away (ISO 32000-1 §14.7). */
function tagged({ catalog, context }: PDFDocument): void {
  const tree = context.nextRef();
  const document = context.nextRef();
  const p = context.register(context.obj({ Type: 'StructElem', S: 'P', P: document, K: [0] }));
  context.assign(document, context.obj({ Type: 'StructElem', S: 'Document', P: tree, K: [p] }));
  context.assign(
    tree,
    context.obj({
      Type: 'StructTreeRoot',
      K: [document],
      ParentTree: { Nums: [0, [p], 4, p] },
      ParentTreeNextKey: 5,
    }),
  );
  catalog.set(key('StructTreeRoot'), tree);
  catalog.set(key('MarkInfo'), context.obj({ Marked: true }));
}

async function signed(visible: VisiblePlace | undefined, touch: (document: PDFDocument) => void = tagged) {
  const pdf = await samplePdf(undefined, (document) => {
    document.addPage([300, 200]);
    touch(document);
  });
  const bytes = await signPdf(pdf, identity, {
    at: toInstant(SIGNED_AT.getTime()),
    random: countingBytes(),
    ...omitUndefined({ visible }),
  });
  expect((await verifyDossier(bytes, { trusted: [identity.certificateDer] })).verdict).toBe('intact');
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const form = document.catalog.lookup(key('AcroForm'), PDFDict);
  const widget = form.lookup(key('Fields'), PDFArray).lookup(0, PDFDict);
  return { document, widget, widgetRef: form.lookup(key('Fields'), PDFArray).get(0) };
}
const numbers = (array: PDFArray) => array.asArray().map((one) => (one as PDFNumber).asNumber());

describe('a visible signature', () => {
  it('lies over the given place of the last page, prints, and draws nothing of its own', async () => {
    const { document, widget, widgetRef } = await signed(PLACE);
    expect(document.getPage(1).node.Annots()?.get(0)).toBe(widgetRef);
    expect(document.getPage(0).node.Annots()?.size() ?? 0).toBe(0);
    expect(numbers(widget.lookup(key('Rect'), PDFArray))).toEqual(PLACE.rectangle);
    // ISO 32000-1 table 165: bit 3 prints; hidden (2) and no view (6) are not set.
    const flags = widget.lookup(key('F'), PDFNumber).asNumber();
    expect([flags & 4, flags & 2, flags & 32]).toEqual([4, 0, 0]);
    const appearance = widget.lookup(key('AP'), PDFDict).lookup(key('N'), PDFStream);
    expect(numbers(appearance.dict.lookup(key('BBox'), PDFArray))).toEqual([0, 0, 200, 60]);
    expect(appearance.getContents()).toHaveLength(0);
    expect(widget.lookup(key('TU'), PDFHexString).decodeText()).toBe('Firma de Ñandú');
  });

  it('is the last element of a structure tree, under a key of its own', async () => {
    const { document, widget, widgetRef } = await signed(PLACE);
    const tree = document.catalog.lookup(key('StructTreeRoot'), PDFDict);
    const given = tree.lookup(key('ParentTree'), PDFDict).lookup(key('Nums'), PDFArray);
    expect(widget.lookup(key('StructParent'), PDFNumber).asNumber()).toBe(5);
    expect(tree.lookup(key('ParentTreeNextKey'), PDFNumber).asNumber()).toBe(6);
    expect(given.lookup(4, PDFNumber).asNumber()).toBe(5);
    const form = given.lookup(5, PDFDict);
    expect(String(form.get(key('S')))).toBe('/Form');
    expect(form.lookup(key('Alt'), PDFHexString).decodeText()).toBe('Firma de Ñandú');
    expect(form.lookup(key('K'), PDFArray).lookup(0, PDFDict).get(key('Obj'))).toBe(widgetRef);
    const kids = form.lookup(key('P'), PDFDict).lookup(key('K'), PDFArray);
    expect(kids.lookup(kids.size() - 1)).toBe(form);
    expect(String(document.getPage(1).node.get(key('Tabs')))).toBe('/S');
  });

  it('leaves a PDF without a structure tree untagged', async () => {
    const { widget } = await signed(PLACE, () => undefined);
    expect(widget.has(key('StructParent'))).toBe(false);
  });

  it.each<[string, VisiblePlace, RegExp]>([
    ['beyond the last page', { ...PLACE, page: 3 }, /no page 3/],
    ['on page nought', { ...PLACE, page: 0 }, /no page 0/],
    ['inside out', { ...PLACE, rectangle: [20, 90, 220, 30] }, /inside out/],
    ['that is no number', { ...PLACE, rectangle: [20, 30, Number.NaN, 90] }, /inside out/],
  ])('is refused in a place %s', async (_, place, message) => {
    await expect(signed(place)).rejects.toThrow(message);
  });
});

describe('an invisible signature', () => {
  it('stays on the first page, without size and outside the structure', async () => {
    const { document, widget, widgetRef } = await signed(undefined);
    expect(document.getPage(0).node.Annots()?.get(0)).toBe(widgetRef);
    expect(numbers(widget.lookup(key('Rect'), PDFArray))).toEqual([0, 0, 0, 0]);
    expect(widget.has(key('StructParent'))).toBe(false);
  });
});
