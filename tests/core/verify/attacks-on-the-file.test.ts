import { describe, expect, it } from 'vitest';
import { PDFDocument, PDFName, PDFString } from '#pdf-lib';
import { toInstant } from '../../../src/core/model/time.js';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { signPdf } from '../../../src/signing/sign-pdf.js';
import { sampleParts, samplePdf } from '../../signing/sample.js';
import { countingBytes, SIGNED_AT } from '../../signing/sample-identity.js';
import { dossier, failed, identity, overwrite, prepared, signAs, signedAfter, updated } from './forge.js';

const trusted = [identity.certificateDer];
async function failures(bytes: Uint8Array): Promise<string[]> {
  const found = await verifyDossier(bytes, { trusted });
  expect(found.verdict).toBe('broken');
  return failed(found);
}
const latin1 = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');

describe('a file that was updated after signing (incremental saving attack, Mladenov et al., CCS 2019)', () => {
  it('with a page in place of the old one', async () => {
    const signed = await dossier();
    const page = Number(/(\d+) 0 obj\n<<\n\/Type \/Page\n/.exec(latin1(signed))?.[1]);
    const forged = updated(signed, page, '<< /Type /Page /Parent 1 0 R /MediaBox [0 0 300 200] >>');
    // Other readers open it without complaint: it is a valid update.
    expect((await PDFDocument.load(forged)).getPageCount()).toBe(1);
    expect(await failures(forged)).toEqual(['pdf.structure']);
  });

  it('with a second cross-reference table and no new object', async () => {
    const signed = latin1(await dossier());
    const tail = signed.slice(signed.lastIndexOf('xref\n0 '));
    expect(await failures(Buffer.from(`${signed}\n${tail}`, 'latin1'))).toEqual(['pdf.structure']);
  });
});

describe('a signature that does not cover everything (universal forgery, signature wrapping; same paper)', () => {
  const range = async () =>
    /\/ByteRange (\[0 \d+ \d+ \d+ *\])/.exec(latin1((await prepared()).bytes))?.[1] ?? '';
  const numbers = async () => ((await range()).match(/\d+/g) ?? []).map(Number);
  const other = async (four: (number | string)[]) => {
    const old = await range();
    return signedAfter(old, `[${four.join(' ')}`.padEnd(old.length - 1, ' ').concat(']'));
  };

  it.each<[string, (n: number[]) => (number | string)[]]>([
    ['it starts later', ([, b = 0, c = 0, d = 0]) => [1, b - 1, c, d]],
    ['it ends earlier', ([, b = 0, c = 0, d = 0]) => [0, b, c, d - 1]],
    ['it ends later than the file', ([, b = 0, c = 0, d = 0]) => [0, b, c, d + 1]],
    ['the gap begins earlier', ([, b = 0, c = 0, d = 0]) => [0, b - 1, c, d]],
    ['the gap ends later', ([, b = 0, c = 0, d = 0]) => [0, b, c + 1, d - 1]],
    ['the ranges overlap', ([, , c = 0, d = 0]) => [0, c + d, 0, c + d]],
    ['a number is negative', ([, b = 0, c = 0, d = 0]) => [0, b, -c, d]],
    ['a number is a fraction', ([, b = 0, c = 0]) => [0, b, c, '7.0']],
    ['there are three numbers', ([, b = 0, c = 0]) => [0, b, c]],
    ['there are six', ([, b = 0, c = 0]) => [0, b, c, 1, 2, 3]],
    ['it is words', () => ['/All']],
    ['it is empty', () => []],
  ])('%s', async (_, change) => {
    expect(await failures(await other(change(await numbers())))).toEqual(['signature.range']);
  });

  it.each<[string, string, string, string[]]>([
    ['no byte range', '/ByteRange', '/ByteRangX', ['signature.range']],
    ['no contents', '/Contents <', '/ContentX <', ['signature.range']],
    ['two byte ranges', '/Filter /Adobe.PPKLite', '/ByteRange [0 1 2 3]  ', ['pdf.structure']],
    ['contents with a gap', `0000>`, `000 >`, ['signature.range']],
    ['no type', '/Type /Sig ', '/Typf /Sig ', ['signature.certification']],
    ['an older kind', 'ETSI.CAdES.detached', 'adbe.pkcs7.detached', ['signature.certification']],
    ['changes allowed', '/P 1', '/P 3', ['signature.certification']],
    ['no certification', '/Perms', '/Permz', ['signature.certification']],
    ['no form', '/AcroForm', '/AcroFirm', ['signature.certification']],
    ['no time', '/M (D:', '/N (D:', ['signature.time', 'certificate.validity']],
    ['a time that is none', '/M (D:2026', '/M (D:20x6', ['signature.time', 'certificate.validity']],
    ['a time before the certificate', '/M (D:2026', '/M (D:2025', ['signature.time', 'certificate.validity']],
    ['a time after the certificate', '/M (D:2026', '/M (D:2032', ['signature.time', 'certificate.validity']],
  ])('%s', async (_, old, by, ids) => {
    // Changed before it was signed, so that the signature itself holds.
    expect(await failures(await signedAfter(old, by))).toEqual(ids);
  });

  it('a time that has not come yet', async () => {
    const found = await verifyDossier(await dossier(), { trusted, at: new Date(Date.UTC(2026, 6, 15)) });
    expect(failed(found)).toEqual(['signature.time']);
  });
});

