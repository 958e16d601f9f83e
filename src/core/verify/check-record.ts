import type { MergedRecord } from '../ledger/merge/merged-records.js';
import { leafHash, sha256Of, treeHash } from '../ledger/tree.js';
import type { Entry } from '../model/entry.js';
import type { Sha256 } from '../model/evidence.js';
import type { Manifest } from '../model/manifest.js';
import type { Verification } from '../model/verification.js';
import type { DossierContents } from './check-attachments.js';
import { checkExhibits, checkOriginals } from './check-exhibits.js';
import { checkFingerprints } from './check-fingerprint.js';
import type { CheckResults } from './check-results.js';
import { checkLedger } from './ledger/check-ledger.js';
import {
  deliveryOf,
  entriesOf,
  type LedgerLine,
  lastFacts,
  linesOf,
  readLedger,
  recordName,
  redactedLeaf,
} from './ledger/read-ledger.js';
import type { KnownFingerprint } from './options.js';
import { checkExhibitImages } from './pictures/check-exhibit-images.js';

type Fingerprint = NonNullable<Verification['fingerprint']>;

export interface RecordOptions {
  trusted: readonly Uint8Array[];
  fingerprints: readonly KnownFingerprint[];
  /** The signing time that is claimed. */
  signedAt?: Date;
}

/** Checks the record's hashes, the ledger and what else speaks of the delivery; gives the fingerprint, and what was merged in. */
export async function checkRecord(
  contents: DossierContents,
  results: CheckResults,
  options: RecordOptions,
): Promise<{ fingerprint: Fingerprint; merged: MergedRecord[] }> {
  const { manifest } = contents;
  checkRoot(manifest, results);
  const lines = checkAttachedLedger(contents, results);
  checkRuleSet(contents, results);
  const entries = lines === undefined ? undefined : entriesOf(lines);
  if (entries !== undefined) checkDelivery(contents, entries, results);
  // The name of a record is that of the delivery when the record began.
  const delivery = (entries === undefined ? undefined : recordName(entries)) ?? manifest.delivery;
  const { size, root, leaves } = manifest.record;
  const merged = lines === undefined ? [] : await checkLedger(lines, results, options);
  checkFingerprints([{ delivery, leaves }, ...merged], results, options.fingerprints, 'this dossier');
  if (lines !== undefined) checkExhibits(manifest, lines, results);
  checkOriginals(manifest, results);
  checkExhibitImages(contents, results);
  return { fingerprint: { delivery, size, root }, merged };
}

function checkRoot({ record }: Manifest, results: CheckResults): void {
  const wrong: string[] = [];
  if (record.leaves.length !== record.size)
    wrong.push(`there are ${record.leaves.length} leaves for ${record.size} entries`);
  if (treeHash(record.leaves) !== record.root) wrong.push('the leaves give another tree hash');
  results.failIf('record.root', wrong, `${record.size} entries, ${record.root}`);
}

function checkAttachedLedger(
  { manifest, bytesOf }: DossierContents,
  results: CheckResults,
): LedgerLine[] | undefined {
  const bytes = bytesOf('ledger');
  if (bytes === undefined) {
    const isListed = manifest.attachments.some(({ what }) => what === 'ledger');
    results.fail(
      'ledger.readable',
      isListed ? 'the attached ledger is not the one that was listed' : 'no ledger is attached',
    );
    return undefined;
  }
  const { lines } = linesOf(bytes);
  compareLeaves(lines, manifest.record.leaves, results);
  compareOmitted(lines, manifest, results);
  return results.attempt(
    'ledger.readable',
    () => readLedger(bytes),
    (read) => `${read.length} entries`,
  );
}

function compareLeaves(lines: readonly Uint8Array[], leaves: readonly Sha256[], results: CheckResults): void {
  const wrong = lines.flatMap((line, i) =>
    (redactedLeaf(line) ?? leafHash(line)) === leaves[i]
      ? []
      : [`entry ${i} is not the one whose hash is listed`],
  );
  if (lines.length !== leaves.length)
    wrong.push(`the ledger has ${lines.length} entries and the manifest ${leaves.length}`);
  results.failIf('ledger.leaves', wrong, `${lines.length} entries`);
}

function compareOmitted(lines: readonly Uint8Array[], { record }: Manifest, results: CheckResults): void {
  const said = record.leftOut ?? [];
  const found = lines.flatMap((line, i) => (redactedLeaf(line) === undefined ? [] : [i]));
  if (said.join() !== found.join())
    results.fail(
      'ledger.left-out',
      `the manifest says that ${numbers(said)} are left out, and it is ${numbers(found)}`,
    );
  else if (found.length === 0) results.pass('ledger.left-out', 'every entry is here');
  else
    results.notice(
      'ledger.left-out',
      `${found.length} of ${lines.length} entries are left out: ${numbers(found)}; their hashes are in the tree`,
    );
}

function numbers(all: readonly number[]): string {
  if (all.length === 0) return 'none';
  return all.length > 50 ? `${all.slice(0, 50).join(', ')} and ${all.length - 50} more` : all.join(', ');
}

function checkDelivery(
  { manifest, bytesOf }: DossierContents,
  entries: readonly Entry[],
  results: CheckResults,
): void {
  const facts = lastFacts(entries);
  const attached = bytesOf('delivery-facts');
  const wrong: string[] = [];
  if (facts === undefined) wrong.push('the ledger holds no facts of the delivery');
  else {
    if (deliveryOf(facts) !== manifest.delivery)
      wrong.push(`the ledger is about "${deliveryOf(facts)}", the manifest about "${manifest.delivery}"`);
    if (attached === undefined) wrong.push('the facts of the delivery are not attached');
    else if (sha256Of(attached) !== facts.body.sha256)
      wrong.push('the attached facts of the delivery are not the ones in the ledger');
  }
  results.failIf('delivery.same', wrong, manifest.delivery);
}

function checkRuleSet({ manifest, bytesOf }: DossierContents, results: CheckResults): void {
  const { name, version, sha256 } = manifest.ruleSet;
  const attached = bytesOf('rule-set');
  // Nothing is held against rules in a dossier; the assessment has them.
  if (manifest.volume === 'dossier' && !manifest.attachments.some(({ what }) => what === 'rule-set')) {
    results.skip('rule-set.same', `${name} ${version} is in the assessment; its SHA-256 is ${sha256}.`);
    return;
  }
  const wrong =
    attached === undefined
      ? ['the rule set is not attached']
      : sha256Of(attached) === sha256
        ? []
        : ['the attached rule set is another one'];
  results.failIf('rule-set.same', wrong, `${name} ${version}`);
}
