import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { PDFDict, PDFHexString, PDFName, PDFRef, PDFString } from '#pdf-lib';
import { canonicalBytes } from '../../../src/core/ledger/canonical.js';
import { leafHash, sha256Of, treeHash } from '../../../src/core/ledger/tree.js';
import type { Manifest } from '../../../src/core/model/manifest.js';
import { toInstant } from '../../../src/core/model/time.js';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { signPdf } from '../../../src/signing/sign-pdf.js';
import {
  asLines,
  ledgerEntries,
  type Parts,
  relist,
  sampleParts,
  samplePdf,
  text,
} from '../../signing/sample.js';
import { countingBytes, SIGNED_AT } from '../../signing/sample-identity.js';
import { dossier, failed, stranger } from './forge.js';

/** Everything here is signed anew by a stranger whom the reader has been talked into trusting. */
const trusted = [stranger.certificateDer];
async function failures(parts: Parts): Promise<string[]> {
  const found = await verifyDossier(await dossier(parts, stranger), { trusted });
  expect(found.verdict).toBe('broken');
  return failed(found);
}
const withBytes = (name: string, bytes: Uint8Array): Parts => {
  const parts = sampleParts();
  return { ...parts, attached: parts.attached.map((one) => (one.name === name ? { ...one, bytes } : one)) };
};
const withManifest = (change: Partial<Manifest>): Parts => {
  const parts = sampleParts();
  return { ...parts, manifest: { ...parts.manifest, ...change } };
};
/** A record whose ledger, leaves and root were all made anew to fit each other. */
const withLedger = (entries: Uint8Array[]): Parts => {
  const parts = relist(withBytes('ledger.jsonl', asLines(entries)));
  const leaves = entries.map(leafHash);
  return {
    ...parts,
    manifest: { ...parts.manifest, record: { size: leaves.length, root: treeHash(leaves), leaves } },
  };
};
const [facts = text(''), photo = text(''), paper = text(''), pulp = text('')] = ledgerEntries();
const edited = (entry: Uint8Array, old: string, by: string) => {
  const words = new TextDecoder().decode(entry);
  expect(words).toContain(old);
  return text(words.replace(old, by));
};

describe('attachments and manifest', () => {
  it('an attachment that was swapped for another is found, whoever signed', async () => {
    expect(await failures(withBytes('e1.jpg', text('another picture')))).toEqual(['attachments.bytes']);
  });

  it('a swapped attachment that was listed anew is not the one the ledger received', async () => {
    expect(await failures(relist(withBytes('e1.jpg', text('another picture'))))).toEqual([
      'exhibits.originals',
    ]);
  });

  it('and listed as exhibit too, is not the one the ledger received', async () => {
    const parts = relist(withBytes('e1.jpg', text('another picture')));
    const exhibits = parts.manifest.exhibits.map((one) =>
      one.file === undefined || one.exhibit !== 1
        ? one
        : { ...one, file: { ...one.file, bytes: 15, sha256: sha256Of(text('another picture')) } },
    );
    expect(await failures({ ...parts, manifest: { ...parts.manifest, exhibits } })).toEqual([
      'exhibits.ledger',
      'exhibits.complete',
    ]);
  });

  it('a missing attachment', async () => {
    const parts = sampleParts();
    const attached = parts.attached.filter(({ name }) => name !== 'e1.jpg');
    expect(await failures({ ...parts, attached })).toEqual(['attachments.complete']);
  });

  it('one too many', async () => {
    const parts = sampleParts();
    const more = { name: 'extra.txt', bytes: text('x'), type: 'text/plain', what: 'original' as const };
    expect(await failures({ ...parts, attached: [...parts.attached, more] })).toEqual([
      'attachments.complete',
    ]);
  });

  it('two under one name', async () => {
    const parts = sampleParts();
    const more = { name: 'e1.jpg', bytes: text('x'), type: 'image/jpeg', what: 'original' as const };
    expect(await failures({ ...parts, attached: [...parts.attached, more] })).toEqual(['attachments.list']);
  });

  it('one listed twice', async () => {
    const { attachments } = sampleParts().manifest;
    expect(await failures(withManifest({ attachments: [...attachments, ...attachments.slice(-1)] }))).toEqual(
      ['attachments.complete'],
    );
  });

  const manifestAs = (bytes: Uint8Array) => ({
    ...sampleParts(),
    attached: [
      ...sampleParts().attached,
      { name: 'manifest.json', bytes, type: 'application/json', what: 'computed-data' as const },
    ],
  });
  const right = canonicalBytes(sampleParts().manifest);
  const words = new TextDecoder().decode(right);
  it.each<[string, Uint8Array]>([
    ['cut off', right.subarray(0, right.length / 2)],
    ['of nothing', text('null')],
    ['not JSON', text('{')],
    ['not UTF-8', Uint8Array.of(0x22, 0xff, 0x22)],
    ['with a space more', text(words.replace(':', ': '))],
    ['with a key twice', text(words.replace('"delivery"', '"delivery":"2026-0714-B","delivery"'))],
    ['with a key more', text(words.replace('{', '{"a":1,'))],
    ['of another version', text(words.replace('manifest-1', 'manifest-2'))],
    ['of brackets without end', text('['.repeat(100_000))],
    ['with half a character', text('"\\ud800"')],
  ])('a manifest %s', async (_, bytes) => {
    const { attached } = manifestAs(bytes);
    const document = samplePdfWithManifest(attached);
    const found = await verifyDossier(await signed(await document), { trusted });
    expect(failed(found)).toEqual(['manifest.present']);
  });
});

