import { type Entry, type EntryOf, entry } from '../model/entry.js';
import type { Manifest } from '../model/manifest.js';
import type { Verification } from '../model/verification.js';
import { leafHash, sha256Of, treeHash } from '../record/tree.js';
import { readCanonical } from './canonical-json.js';
import type { Contents } from './check-attachments.js';
import { checkExhibits, checkOriginals } from './check-exhibits.js';
import type { Checklist } from './checklist.js';
import { refuse } from './malformed.js';

/** What someone was sent earlier: the record had this tree hash when it had this many entries. */
export interface KnownFingerprint {
  delivery: string;
  size: number;
  root: string;
}

type Fingerprint = NonNullable<Verification['fingerprint']>;

/** Checks the record's hashes, the ledger and what else speaks of the delivery; gives the fingerprint. */
export function checkRecord(contents: Contents, list: Checklist, known?: KnownFingerprint): Fingerprint {
  const { manifest } = contents;
  checkRoot(manifest, list);
  const entries = checkLedger(contents, list);
  checkRuleSet(contents, list);
  if (entries !== undefined) checkDelivery(contents, entries, list);
  const first = entries?.find((one): one is EntryOf<'delivery-facts'> => one.type === 'delivery-facts');
  // A record keeps the name that the delivery had when it began.
  const name = first === undefined ? manifest.delivery : deliveryOf(first);
  const fingerprint = { delivery: name, size: manifest.record.size, root: manifest.record.root };
  checkFingerprint(manifest, fingerprint, list, known);
  if (entries !== undefined) checkExhibits(manifest, entries, list);
  checkOriginals(manifest, list);
  return fingerprint;
}

function checkRoot({ record }: Manifest, list: Checklist): void {
  const wrong: string[] = [];
  if (record.leaves.length !== record.size)
    wrong.push(`there are ${record.leaves.length} leaves for ${record.size} entries`);
  if (treeHash(record.leaves) !== record.root) wrong.push('the leaves give another tree hash');
  list.judge('record.root', wrong, `${record.size} entries, ${record.root}`);
}

function checkLedger({ manifest, bytesOf }: Contents, list: Checklist): Entry[] | undefined {
  const bytes = bytesOf('ledger');
  if (bytes === undefined) {
    if (manifest.attachments.some(({ what }) => what === 'ledger'))
      list.fail('ledger.readable', 'the attached ledger is not the one that was listed');
    else
      for (const id of [
        'ledger.readable',
        'ledger.leaves',
        'delivery.same',
        'exhibits.ledger',
        'exhibits.complete',
      ] as const)
        list.skip(id, 'The ledger is not in this copy; only its hashes are.');
    return undefined;
  }
  const lines = linesOf(bytes);
  const { leaves } = manifest.record;
  const wrong = lines.flatMap((line, i) =>
    leafHash(line) === leaves[i] ? [] : [`entry ${i} is not the one whose hash is listed`],
  );
  if (lines.length !== leaves.length)
    wrong.push(`the ledger has ${lines.length} entries and the manifest ${leaves.length}`);
  list.judge('ledger.leaves', wrong, `${lines.length} entries`);
  return list.ask(
    'ledger.readable',
    () =>
      bytes[bytes.length - 1] === 0x0a ? lines.map(readEntry) : refuse('the last ledger line is cut off'),
    (entries) => `${entries.length} entries`,
  );
}

function linesOf(bytes: Uint8Array): Uint8Array[] {
  const lines: Uint8Array[] = [];
  for (let from = 0; from < bytes.length; ) {
    const end = bytes.indexOf(0x0a, from);
    lines.push(bytes.subarray(from, end < 0 ? bytes.length : end));
    from = end < 0 ? bytes.length : end + 1;
  }
  return lines;
}

function readEntry(line: Uint8Array, i: number): Entry {
  const read = entry.safeParse(readCanonical(line, `ledger entry ${i}`));
  if (!read.success) {
    const [first] = read.error.issues;
    return refuse(`ledger entry ${i} is not an entry: ${first?.path.join('.')}: ${first?.message}`);
  }
  return read.data.seq === i ? read.data : refuse(`ledger entry ${i} has the number ${read.data.seq}`);
}

function deliveryOf({ body }: EntryOf<'delivery-facts'>): string {
  const { delivery } = body.facts;
  return typeof delivery === 'string' ? delivery : '';
}

function checkDelivery({ manifest, bytesOf }: Contents, entries: readonly Entry[], list: Checklist): void {
  const facts = entries
    .filter((one): one is EntryOf<'delivery-facts'> => one.type === 'delivery-facts')
    .at(-1);
  const attached = bytesOf('delivery-facts');
  const wrong: string[] = [];
  if (facts === undefined) wrong.push('the ledger holds no facts of the delivery');
  else {
    if (deliveryOf(facts) !== manifest.delivery)
      wrong.push(`the ledger is about "${deliveryOf(facts)}", the manifest about "${manifest.delivery}"`);
    if (attached !== undefined && sha256Of(attached) !== facts.body.sha256)
      wrong.push('the attached facts of the delivery are not the ones in the ledger');
  }
  list.judge('delivery.same', wrong, manifest.delivery);
}

function checkRuleSet({ manifest, bytesOf }: Contents, list: Checklist): void {
  const { name, version, sha256 } = manifest.ruleSet;
  const attached = bytesOf('rule-set');
  if (attached === undefined && !manifest.attachments.some(({ what }) => what === 'rule-set'))
    list.skip('rule-set.same', `${name} ${version} is not attached; its hash is ${sha256}.`);
  else {
    const same = attached !== undefined && sha256Of(attached) === sha256;
    list.judge('rule-set.same', same ? [] : ['the attached rule set is another one'], `${name} ${version}`);
  }
}

function checkFingerprint(
  { record }: Manifest,
  own: Fingerprint,
  list: Checklist,
  known: KnownFingerprint | undefined,
): void {
  if (known === undefined) {
    list.skip('fingerprint.matches', 'No fingerprint was given to compare with.');
    return;
  }
  const wrong: string[] = [];
  if (known.delivery !== own.delivery)
    wrong.push(`the fingerprint is of "${known.delivery}", this record is "${own.delivery}"`);
  if (known.size > record.leaves.length)
    wrong.push(
      `the fingerprint counts ${known.size} entries and this record has only ${record.leaves.length}: it is older, or entries were taken out`,
    );
  else if (known.size < 1 || treeHash(record.leaves.slice(0, known.size)) !== known.root)
    wrong.push(`the first ${known.size} entries are not the ones of the fingerprint`);
  list.judge('fingerprint.matches', wrong, `the first ${known.size} of ${record.size} entries are the same`);
}
