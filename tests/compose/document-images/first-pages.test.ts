import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { PDFDocument } from '#pdf-lib';
import { firstPages } from '../../../src/compose/document-images/first-pages.js';
import { sha256 } from '../../../src/core/model/evidence.js';

const hash = (letter: string) => sha256.parse(letter.repeat(64));
const PDF = 'application/pdf';

/** Plates of contents given by their letter. */
function platesOf(contents: Record<string, { type: string; bytes: Uint8Array }>, options = {}) {
  return firstPages(
    Object.entries(contents).map(([letter, { type }]) => ({ sha256: hash(letter), type })),
    async (wanted) => contents[wanted[0] ?? '']?.bytes ?? new Uint8Array(),
    options,
  );
}

async function pdfOf(sizes: [number, number][]): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  for (const size of sizes) pdf.addPage(size).drawText('Bill of lading', { x: 20, y: 20, size: 24 });
  return pdf.save();
}

describe('first pages of papers', () => {
  it('draws the first two pages of a PDF, its longer side as asked, with ink on white', async () => {
    const bytes = await pdfOf([
      [612, 792],
      [792, 612],
      [612, 792],
    ]);
    const plate = (await platesOf({ a: { type: PDF, bytes } }, { longest: 800 })).get(hash('a'));
    expect(plate).toMatchObject({ is: 'pages', of: 3, pages: [{ height: 800 }, { width: 800 }] });
    if (plate?.is !== 'pages') throw new Error('no pages');
    for (const page of plate.pages) {
      if (page.is !== 'picture') throw new Error('no picture');
      const { width, height, format } = await sharp(page.bytes).metadata();
      expect([format, width, height]).toEqual(['jpeg', page.width, page.height]);
      const { channels } = await sharp(page.bytes).greyscale().stats();
      expect(channels[0]?.max).toBe(255);
      expect(channels[0]?.min).toBeLessThan(60);
    }
  });

  it('shows the beginning of a text, and says that there is more', async () => {
    const bytes = Buffer.from(`Notice\r\n${'line\n'.repeat(100)}`);
    const hidden = Buffer.from('gpj.\u202etxt\u001b[31m');
    const plates = await platesOf({
      a: { type: 'text/plain', bytes },
      b: { type: 'text/plain', bytes: hidden },
      c: { type: 'image/png', bytes: new Uint8Array() },
    });
    expect(plates.get(hash('a'))).toMatchObject({ is: 'text', cut: true });
    expect(plates.get(hash('b'))).toEqual({ is: 'text', cut: false, text: 'gpj.\uFFFDtxt\uFFFD[31m' });
    expect(plates.has(hash('c'))).toBe(false);
  });

  it('names what cannot be drawn and goes on with the next', async () => {
    const whole = await pdfOf([[200, 200]]);
    const plates = await platesOf({
      a: { type: PDF, bytes: Buffer.from('%PDF-1.7\nnothing') },
      b: { type: PDF, bytes: await readFile('fixtures/bad/password.pdf') },
      c: { type: PDF, bytes: whole },
    });
    expect(plates.get(hash('a'))).toMatchObject({
      is: 'unreadable',
      why: expect.stringMatching(/cannot be drawn/),
    });
    expect(plates.get(hash('b'))).toEqual({ is: 'unreadable', why: 'it is encrypted' });
    expect(plates.get(hash('c'))).toMatchObject({ is: 'pages', of: 1 });
  });

  it('gives up on a paper that takes too long', async () => {
    const bytes = await pdfOf([[600, 600]]);
    const plates = await platesOf({ a: { type: PDF, bytes } }, { seconds: 0.001 });
    expect(plates.get(hash('a'))).toMatchObject({
      is: 'unreadable',
      why: expect.stringMatching(/longer than/),
    });
  });
});