/** The sample without its own manifest, so that a damaged one can take the place. */
async function samplePdfWithManifest(attached: Parts['attached']): Promise<Uint8Array> {
  const { PDFDocument } = await import('#pdf-lib');
  const document = await PDFDocument.create();
  document.addPage([100, 100]);
  for (const { name, bytes } of attached) await document.attach(bytes, name, { description: name });
  return document.save();
}

const signed = (pdf: Uint8Array) =>
  signPdf(pdf, stranger, { at: toInstant(SIGNED_AT.getTime()), random: countingBytes() });

describe('the list of attachments', () => {
  const failuresWith = async (touch: Parameters<typeof samplePdf>[1]) =>
    failed(await verifyDossier(await signed(await samplePdf(sampleParts(), touch)), { trusted }));

  it('a file embedded without being listed', async () => {
    expect(
      await failuresWith(({ context }) => {
        const stream = context.register(context.stream('hidden'));
        context.register(
          context.obj({ Type: 'Filespec', F: PDFString.of('x'), UF: PDFString.of('x'), EF: { F: stream } }),
        );
      }),
    ).toEqual(['attachments.list']);
  });

  it.each<[string, (specification: PDFDict) => void]>([
    ['a second name for old programs', (s) => s.set(PDFName.of('F'), PDFString.of('other.txt'))],
    ['another name in the list', (s) => s.set(PDFName.of('UF'), PDFHexString.fromText('other.txt'))],
    ['no name', (s) => s.delete(PDFName.of('UF'))],
    [
      'two contents',
      (s) =>
        s
          .lookup(PDFName.of('EF'), PDFDict)
          .set(PDFName.of('UF'), s.context.register(s.context.stream('other'))),
    ],
    ['no content', (s) => s.set(PDFName.of('EF'), s.context.obj({}))],
  ])('%s', async (_, change) => {
    const found = await failuresWith(async (document) => {
      await document.flush();
      for (const [, object] of document.context.enumerateIndirectObjects())
        if (object instanceof PDFDict && String(object.get(PDFName.of('F'))) === '(e1.jpg)') change(object);
    });
    expect(found).toEqual(['attachments.list']);
  });

  it('a list that goes in circles', async () => {
    const found = await failuresWith(async (document) => {
      await document.flush();
      const names = document.catalog.lookup(PDFName.of('Names'), PDFDict);
      const ref = document.context.nextRef();
      document.context.assign(ref, document.context.obj({ Kids: [ref] }));
      names.set(PDFName.of('EmbeddedFiles'), ref);
    });
    expect(found).toEqual(['attachments.list']);
  });

  it('a small stream that unpacks to more than the manifest says', async () => {
    const found = await failuresWith(async (document) => {
      await document.flush();
      const { context } = document;
      const bomb = context.stream(deflateSync(Buffer.alloc(50_000_000)), { Filter: 'FlateDecode' });
      for (const [, object] of context.enumerateIndirectObjects())
        if (object instanceof PDFDict && String(object.get(PDFName.of('F'))) === '(e1.jpg)') {
          const old = object.lookup(PDFName.of('EF'), PDFDict).get(PDFName.of('F'));
          if (old instanceof PDFRef) context.delete(old);
          object.set(PDFName.of('EF'), context.obj({ F: context.register(bomb) }));
        }
    });
    expect(found).toEqual(['attachments.bytes']);
  });
});

