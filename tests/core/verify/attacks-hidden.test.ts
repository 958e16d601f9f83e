import { describe, expect, it } from 'vitest';
import { PDFArray, PDFDict, type PDFDocument, PDFName, PDFNumber, PDFString } from '#pdf-lib';
import { toInstant } from '../../../src/core/model/time.js';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { signPdf } from '../../../src/signing/sign-pdf.js';
import { sampleParts, samplePdf } from '../../signing/sample.js';
import { countingBytes, SIGNED_AT } from '../../signing/sample-identity.js';
import { failed, identity, overwrite, prepared, signAs, signedAfter } from './forge.js';

/** Everything here is signed by someone the reader trusts: what is hidden was there before. */
const trusted = [identity.certificateDer];
const key = PDFName.of;
type Touch = (document: PDFDocument) => void;
async function failures(touch: Touch, finish?: Touch): Promise<string[]> {
  const pdf = await samplePdf(sampleParts(), touch, finish);
  const bytes = await signPdf(pdf, identity, { at: toInstant(SIGNED_AT.getTime()), random: countingBytes() });
  const found = await verifyDossier(bytes, { trusted });
  expect(found.verdict).toBe('broken');
  return failed(found);
}
const pages = ({ catalog }: PDFDocument) => catalog.lookup(key('Pages'), PDFDict);
const nothing = () => undefined;

describe('content laid in before signing, to be shown later (shadow attacks, NDSS 2021)', () => {
  it.each<[string, Touch]>([
    [
      'an object that nothing refers to',
      ({ context }) => context.register(context.obj({ Type: 'Font', BaseFont: 'Other' })),
    ],
    [
      'a page that is in no list',
      (d) =>
        d.context.register(
          d.context.obj({ Type: 'Page', Parent: d.catalog.get(key('Pages')), MediaBox: [0, 0, 300, 200] }),
        ),
    ],
    [
      'two objects that only refer to each other',
      ({ context }) => {
        const [a, b] = [context.nextRef(), context.nextRef()];
        context.assign(a, context.obj({ Next: b }));
        context.assign(b, context.obj({ Next: a }));
      },
    ],
    [
      'a reference to an object that is still to come',
      ({ context, catalog }) => catalog.set(key('Later'), context.nextRef()),
    ],
  ])('%s', async (_, touch) => {
    expect(await failures((document) => void touch(document), nothing)).toEqual(['pdf.hidden']);
  });

  it.each<[string, Touch]>([
    [
      'a page that is referred to from elsewhere alone',
      (d) => d.context.register(d.context.obj({ Type: 'Page', MediaBox: [0, 0, 300, 200] })),
    ],
    [
      'a page that is counted twice',
      (d) =>
        pages(d)
          .lookup(key('Kids'), PDFArray)
          .push(pages(d).lookup(key('Kids'), PDFArray).get(0)),
    ],
    ['fewer pages counted than there are', (d) => pages(d).set(key('Count'), PDFNumber.of(0))],
    ['more pages counted than there are', (d) => pages(d).set(key('Count'), PDFNumber.of(2))],
  ])('%s', async (_, touch) => {
    const found = await failures(nothing, (document) => {
      touch(document);
      document.catalog.set(
        key('Held'),
        document.context.obj(document.context.enumerateIndirectObjects().map(([ref]) => ref)),
      );
    });
    expect(found).toEqual(['pdf.hidden']);
  });
});

it('pages that go in circles', async () => {
  const one = await prepared();
  const [, own = '', kid = ''] =
    /\n(\d+) 0 obj\n<<\n\/Type \/Pages\n\/Kids \[ (\d+) 0 R \]/.exec(
      Buffer.from(one.bytes).toString('latin1'),
    ) ?? [];
  const bytes = overwrite(one.bytes, `/Kids [ ${kid} 0 R ]`, `/Kids [ ${own} 0 R ]`);
  expect(failed(await verifyDossier(signAs({ ...one, bytes }), { trusted }))).toEqual(['pdf.hidden']);
});

