import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { PDFDocument, StandardFonts } from '#pdf-lib';
import { documentByFileName, documentByHeading } from '../../../src/intake/document/document-words.js';
import { scanPdf } from '../../../src/intake/document/pdf.js';
import { plainText } from '../../../src/intake/document/pdf-text.js';
import { emptyFolder, put } from '../a-delivery.js';

const folder = await emptyFolder();
const look = async (bytes: string | Uint8Array) => scanPdf((await put(folder, 'a.pdf', bytes)).path);

async function pdf(pages = 1, text = 'Page', options = {}): Promise<Uint8Array> {
  const made = await PDFDocument.create();
  const font = await made.embedFont(StandardFonts.Helvetica);
  for (let i = 0; i < pages; i++) made.addPage().drawText(text, { font });
  return made.save(options);
}

/** A PDF with one more object in it. */
async function with_(object: string): Promise<string> {
  const bytes = Buffer.from(await pdf(1, 'Page', { useObjectStreams: false })).toString('latin1');
  return bytes.replace('xref\n', `90 0 obj\n${object}\nendobj\nxref\n`);
}

describe('looking at a PDF', () => {
  it.each([true, false])('counts its pages, in object streams or not (%s)', async (useObjectStreams) => {
    expect(await look(await pdf(3, 'x', { useObjectStreams }))).toMatchObject({
      pages: 3,
      encrypted: false,
      active: [],
    });
  });

  // ISO 32000-2 §12.6.4, §7.11.4; a name may hide letters as #xx (§7.3.5).
  it.each([
    ['<< /S /JavaScript /JS (app.alert(1)) >>', 'JavaScript'],
    ['<< /S /J#61vaScript >>', 'JavaScript'],
    ['<< /S /Launch /F (cmd.exe) >>', 'an action that starts a program'],
    ['<< /Names << /EmbeddedFiles 9 0 R >> >>', 'embedded files'],
    ['<< /S /SubmitForm >>', 'a form that sends or fetches data'],
    ['<< /XFA [] >>', 'an XFA form'],
  ])('finds active content in %s', async (object, what) => {
    const latin = Buffer.from(await with_(object), 'latin1');
    expect((await look(latin)).active).toContain(what);
  });

  it('finds it inside a compressed object stream', async () => {
    const packed = deflateSync('1 0 << /S /JavaScript >>');
    const object = `<< /Type /ObjStm /N 1 /First 4 /Filter /FlateDecode /Length ${packed.length} >>\nstream\n${packed.toString('latin1')}\nendstream`;
    expect((await look(Buffer.from(await with_(object), 'latin1'))).active).toEqual(['JavaScript']);
  });

  it('leaves a plain link and an opening view alone', async () => {
    expect(
      (await look(await with_('<< /OpenAction [3 0 R /Fit] /A << /S /URI /URI (https://example.com) >> >>')))
        .active,
    ).toEqual([]);
  });

  it('says when a part is missing', async () => {
    const whole = await pdf(2);
    expect((await look(whole.subarray(0, whole.length / 2))).damaged).toMatch(/a part is missing/);
    expect((await look('%PDF-1.7\nstartxref\n0\n%%EOF')).damaged).toMatch(/no page/);
    expect((await look(whole)).damaged).toBeUndefined();
  });

  it('unpacks no bomb', async () => {
    const bomb = deflateSync(Buffer.alloc(64 * 1024 * 1024));
    const object = `<< /Type /ObjStm /Filter /FlateDecode >>\nstream\n${bomb.toString('latin1')}\nendstream`;
    expect((await look(Buffer.from(await with_(object), 'latin1'))).pages).toBe(1);
  });

  /** A PDF, and a later revision of it that repeats its page and has one object more. */
  async function revised(more: Uint8Array): Promise<Buffer> {
    const first = Buffer.from(await pdf(1, 'Page', { useObjectStreams: false }));
    const text = first.toString('latin1');
    const [, number = ''] = /(\d+) 0 obj\n<<\n\/Type \/Page\n/.exec(text) ?? [];
    const page = text.slice(
      text.indexOf(`${number} 0 obj`),
      text.indexOf('endobj', text.indexOf(`${number} 0 obj`)),
    );
    const object = `90 0 obj\n<< /Length ${more.length} >>\nstream\n`;
    const [, root = ''] = /\/Root (\d+ 0 R)/.exec(text) ?? [];
    const before = Number(/startxref\s+(\d+)/.exec(text)?.[1]);
    const end = `\nendstream\nendobj\n${page}endobj\ntrailer\n<< /Size 91 /Root ${root} /Prev ${before} >>\nstartxref\n${before}\n%%EOF\n`;
    return Buffer.concat([first, Buffer.from(`\n${object}`), more, Buffer.from(end, 'latin1')]);
  }

  it.each([1_000, 1_000_000])(
    'counts a page that a later revision repeats once, with %d bytes more',
    async (more) => {
      const { pages, damaged } = await look(await revised(Buffer.alloc(more, 'x')));
      expect([pages, damaged]).toEqual([1, undefined]);
    },
  );

  it('counts each page once in a tree that names its branches twice at each fork', async () => {
    const levels = Array.from(
      { length: 40 },
      (_, i) => `${i + 2} 0 obj\n<< /Type /Pages /Count 1 /Kids [${i + 3} 0 R ${i + 3} 0 R] >>\nendobj\n`,
    );
    const leaf = '42 0 obj\n<< /Type /Page >>\nendobj\n';
    const tree = `%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n${levels.join('')}${leaf}`;
    const end = 'trailer\n<< /Root 1 0 R /Size 43 >>\nstartxref\n0\n%%EOF\n';
    expect((await look(`${tree}${end}${leaf}${end}`)).pages).toBe(1);
  });

  const odd = (objects: readonly string[], trailer = '/Root 1 0 R') =>
    `%PDF-1.4\n${objects.map((one, i) => `${i + 1} 0 obj\n${one}\nendobj\n`).join('')}trailer\n<< ${trailer} >>\nstartxref\n0\n%%EOF\n`;
  const page = '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9 9] >>';
  it.each([
    [
      'a page that was taken out of the tree',
      ['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Count 1 /Kids [3 0 R] >>', page, page],
      1,
    ],
    [
      'a page that does not say that it is one',
      [
        '<< /Type /Catalog /Pages 2 0 R >>',
        '<< /Type /Pages /Count 2 /Kids [3 0 R 4 0 R] >>',
        page,
        '<< /Parent 2 0 R >>',
      ],
      2,
    ],
    [
      'a count that is wrong',
      ['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Count 7 /Kids [3 0 R] >>', page],
      1,
    ],
    [
      'a text that speaks of pages',
      [
        '<< /Type /Catalog /Pages 2 0 R >>',
        '<< /Type /Pages /Count 1 /Kids [3 0 R] >>',
        page,
        '(/Type /Page /Type /Page)',
      ],
      1,
    ],
    [
      'no page that says so',
      [
        '<< /Type /Catalog /Pages 2 0 R >>',
        '<< /Kids [3 0 R 4 0 R] /Count 2 >>',
        '<< /Parent 2 0 R >>',
        '<< /Parent 2 0 R >>',
      ],
      2,
    ],
    [
      'branches',
      [
        '<< /Type /Catalog /Pages 2 0 R >>',
        '<< /Type /Pages /Kids [3 0 R 6 0 R] /Count 3 /Resources << /Font << >> >> >>',
        '<< /Type /Pages /Kids [4 0 R 5 0 R] /Count 2 >>',
        page,
        page,
        page,
      ],
      3,
    ],
  ])('counts the pages of a tree with %s', async (_, objects, pages) => {
    expect((await look(odd(objects))).pages).toBe(pages);
  });

  it('is not kept long by what is none', async () => {
    const pages = '/Type /Page '.repeat(3);
    const junk = `%PDF-1.7\n${pages}${'a'.repeat(4_000_000)}\nstartxref\n0\n%%EOF\nstartxref\n0\n%%EOF`;
    expect((await look(junk)).pages).toBe(3);
  });

  // A pattern that goes back over what it has read takes longer than anyone waits over the first two.
  it.each([
    ['strings in an array that does not end', `[${'(a)'.repeat(150_000)}`],
    ['a string that does not end', `(${'\\('.repeat(200_000)}`],
    ['opening brackets', '(['.repeat(200_000)],
    ['opening angles', '< '.repeat(200_000)],
  ])('reads %s once', async (_, content) => {
    const stream = `9 0 obj\n<< /Length ${content.length} >>\nstream\n${content}\nendstream\nendobj\n`;
    const { pages, text } = await look(
      `%PDF-1.7\n1 0 obj\n<< /Type /Page >>\nendobj\n${stream}startxref\n0\n%%EOF\n`,
    );
    expect([pages, text]).toEqual([1, '']);
  });

  it('looks for the end of a stream that has none once', async () => {
    const streams = 'stream\n'.repeat(500_000);
    const { pages } = await look(
      `%PDF-1.7\n1 0 obj\n<< /Type /Page >>\nendobj\n${streams}startxref\n0\n%%EOF\n`,
    );
    expect(pages).toBe(1);
  });

  // ISO 32000-2 §7.3.4, §9.4.3.
  it.each([
    ['[(Bill) -250 (of) 12 (lading)] TJ (4711)Tj', 'Billoflading\n4711'],
    ['(a \\(b\\) \\101 (c)) Tj', 'a (b) A (c)'],
    ['<53 65616C> Tj', 'Seal'],
    ["/F1 12 Tf (x) Tj 0 -14 Td (y) '", 'x\ny'],
    ['(not shown) 3 Tr << /A (name) >> BDC (shown) Tj', 'shown'],
  ])('reads the text of %s', (content, text) => {
    expect(plainText(Buffer.from(content, 'latin1'))).toBe(text);
  });

  it('reads letters that stand for themselves', async () => {
    expect((await look(await pdf(1, 'BILL OF LADING 4711'))).text).toContain('BILL OF LADING 4711');
  });
});

