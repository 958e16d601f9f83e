import { describe, expect, it } from 'vitest';
import { canonicalBytes } from '../../../src/core/ledger/canonical.js';
import { leafHash, sha256Of, treeHash } from '../../../src/core/ledger/tree.js';
import type {
  Attachment,
  Exhibit,
  Manifest,
  OmittedOriginal,
  Volume,
} from '../../../src/core/model/manifest.js';
import { exhibit } from '../../../src/core/model/manifest.js';
import { toInstant } from '../../../src/core/model/time.js';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { signPdf } from '../../../src/signing/sign-pdf.js';
import {
  asLines,
  ledgerEntries,
  PAPER,
  type Parts,
  PHOTO,
  relist,
  sampleParts,
  text,
} from '../../signing/sample.js';
import { countingBytes, SIGNED_AT } from '../../signing/sample-identity.js';
import { dossier, failed, stranger } from './forge.js';

/** Everything here is signed by someone the reader trusts, and lies in what the signature covers. */
const trusted = [stranger.certificateDer];
const judged = async (parts: Parts) => verifyDossier(await dossier(parts, stranger), { trusted });
async function failures(parts: Parts): Promise<string[]> {
  const found = await judged(parts);
  expect(found.verdict).toBe('broken');
  return failed(found);
}
const claiming = (change: (manifest: Manifest) => Partial<Manifest>): Parts => {
  const parts = sampleParts();
  return { ...parts, manifest: { ...parts.manifest, ...change(parts.manifest) } };
};
const withExhibits = (change: (all: readonly Exhibit[]) => Exhibit[]) =>
  claiming(({ exhibits }) => ({ exhibits: change(exhibits) }));
/** With one file more, listed as it is. */
const attaching = (name: string, bytes: Uint8Array, what: Attachment['what']): Parts => {
  const parts = sampleParts();
  return relist({ ...parts, attached: [...parts.attached, { name, bytes, type: 'text/plain', what }] });
};
const renamed = (from: string, to: string): Parts => {
  const parts = sampleParts();
  return relist({
    ...parts,
    attached: parts.attached.map((one) => (one.name === from ? { ...one, name: to } : one)),
  });
};
const asRole = (name: string, what: Attachment['what']): Parts => {
  const parts = sampleParts();
  return relist({
    ...parts,
    attached: parts.attached.map((one) => (one.name === name ? { ...one, what } : one)),
  });
};
const without = (what: Attachment['what']): Parts => {
  const parts = sampleParts();
  return relist({ ...parts, attached: parts.attached.filter((one) => one.what !== what) });
};
const first = (all: readonly Exhibit[], change: (one: Exhibit) => unknown): Exhibit[] =>
  all.map((one) => (one.exhibit === 1 ? exhibit.parse(change(one)) : one));
const withFile = (change: object) =>
  withExhibits((all) => first(all, (one) => ({ ...one, file: { ...one.file, ...change } })));
const leavingOut = (more: Partial<OmittedOriginal>): Parts =>
  claiming(({ leftOut }) => ({
    leftOut: [...leftOut, { name: 'b.txt', bytes: 5, sha256: sha256Of(text('x')), why: 'withheld', ...more }],
  }));

/** No rule set, in a PDF that says what it is or is of before there were two. */
function withoutRules(volume?: Volume): Parts {
  const { attached, manifest } = without('rule-set');
  const { volume: _, ...rest } = manifest;
  return { attached, manifest: { ...rest, ...(volume === undefined ? {} : { volume }) } };
}

it('a dossier needs no rule set: nothing in it is held against rules', async () => {
  const found = await judged(withoutRules('dossier'));
  expect(found.verdict).toBe('intact');
  expect(found.volume).toBe('dossier');
  expect(found.checks.find(({ id }) => id === 'rule-set.same')?.result).toBe('not-checked');
});