describe('a file with something beside the one signature', () => {
  const signed = async (touch: (document: PDFDocument) => void) =>
    signPdf(await samplePdf(sampleParts(), touch), identity, {
      at: toInstant(SIGNED_AT.getTime()),
      random: countingBytes(),
    });

  it.each<[string, (document: PDFDocument) => unknown, string]>([
    [
      'a second signature',
      ({ context }) =>
        context.register(context.obj({ Type: 'Sig', Filter: 'Adobe.PPKLite', ByteRange: [0, 1, 2, 3] })),
      'signature.present',
    ],
    [
      'a second signature inside another object',
      ({ context }) => context.register(context.obj({ Hidden: [{ SubFilter: 'ETSI.CAdES.detached' }] })),
      'signature.present',
    ],
    [
      'a second field for a signature',
      ({ context }) => context.register(context.obj({ FT: 'Sig', T: PDFString.of('Later') })),
      'signature.present',
    ],
    [
      'a script',
      ({ context, catalog }) =>
        catalog.set(PDFName.of('OpenAction'), context.obj({ S: 'JavaScript', JS: PDFString.of('1') })),
      'pdf.active-content',
    ],
    [
      'an action at a word of the page',
      ({ context }) => context.register(context.obj({ S: 'Span', AA: {} })),
      'pdf.active-content',
    ],
    [
      'a call of a program',
      ({ context }) => context.register(context.obj({ S: 'Launch', F: PDFString.of('x') })),
      'pdf.active-content',
    ],
    [
      'a jump into another file',
      ({ context }) => context.register(context.obj({ Type: 'Action', S: 'GoToR' })),
      'pdf.active-content',
    ],
    [
      'a film',
      ({ context }) => context.register(context.obj({ Type: 'Annot', Subtype: 'Movie', Rect: [0, 0, 1, 1] })),
      'pdf.active-content',
    ],
    [
      'a call of a program after a link, that says it is an element of the structure',
      ({ context }) =>
        context.register(
          context.obj({
            S: 'URI',
            URI: PDFString.of('https://example.org'),
            Next: { Type: 'StructElem', S: 'Launch', F: PDFString.of('x') },
          }),
        ),
      'pdf.active-content',
    ],
    [
      'a call of a program whose name stands elsewhere',
      ({ context }) =>
        context.register(context.obj({ S: context.register(PDFName.of('Launch')), F: PDFString.of('x') })),
      'pdf.active-content',
    ],
    [
      'an outline that leads into another file',
      ({ context }) =>
        context.register(
          context.obj({ Title: PDFString.of('x'), A: { S: 'Unheard', F: PDFString.of('x') } }),
        ),
      'pdf.active-content',
    ],
    [
      'one of several actions that follow each other',
      ({ context }) => context.register(context.obj({ S: 'URI', Next: [{ S: 'GoTo' }, { S: 'Unheard' }] })),
      'pdf.active-content',
    ],
    [
      'a script behind an escaped name',
      ({ context }) => context.register(context.obj({ 'J#53': PDFString.of('1') })),
      'pdf.active-content',
    ],
  ])('%s', async (_, touch, id) => {
    expect(await failures(await signed((document) => void touch(document)))).toEqual([id]);
  });

  it.each<[string, (document: PDFDocument) => unknown]>([
    [
      'a field to fill in that the form does not list',
      ({ context }) =>
        context.register(context.obj({ Type: 'Annot', Subtype: 'Widget', FT: 'Tx', Rect: [0, 0, 9, 9] })),
    ],
    [
      'a widget without a kind, inside another object',
      ({ context }) => context.register(context.obj({ Kids: [{ Subtype: 'Widget', Rect: [0, 0, 9, 9] }] })),
    ],
  ])('%s', async (_, touch) => {
    expect(await failures(await signed((document) => void touch(document)))).toEqual([
      'signature.certification',
    ]);
  });

  it('text in an object that looks like a signature is only text', async () => {
    const bytes = await signed(({ context }) => {
      context.register(PDFString.of('/Type /Sig /ByteRange [0 1 2 3] /Contents <00>'));
      context.register(context.stream('9 0 obj << /Type /Sig /ByteRange [0 1 2 3] /Contents <00> >> endobj'));
    });
    expect((await verifyDossier(bytes, { trusted })).verdict).toBe('intact');
  });
});

describe('two readings of one file', () => {
  it.each<[string, string, string]>([
    ['a comment in an object', '/Type /Pages', '/Type%/Page '],
    ['a reference of another generation', ' 0 R', ' 1 R'],
    ['an entry that points elsewhere', ' 00000 n \n', ' 00001 n \n'],
    ['a table that another is said to precede', '/Info ', '/Prev '],
  ])('%s', async (_, old, by) => {
    const one = await prepared();
    const bytes = overwrite(one.bytes, old, by);
    expect(await failures(signAs({ ...one, bytes }))).toContain('pdf.structure');
  });

  it('bytes hidden between two objects', async () => {
    const one = latin1(await dossier());
    expect(await failures(Buffer.from(one.replace('endobj\n\n', 'endobj\n%\n'), 'latin1'))).toEqual([
      'pdf.structure',
    ]);
  });
});