describe('record and ledger', () => {
  it.each<[string, () => Parts, string[]]>([
    [
      'an edited entry',
      () => relist(withBytes('ledger.jsonl', asLines([facts, photo, paper, edited(pulp, '35.2', '33.2')]))),
      ['ledger.leaves'],
    ],
    [
      'entries in another order',
      () => relist(withBytes('ledger.jsonl', asLines([facts, paper, photo, pulp]))),
      ['ledger.readable', 'ledger.leaves'],
    ],
    [
      'an entry too few',
      () => relist(withBytes('ledger.jsonl', asLines([facts, photo, paper]))),
      ['ledger.leaves', 'exhibits.ledger'],
    ],
    [
      'an entry too many',
      () =>
        relist(
          withBytes('ledger.jsonl', asLines([facts, photo, paper, pulp, edited(pulp, '"seq":3', '"seq":4')])),
        ),
      ['ledger.readable', 'ledger.leaves'],
    ],
    [
      'a last line cut off',
      () => relist(withBytes('ledger.jsonl', asLines([facts, photo, paper, pulp]).subarray(0, -1))),
      ['ledger.readable'],
    ],
    [
      'lines that end in the other way',
      () =>
        relist(
          withBytes(
            'ledger.jsonl',
            text(new TextDecoder().decode(asLines([facts, photo, paper, pulp])).replaceAll('\n', '\r\n')),
          ),
        ),
      ['ledger.readable', 'ledger.leaves'],
    ],
    [
      'another root',
      () => withManifest({ record: { ...sampleParts().manifest.record, root: sha256Of(text('x')) } }),
      ['record.root'],
    ],
    [
      'another size',
      () => withManifest({ record: { ...sampleParts().manifest.record, size: 5 } }),
      ['record.root'],
    ],
    [
      'a swapped order made to fit',
      () =>
        withLedger([facts, edited(paper, '"seq":2', '"seq":1'), edited(photo, '"seq":1', '"seq":2'), pulp]),
      ['exhibits.ledger'],
    ],
    [
      'a gap in the numbers made to fit',
      () => withLedger([facts, photo, paper, edited(pulp, '"seq":3', '"seq":4')]),
      ['ledger.readable'],
    ],
    [
      'an entry of an unknown kind made to fit',
      () => withLedger([facts, photo, paper, edited(pulp, 'reading-recorded', 'reading-invented')]),
      ['ledger.readable'],
    ],
    [
      'a key twice in an entry made to fit',
      () => withLedger([facts, photo, paper, edited(pulp, '"by"', '"by":"A","by"')]),
      ['ledger.readable'],
    ],
    [
      'another delivery in the ledger made to fit',
      () => withLedger([edited(facts, '2026-0714-A', '2026-0714-B'), photo, paper, pulp]),
      ['delivery.same'],
    ],
    ['another delivery in the manifest', () => withManifest({ delivery: '2026-0714-B' }), ['delivery.same']],
    [
      'other facts attached',
      () => relist(withBytes('delivery.yaml', text('delivery: 2026-0714-A'))),
      ['delivery.same'],
    ],
    [
      'another rule set attached',
      () => relist(withBytes('rule-set.yaml', text('ruleSet: mild'))),
      ['rule-set.same'],
    ],
    [
      'evidence that speaks against, kept off the list',
      () =>
        withManifest({
          leftOut: [],
          exhibits: sampleParts().manifest.exhibits.filter(({ exhibit }) => exhibit !== 2),
        }),
      ['exhibits.complete'],
    ],
    [
      'an original that is neither inside nor left out',
      () => withManifest({ leftOut: [] }),
      ['exhibits.originals'],
    ],
    [
      'two exhibits of one number',
      () =>
        withManifest({ exhibits: sampleParts().manifest.exhibits.map((one) => ({ ...one, exhibit: 1 })) }),
      ['exhibits.ledger'],
    ],
  ])('%s', async (_, make, ids) => {
    expect((await failures(make())).sort()).toEqual([...ids].sort());
  });

  it('names the entry', async () => {
    const parts = relist(
      withBytes('ledger.jsonl', asLines([facts, photo, paper, edited(pulp, '35.2', '33.2')])),
    );
    const { checks } = await verifyDossier(await dossier(parts));
    expect(checks.find(({ id }) => id === 'ledger.leaves')?.detail).toBe(
      'entry 3 is not the one whose hash is listed',
    );
  });
});