describe('a manifest that lies', () => {
  it.each<[string, () => Parts, string[]]>([
    [
      'evidence counted twice, as two exhibits',
      () => withExhibits((all) => [...all, ...all.slice(2).map((one) => ({ ...one, exhibit: 4 }))]),
      ['exhibits.ledger'],
    ],
    [
      'a reading that speaks against, kept off the list',
      () => withExhibits((all) => all.filter(({ kind }) => kind !== 'pulp')),
      ['exhibits.complete'],
    ],
    ['an exhibit under another file name', () => withFile({ name: 'seal-whole.jpg' }), ['exhibits.ledger']],
    ['an exhibit as another kind of file', () => withFile({ type: 'image/png' }), ['exhibits.ledger']],
    [
      'an exhibit of an entry that does not exist',
      () => withExhibits((all) => first(all, (one) => ({ ...one, seq: 9_007_199_254_740_991 }))),
      ['exhibits.ledger'],
    ],
    [
      'an exhibit whose original is that of another',
      () => withExhibits((all) => first(all, (one) => ({ ...one, attachedAs: 'ledger.jsonl' }))),
      ['exhibits.originals'],
    ],
    ['a file said to be withheld that never came in', () => leavingOut({}), ['exhibits.complete']],
    [
      'a withheld file that is said to be smaller than it is',
      () => claiming(({ leftOut }) => ({ leftOut: leftOut.map((one) => ({ ...one, bytes: 0 })) })),
      ['exhibits.complete'],
    ],
    [
      'a file that is inside and said to be withheld',
      () => leavingOut({ sha256: sha256Of(PHOTO), bytes: PHOTO.length }),
      ['exhibits.originals'],
    ],
    [
      'an original inside that is no exhibit',
      () => attaching('more.txt', text('never recorded'), 'original'),
      ['exhibits.originals'],
    ],
    ['no ledger, its true leaves kept', () => without('ledger'), ['ledger.readable']],
    ['no facts of the delivery', () => without('delivery-facts'), ['delivery.same']],
    ['an assessment with no rule set', () => withoutRules('assessment'), ['rule-set.same']],
    ['a dossier of before there were assessments, with no rule set', () => withoutRules(), ['rule-set.same']],
    [
      'no ledger, and other facts of the delivery',
      () => {
        const parts = without('ledger');
        const attached = parts.attached.map((one) =>
          one.what === 'delivery-facts'
            ? { ...one, bytes: text('delivery: 2026-0714-A\nlines: [cabbage]\n') }
            : one,
        );
        return relist({ ...parts, attached });
      },
      ['ledger.readable'],
    ],
    [
      'a record of one entry with a root of its own',
      () =>
        claiming(({ record }) => ({
          record: { ...record, size: 1, root: sha256Of(text('x')), leaves: record.leaves.slice(0, 1) },
        })),
      ['record.root', 'ledger.leaves'],
    ],
    [
      'a second ledger under another name',
      () => attaching('ledger-2.jsonl', text('{}\n'), 'ledger'),
      ['attachments.complete'],
    ],
    [
      'the ledger under another name, so that a reader opens the wrong one',
      () => renamed('ledger.jsonl', 'entries.jsonl'),
      ['attachments.complete'],
    ],
    [
      'another file under the name of the ledger',
      () => {
        const parts = renamed('ledger.jsonl', 'entries.jsonl');
        const fake = { name: 'ledger.jsonl', bytes: text('{}\n'), type: 'text/plain' };
        return relist({ ...parts, attached: [...parts.attached, { ...fake, what: 'computed-data' }] });
      },
      ['attachments.complete'],
    ],
    [
      'facts that are said to be a table, so that they are not compared',
      () => asRole('delivery.yaml', 'computed-data'),
      ['attachments.complete', 'delivery.same'],
    ],
    [
      'two names that are one on some disks (CWE-178)',
      () => attaching('E1.JPG', text('another'), 'computed-data'),
      ['attachments.complete'],
    ],
    [
      'two names that are one when points at the end do not count',
      () => attaching('e1.jpg.', text('another'), 'computed-data'),
      ['attachments.complete'],
    ],
    [
      'a name that is a device on some systems',
      () => attaching('con.csv', text('another'), 'computed-data'),
      ['attachments.complete'],
    ],
    [
      'a delivery whose name only looks the same',
      () => claiming(() => ({ delivery: '2026\u20110714\u2011А' })),
      ['delivery.same'],
    ],
    [
      'building at another time than signing',
      () => claiming(() => ({ builtAt: toInstant(Date.UTC(2026, 5, 1)) })),
      ['signature.time'],
    ],
    [
      'a hash of the wrong rule set',
      () => claiming(({ ruleSet }) => ({ ruleSet: { ...ruleSet, sha256: sha256Of(PAPER) } })),
      ['rule-set.same'],
    ],
  ])('%s', async (_, make, ids) => {
    expect(await failures(make())).toEqual(ids);
  });

  it('entries that are newer than the signature over them are noted', async () => {
    const entries = ledgerEntries().map((entry, i) =>
      i === 3 ? text(Buffer.from(entry).toString().replace('2026-07-14T12:03', '2026-07-17T10:03')) : entry,
    );
    const leaves = entries.map(leafHash);
    const parts = sampleParts();
    const made = relist({
      ...parts,
      attached: parts.attached.map((one) =>
        one.what === 'ledger' ? { ...one, bytes: asLines(entries) } : one,
      ),
    });
    const record = { size: leaves.length, root: treeHash(leaves), leaves };
    const { verdict, checks } = await judged({ ...made, manifest: { ...made.manifest, record } });
    expect(verdict).toBe('intact');
    expect(checks.find(({ id }) => id === 'ledger.times')).toMatchObject({
      result: 'notice',
      detail: expect.stringContaining('entry 3 was made at 2026-07-17T10:03'),
    });
  });
});

