import { type Checkpoint, parseCheckpoint } from '../../ledger/checkpoint.js';
import type { MergedRecord } from '../../ledger/merge/merged-records.js';
import { sha256Of, treeHash } from '../../ledger/tree.js';
import type { Entry, EntryOf } from '../../model/entry.js';
import type { Sha256 } from '../../model/evidence.js';
import { checkFingerprints } from '../check-fingerprint.js';
import type { CheckResults } from '../check-results.js';
import { type ContainedFile, type Container, hashOf, readWhole } from '../container/container.js';
import { checkLedger } from '../ledger/check-ledger.js';
import { entriesOf, LARGEST_LEDGER, lastFacts, readLedger, recordName } from '../ledger/read-ledger.js';
import { Malformed, refuse } from '../malformed.js';
import type { KnownFingerprint } from '../options.js';

const LARGEST_TEXT = 4 * 1024 * 1024;
/** Never without a mark at the beginning, which would be a second written form. */
const UTF_8 = new TextDecoder('utf-8', { ignoreBOM: true });
const BUILT = /^(?:dossiers|assessments)\/(.+\.pdf)$/i;
const ORIGINAL = /^originals\/([0-9a-f]{64})(?:\.[a-z0-9]{1,8})?$/;

/** A record as files: a delivery folder, or the payload of a bag. */
export interface RecordFiles {
  container: Container;
  /** What stands before every path: empty, or `data/`. */
  below: string;
  /** Hashes that were computed already, by path. */
  hashes: ReadonlyMap<string, Sha256>;
}

export interface RecordFindings {
  leaves: readonly Sha256[];
  merged: readonly MergedRecord[];
  head: Checkpoint;
  /** Originals that are here, whole. */
  originals: ReadonlySet<Sha256>;
}

export interface RecordFilesOptions {
  trusted: readonly Uint8Array[];
  fingerprints: readonly KnownFingerprint[];
  /** How it is called in words: `this record`, `this bag`. */
  here: string;
}

/** Checks ledger, checkpoint, facts, originals and dossiers of a record against one another. */
export async function checkRecordFiles(
  files: RecordFiles,
  results: CheckResults,
  options: RecordFilesOptions,
): Promise<RecordFindings | undefined> {
  const read = await readHead(files, results);
  if (read === undefined) return undefined;
  const { ledger, head } = read;
  const lines = results.attempt(
    'ledger.readable',
    () => {
      const all = readLedger(ledger);
      const leftOut = all.findIndex(({ is }) => is === 'left-out');
      return leftOut < 0 ? all : refuse(`entry ${leftOut} is left out; a record holds every entry`);
    },
    (all) => `${all.length} entries`,
  );
  if (lines === undefined) return undefined;
  const leaves = lines.map(({ leaf }) => leaf);
  const entries = entriesOf(lines);
  const name = recordName(entries) ?? '';
  compareHead(head, name, leaves, results);
  const kept = await keptLedgers(files, entries);
  const merged = await checkLedger(lines, results, { trusted: options.trusted, kept });
  const originals = await checkOriginals(files, entries, results);
  await checkDossiers(files, entries, results);
  await checkFacts(files, entries, results);
  checkFingerprints([{ delivery: name, leaves }, ...merged], results, options.fingerprints, options.here);
  return { leaves, merged, head: { delivery: name, size: leaves.length, root: treeHash(leaves) }, originals };
}

async function readHead({ container, below }: RecordFiles, results: CheckResults) {
  const find = (name: string) => container.files.get(below + name);
  try {
    const ledger = find('ledger.jsonl') ?? refuse('there is no ledger.jsonl');
    const checkpoint = find('checkpoint') ?? refuse('there is no checkpoint');
    const text = UTF_8.decode(await readWhole(checkpoint, LARGEST_TEXT, 'the checkpoint'));
    const head =
      parseCheckpoint(text) ?? refuse('the checkpoint is not written as checkpoints are, byte for byte');
    const bytes = await readWhole(ledger, LARGEST_LEDGER, 'the ledger');
    results.pass('record.files', `${bytes.length} bytes of ledger`);
    return { ledger: bytes, head };
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    results.fail('record.files', error.message);
    return undefined;
  }
}

