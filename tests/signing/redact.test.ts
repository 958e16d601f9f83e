import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leafHash } from '../../src/core/ledger/tree.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import { buildManifest } from '../../src/signing/manifest.js';
import { redactLedger } from '../../src/signing/redact-message.js';
import { dossier, failed } from '../core/verify/forge.js';
import { cases } from '../properties.js';
import { BUILT_AT, exhibits, ledgerEntries, type Parts, RULES, relist, sampleParts, text } from './sample.js';

const entries = ledgerEntries();

/** A copy without the words of some entries, and without the exhibits that they bring. */
function copy(leaveOut: number[], manifestSays = leaveOut): Parts {
  const { bytes } = redactLedger(entries, new Set(leaveOut));
  const attached = sampleParts()
    .attached.filter(({ name }) => name !== 'e1.jpg')
    .map((one) => (one.what === 'ledger' ? { ...one, bytes } : one));
  const { manifest } = buildManifest({
    volume: 'dossier',
    delivery: '2026-0714-A',
    builtAt: BUILT_AT,
    tool: { name: 'load-dossier', version: '0.0.0' },
    entries,
    ruleSet: { name: 'produce', version: '1', bytes: RULES },
    exhibits: exhibits.filter(({ seq }) => seq === 3 && !leaveOut.includes(3)),
    attachments: attached,
    leftOut: leaveOut.includes(1) && leaveOut.includes(2) ? [] : sampleParts().manifest.leftOut,
    entriesLeftOut: manifestSays,
    plates: [],
    timeStamp: 'none',
  });
  return { attached, manifest };
}

describe('leaving entries out of a copy', () => {
  it('puts a line with the leaf hash in the place of each', () => {
    const { bytes, leftOut } = redactLedger(entries, new Set([2, 1]));
    const lines = Buffer.from(bytes).toString('utf8').split('\n');
    expect(leftOut).toEqual([1, 2]);
    expect(lines).toHaveLength(5);
    expect(lines[1]).toBe(`{"leaf":"${leafHash(entries[1] ?? text(''))}"}`);
    expect(lines[3]).toBe(Buffer.from(entries[3] ?? '').toString('utf8'));
  });

  it('does not know entries that are not there', () => {
    expect(() => redactLedger(entries, new Set([9]))).toThrow(/no entry 9/);
  });

  it('the root is reached and what is left out is counted, whichever entries they are', () =>
    fc.assert(
      fc.asyncProperty(fc.subarray([3]), async (more) => {
        const leaveOut = [1, 2, ...more];
        const found = await verifyDossier(await dossier(copy(leaveOut)));
        expect(failed(found)).toEqual([]);
        expect(found.checks.find(({ id }) => id === 'ledger.left-out')).toMatchObject({
          result: 'notice',
          detail: `${leaveOut.length} of 4 entries are left out: ${leaveOut.join(', ')}; their hashes are in the tree`,
        });
        expect(found.fingerprint?.root).toBe(sampleParts().manifest.record.root);
      }),
      { numRuns: cases(4) },
    ));

  it('but never the facts of the delivery', async () => {
    const found = await verifyDossier(await dossier(copy([0, 1, 2])));
    expect(failed(found)).toEqual(['delivery.same']);
  });

  it.each<[string, () => Parts, string[]]>([
    ['more left out than is said', () => copy([1, 2], [1]), ['ledger.left-out']],
    ['less left out than is said', () => copy([1], [1, 2]), ['ledger.left-out']],
    [
      'another hash in the place of an entry',
      () => {
        const parts = copy([1, 2]);
        const other = '0'.repeat(64);
        return relist({
          ...parts,
          attached: parts.attached.map((one) =>
            one.what === 'ledger'
              ? {
                  ...one,
                  bytes: text(
                    Buffer.from(one.bytes)
                      .toString()
                      .replace(/"leaf":"[0-9a-f]{64}"/, `"leaf":"${other}"`),
                  ),
                }
              : one,
          ),
        });
      },
      ['ledger.leaves'],
    ],
    [
      'an exhibit whose entry is left out',
      () => {
        const parts = copy([1, 2, 3]);
        return {
          ...parts,
          manifest: { ...parts.manifest, exhibits: exhibits.filter(({ seq }) => seq === 3) },
        };
      },
      ['exhibits.ledger'],
    ],
  ])('%s is refused', async (_, make, ids) => {
    const found = failed(await verifyDossier(await dossier(make())));
    expect(found).toEqual(expect.arrayContaining(ids));
  });
});