describe('JSON made to stop or mislead the verifier', () => {
  const right = new TextDecoder().decode(canonicalBytes(sampleParts().manifest));
  const withManifest = async (words: string) => {
    const { PDFDocument } = await import('#pdf-lib');
    const document = await PDFDocument.create();
    document.addPage([100, 100]);
    for (const { name, bytes } of sampleParts().attached)
      await document.attach(bytes, name, { description: name });
    await document.attach(text(words), 'manifest.json', { description: 'm' });
    const signed = await signPdf(await document.save(), stranger, {
      at: toInstant(SIGNED_AT.getTime()),
      random: countingBytes(),
    });
    return failed(await verifyDossier(signed, { trusted }));
  };

  const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
  it.each<[string, string]>([
    ['nested without end, and closed', right.replace('{', `{"a":${deep},`)],
    ['nested objects', `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`],
    ['a number too large', right.replace('"size":4', '"size":1e400')],
    ['a number beyond whole numbers', right.replace('"size":4', '"size":9007199254740993')],
    ['a negative number', right.replace('"size":4', '"size":-4')],
    ['minus nought', right.replace('"seq":1', '"seq":-0')],
    ['a number in another writing', right.replace('"size":4', '"size":4.0')],
    ['a key of every object', right.replace('{', '{"__proto__":{"size":9},')],
    ['the same key in other letters', right.replace('"delivery":', '"d\\u0065livery":"B","delivery":')],
    [
      'a hash in capitals',
      right.replace(/"root":"[0-9a-f]+"/, (m) => m.toUpperCase().replace('ROOT', 'root')),
    ],
    ['keys in another order', right.replace(/^\{(.*),"volume":("\w+")\}$/, '{"volume":$2,$1}')],
  ])('%s', async (_, words) => {
    expect(words).not.toBe(right);
    expect(await withManifest(words)).toEqual(['manifest.present']);
  });

  it('a ledger entry that is nested without end', async () => {
    const entries = ledgerEntries();
    const [facts = text('')] = entries;
    const words = Buffer.from(facts).toString().replace('"trailer":{', `"x":${deep},"trailer":{`);
    const parts = sampleParts();
    const found = await failures(
      relist({
        ...parts,
        attached: parts.attached.map((one) =>
          one.what === 'ledger' ? { ...one, bytes: asLines([text(words), ...entries.slice(1)]) } : one,
        ),
      }),
    );
    expect(found).toEqual(['ledger.readable', 'ledger.leaves']);
  });
});