function compareHead(head: Checkpoint, name: string, leaves: readonly Sha256[], results: CheckResults): void {
  const wrong: string[] = [];
  if (head.delivery !== name)
    wrong.push(`it is that of "${head.delivery}", and the ledger began as "${name}"`);
  if (head.size > leaves.length)
    wrong.push(`it covers ${head.size} entries, and the ledger has only ${leaves.length}`);
  else if (treeHash(leaves.slice(0, head.size)) !== head.root)
    wrong.push(`the first ${head.size} entries of the ledger give another tree hash`);
  if (wrong.length > 0) results.failIf('record.checkpoint', wrong, '');
  else if (head.size < leaves.length)
    results.notice(
      'record.checkpoint',
      `${leaves.length - head.size} entries at the end are not covered by it: a write is under way or was cut off`,
    );
  else results.pass('record.checkpoint', `${head.size} entries, ${head.root}`);
}

/** Hash of a file, computed at most once. */
async function hashAt({ hashes }: RecordFiles, path: string, file: ContainedFile): Promise<Sha256> {
  return hashes.get(path) ?? (await hashOf(file)).sha256;
}

async function checkOriginals(
  files: RecordFiles,
  entries: readonly Entry[],
  results: CheckResults,
): Promise<ReadonlySet<Sha256>> {
  const { container, below } = files;
  const here = new Map<string, { path: string; file: ContainedFile }>();
  const others = (container.leftAside ?? [])
    .filter((path) => path.startsWith(`${below}originals/`))
    .map((path) => `${path.slice(below.length)} is a folder, and originals stand in none`);
  for (const [path, file] of container.files) {
    const inside = path.slice(below.length);
    if (!path.startsWith(below) || !inside.startsWith('originals/')) continue;
    const hash = ORIGINAL.exec(inside)?.[1];
    if (hash === undefined || here.has(hash)) others.push(`${inside} is not named as an original`);
    else here.set(hash, { path, file });
  }
  const whole = new Set<Sha256>();
  const wrong: string[] = [];
  const withheld = withheldFiles(entries);
  let missing = 0;
  for (const { seq, sha256, bytes, what } of expected(entries)) {
    if (whole.has(sha256)) continue;
    const say = (words: string) => wrong.push(`${what} (entry ${seq}) ${words}`);
    const found = here.get(sha256);
    here.delete(sha256);
    if (found === undefined && withheld.has(sha256)) missing += 1;
    else if (found === undefined) say(`is missing`);
    else if (found.file.bytes !== bytes) say(`has ${found.file.bytes} bytes instead of ${bytes}`);
    else if ((await hashOrWhy(files, found)) !== sha256) say('was changed');
    else whole.add(sha256);
  }
  for (const [hash, { path }] of here) {
    if (wrong.some((words) => words.includes(hash))) continue;
    others.push(`${path.slice(below.length)} is in no entry of the ledger`);
  }
  if (wrong.length === 0 && missing > 0)
    results.notice('originals.present', `${whole.size} are whole, ${missing} are withheld and not here`);
  else results.failIf('originals.present', wrong, `${whole.size} originals are whole`);
  results.noteIf('originals.others', others, 'nothing else');
  return whole;
}

async function hashOrWhy(
  files: RecordFiles,
  { path, file }: { path: string; file: ContainedFile },
): Promise<string | undefined> {
  try {
    return await hashAt(files, path, file);
  } catch (error) {
    if (error instanceof Malformed) return undefined;
    throw error;
  }
}

interface ExpectedFile {
  seq: number;
  sha256: Sha256;
  bytes: number;
  what: string;
}

