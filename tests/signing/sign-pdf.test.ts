import { generateKeyPairSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { PDFArray, PDFDict, PDFDocument, PDFName } from '#pdf-lib';
import { toInstant } from '../../src/core/model/time.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import { CONTENTS_BYTES } from '../../src/signing/placeholder.js';
import { signPdf } from '../../src/signing/sign-pdf.js';
import { PHOTO, samplePdf } from './sample.js';
import { countingBytes, SIGNED_AT, sampleIdentity } from './sample-identity.js';

const identity = sampleIdentity();
const options = () => ({ at: toInstant(SIGNED_AT.getTime()), random: countingBytes() });

describe('signing a PDF', () => {
  it('gives the same bytes for the same input, but for the signature value', async () => {
    const pdf = await samplePdf();
    const [one, two] = await Promise.all([
      signPdf(pdf, identity, options()),
      signPdf(pdf, identity, options()),
    ]);
    const room = roomOf(one);
    expect(roomOf(two)).toEqual(room);
    expect(blanked(one, room)).toEqual(blanked(two, room));
  });

  it('leaves room for a time stamp, and none of the marker', async () => {
    const signed = await signPdf(await samplePdf(), identity, options());
    const { from, to } = roomOf(signed);
    expect(to - from).toBe(CONTENTS_BYTES * 2);
    const marker = Buffer.from(countingBytes()(16)).toString('hex');
    expect(Buffer.from(signed).includes(marker)).toBe(false);
  });

  it('keeps catalog, attachments and dates of what it signs', async () => {
    const before = await PDFDocument.load(await samplePdf(), { updateMetadata: false });
    const after = await PDFDocument.load(await signPdf(await samplePdf(), identity, options()), {
      updateMetadata: false,
    });
    const keys = (document: PDFDocument) => document.catalog.keys().map(String).sort();
    expect(keys(after)).toEqual([...keys(before), '/AcroForm', '/Perms'].sort());
    expect(after.getModificationDate()).toEqual(before.getModificationDate());
    expect(after.catalog.lookup(PDFName.of('AF'), PDFArray).size()).toBe(5);
  });

  it('keeps the links that were on the first page', async () => {
    const pdf = await samplePdf(undefined, (document) => {
      const link = document.context.obj({
        Type: 'Annot',
        Subtype: 'Link',
        Rect: [0, 0, 10, 10],
        F: 4,
        A: { Type: 'Action', S: 'URI', URI: 'https://example.org' },
      });
      document
        .getPage(0)
        .node.set(PDFName.of('Annots'), document.context.obj([document.context.register(link)]));
    });
    const signed = await signPdf(pdf, identity, options());
    const annotations = (await PDFDocument.load(signed))
      .getPage(0)
      .node.lookup(PDFName.of('Annots'), PDFArray);
    const kinds = [0, 1].map((i) => String(annotations.lookup(i, PDFDict).get(PDFName.of('Subtype'))));
    expect(kinds).toEqual(['/Link', '/Widget']);
    expect((await verifyDossier(signed)).verdict).toBe('intact-signer-not-vouched-for');
  });

  it('writes reason and place as text, whatever they hold', async () => {
    const hostile = ') >> /Contents <00> %\\ Ñandú';
    const signed = await signPdf(await samplePdf(), identity, {
      ...options(),
      reason: hostile,
      location: hostile,
    });
    expect((await verifyDossier(signed)).verdict).toBe('intact-signer-not-vouched-for');
  });

  it('is not misled by evidence that looks like a placeholder', async () => {
    // The photo holds /ByteRange [ and /Contents <000, here also uncompressed among the objects.
    const pdf = await samplePdf(undefined, (document) => {
      document.context.register(document.context.stream(PHOTO));
    });
    const signed = await signPdf(pdf, identity, options());
    expect((await verifyDossier(signed)).verdict).toBe('intact-signer-not-vouched-for');
  });

  it('refuses a PDF that is signed already', async () => {
    const signed = await signPdf(await samplePdf(), identity, options());
    await expect(signPdf(signed, identity, options())).rejects.toMatchObject({ code: 'unsupported-file' });
  });

  it.each([
    ['EC P-384', () => generateKeyPairSync('ec', { namedCurve: 'P-384' })],
    ['RSA 2048', () => generateKeyPairSync('rsa', { modulusLength: 2048 })],
  ])('works with a key of %s', async (_, keys) => {
    const other = sampleIdentity({ keys: keys() });
    const signed = await signPdf(await samplePdf(), other, options());
    expect((await verifyDossier(signed, { trusted: [other.certificateDer] })).verdict).toBe('intact');
  });

  it.each([
    ['RSA 1024', () => generateKeyPairSync('rsa', { modulusLength: 1024 })],
    ['secp256k1', () => generateKeyPairSync('ec', { namedCurve: 'secp256k1' })],
  ])('does not use a key of %s', (_, keys) => {
    expect(() => sampleIdentity({ keys: keys() })).toThrow(/not used for signing/);
  });
});

function roomOf(signed: Uint8Array): { from: number; to: number } {
  const found = Buffer.from(signed)
    .toString('latin1')
    .match(/\/ByteRange \[0 (\d+) (\d+) \d+ *\]/);
  return { from: Number(found?.[1]) + 1, to: Number(found?.[2]) - 1 };
}

function blanked(signed: Uint8Array, { from, to }: { from: number; to: number }): string {
  return Buffer.from(signed).fill('0', from, to).toString('latin1');
}