describe('content that some programs show and others do not', () => {
  it.each<[string, Touch]>([
    [
      'layers that can be switched (ISO 32000-1 §8.11)',
      ({ context, catalog }) => catalog.set(key('OCProperties'), context.obj({ OCGs: [], D: {} })),
    ],
    [
      'a page of another file (§8.10.4)',
      ({ context }) => context.register(context.stream('', { Subtype: 'Form', Ref: { Page: 0 } })),
    ],
    [
      'a program for the printer (§8.8.2)',
      ({ context }) => context.register(context.stream('', { Subtype: 'PS' })),
    ],
    [
      'a link that calls a script',
      ({ context }) => context.register(context.obj({ S: 'URI', URI: PDFString.of('javascript:alert(1)') })),
    ],
    [
      'a link to a file of the reader',
      ({ context }) => context.register(context.obj({ S: 'URI', URI: PDFString.of('file:///etc/passwd') })),
    ],
  ])('%s', async (_, touch) => {
    expect(await failures((document) => void touch(document))).toEqual(['pdf.active-content']);
  });

  it.each<[string, object]>([
    ['a picture that belongs to a layer', { OC: { Type: 'OCG' } }],
    ['another picture on paper than on the screen (§8.9.5.4)', { Alternates: [] }],
  ])('%s', async (_, more) => {
    const add: Touch = ({ context }) =>
      void context.register(context.stream('', { Subtype: 'Image', ...more }));
    expect(await failures(add)).toEqual(['pdf.active-content', 'plates.listed']);
  });

  it('a link to the web is no fault', async () => {
    const pdf = await samplePdf(sampleParts(), ({ context }) => {
      context.register(context.obj({ S: 'URI', URI: PDFString.of('https://example.org/x') }));
    });
    const bytes = await signPdf(pdf, identity, {
      at: toInstant(SIGNED_AT.getTime()),
      random: countingBytes(),
    });
    expect((await verifyDossier(bytes, { trusted })).verdict).toBe('intact');
  });

  it('objects beyond the size that the trailer states (ISO 32000-1 §7.5.5)', async () => {
    const text = Buffer.from((await prepared()).bytes).toString('latin1');
    const size = /\/Size (\d+)\n\/Root/.exec(text)?.[1] ?? '';
    const found = await verifyDossier(
      await signedAfter(`/Size ${size}\n/Root`, `/Size ${Number(size) - 1}\n/Root`),
      {
        trusted,
      },
    );
    expect(failed(found)).toContain('pdf.structure');
  });
});

describe('a field that draws over the page (certification attacks, IEEE S&P 2021)', () => {
  it('in another state', async () => {
    const found = await verifyDossier(await signedAfter('/AP <<\n/N ', '/AP <<\n/D '), { trusted });
    expect(failed(found)).toEqual(['signature.certification']);
  });

  it('with words of its own', async () => {
    const one = await prepared();
    const text = Buffer.from(one.bytes).toString('latin1');
    const appearance = /\/AP <<\n\/N (\d+) 0 R/.exec(text)?.[1] ?? '';
    // A stream of the same file that is not empty takes the place of the empty one.
    const other = /\n(\d+) 0 obj\n<<(?:(?!endobj)[\s\S])*?\/Type \/EmbeddedFile/.exec(text)?.[1] ?? '';
    expect(other.length).toBe(appearance.length);
    const bytes = overwrite(one.bytes, `/N ${appearance} 0 R`, `/N ${other} 0 R`);
    expect(failed(await verifyDossier(signAs({ ...one, bytes }), { trusted }))).toContain(
      'signature.certification',
    );
  });
});

describe('embedded files beside the list', () => {
  it.each<[string, Touch]>([
    [
      'a stream that no description names',
      ({ context }) => context.register(context.stream('hidden', { Type: 'EmbeddedFile' })),
    ],
    [
      'a related file (ISO 32000-1 §7.11.4.3)',
      ({ context }) => {
        const related = context.register(context.stream('hidden'));
        for (const [, object] of context.enumerateIndirectObjects())
          if (object instanceof PDFDict && String(object.get(key('F'))) === '(e1.jpg)')
            object.set(key('RF'), context.obj({ F: [PDFString.of('x'), related] }));
      },
    ],
  ])('%s', async (_, touch) => {
    const pdf = await samplePdf(sampleParts(), async (document) => {
      await document.flush();
      touch(document);
    });
    const bytes = await signPdf(pdf, identity, {
      at: toInstant(SIGNED_AT.getTime()),
      random: countingBytes(),
    });
    expect(failed(await verifyDossier(bytes, { trusted }))).toEqual(['attachments.list']);
  });
});

describe('a signature whose parts stand elsewhere', () => {
  it.each<[string, RegExp, string]>([
    ['the byte range', /\/ByteRange \[0 \d+ \d+ \d+ *\]/, '/ByteRange 1 0 R'],
    ['its permissions', /\/P 1 \/V \/1\.2/, '/P 2 /V /1.2'],
    ['another method', /\/DocMDP \/TransformParams/, '/UR3\u0020\u0020\u0020 /TransformParams'],
  ])('%s', async (_, old, by) => {
    const one = await prepared();
    const words = old.exec(Buffer.from(one.bytes).toString('latin1'))?.[0] ?? '';
    const bytes = overwrite(one.bytes, words, by.padEnd(words.length, ' '));
    const found = failed(await verifyDossier(signAs({ ...one, bytes }), { trusted }));
    expect(found.length).toBe(1);
    expect(found[0]).toMatch(/^signature\.(range|certification)$/);
  });
});