/** What lies among the originals: files that were received, and the ledgers of records that were merged in. */
function expected(entries: readonly Entry[]): ExpectedFile[] {
  return entries.flatMap(({ seq, type, body }): ExpectedFile[] => {
    switch (type) {
      case 'evidence-received': {
        const { sha256, bytes, name } = body.file;
        return [{ seq, sha256, bytes, what: `${body.evidence} "${name}"` }];
      }
      case 'record-merged':
        return [{ seq, ...body.ledger, what: 'the ledger of the merged record' }];
      default:
        return [];
    }
  });
}

/** The ledgers of records that were merged in, as far as they are here and can be read. */
async function keptLedgers(
  { container, below }: RecordFiles,
  entries: readonly Entry[],
): Promise<Map<Sha256, Uint8Array>> {
  const kept = new Map<Sha256, Uint8Array>();
  for (const { type, body } of entries) {
    const file =
      type === 'record-merged'
        ? container.files.get(`${below}originals/${body.ledger.sha256}.jsonl`)
        : undefined;
    if (file === undefined || type !== 'record-merged') continue;
    try {
      const bytes = await readWhole(file, LARGEST_LEDGER, 'the ledger of the merged record');
      // One that was changed is told of among the originals.
      if (sha256Of(bytes) === body.ledger.sha256) kept.set(body.ledger.sha256, bytes);
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
    }
  }
  return kept;
}

function received(entries: readonly Entry[]): EntryOf<'evidence-received'>[] {
  return entries.filter((one): one is EntryOf<'evidence-received'> => one.type === 'evidence-received');
}

function withheldFiles(entries: readonly Entry[]): Set<Sha256> {
  const ids = new Set(
    entries.flatMap((one) => (one.type === 'evidence-withheld' ? [one.body.evidence] : [])),
  );
  return new Set(received(entries).flatMap(({ body }) => (ids.has(body.evidence) ? [body.file.sha256] : [])));
}

/** Dossiers and assessments that were kept beside the record: one under a name of the ledger must be the one that was built. */
async function checkDossiers(
  files: RecordFiles,
  entries: readonly Entry[],
  results: CheckResults,
): Promise<void> {
  const built = entries.filter((one): one is EntryOf<'dossier-built'> => one.type === 'dossier-built');
  const hashes = new Set<string>(built.map(({ body }) => body.sha256));
  const names = new Set(built.map(({ body }) => body.file));
  const wrong: string[] = [];
  const unknown: string[] = [];
  let known = 0;
  for (const [path, file] of files.container.files) {
    const name = path.startsWith(files.below) ? BUILT.exec(path.slice(files.below.length))?.[1] : undefined;
    if (name === undefined) continue;
    const hash = await hashOrWhy(files, { path, file });
    if (hash !== undefined && hashes.has(hash)) known += 1;
    else if (names.has(name)) wrong.push(`${name} is not the file that was built under this name`);
    else unknown.push(`${name} is not named in the ledger`);
  }
  if (wrong.length > 0) results.failIf('dossiers.known', wrong, '');
  else results.noteIf('dossiers.known', unknown, `${known} here, of ${built.length} that were built`);
}

async function checkFacts(
  files: RecordFiles,
  entries: readonly Entry[],
  results: CheckResults,
): Promise<void> {
  const facts = lastFacts(entries);
  const file = files.container.files.get(`${files.below}delivery.yaml`);
  if (file === undefined || facts === undefined) {
    results.skip('delivery.same', 'There is no delivery.yaml here to compare.');
    return;
  }
  try {
    const bytes = await readWhole(file, LARGEST_TEXT, 'delivery.yaml');
    if (sha256Of(bytes) === facts.body.sha256)
      results.pass('delivery.same', 'delivery.yaml is as the ledger has it');
    else if (files.below === '')
      results.notice(
        'delivery.same',
        'delivery.yaml was changed since; the next command enters that into the ledger',
      );
    else results.fail('delivery.same', 'delivery.yaml is not the one that the ledger heard of last');
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    results.fail('delivery.same', error.message);
  }
}