describe('what a paper calls itself', () => {
  it.each([
    ['STRAIGHT BILL OF LADING\nNo. 4711', 'bill-of-lading'],
    ['Example Hauliers\nCarta de Porte 12', 'bill-of-lading'],
    ['NOTICE OF REJECTION\n\nThe bill of lading calls for 36 degrees.', 'rejection-notice'],
    ['Certificado de inspección\nNo 5', 'inspection-certificate'],
    [
      'Please find the proof of delivery that the receiver signed and the bill of lading attached.',
      undefined,
    ],
    ['CLAIM\n\nTo: Example Haulage\nBill of lading 4711\nInvoice no. 12', 'claim-letter'],
    ['To the claims desk\nof Example Haulage\n\nBill of lading: 4711\nWe claim 300 USD', undefined],
    ['Dear Sirs\n\nre your delivery\nBill of lading 4711', undefined],
    ['Example Hauliers\nYuma\n\nBILL OF LADING 4711', 'bill-of-lading'],
    ['preinvoices', undefined],
    ['', undefined],
  ])('%j', (text, is) => expect(documentByHeading(text)?.is).toBe(is));

  it.each([
    ['papers/Bill_of_Lading-4711.pdf', 'bill-of-lading'],
    ['pre-trip report.pdf', 'pre-trip-report'],
    ['IMG_1.pdf', undefined],
  ])('by its file name: %s', (name, is) => expect(documentByFileName(name)?.is).toBe(is));
});
