import type { Sha256 } from '../model/evidence.js';
import type { Manifest } from '../model/manifest.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Subject, Verdict, Verification, VerificationReport } from '../model/verification.js';
import { checkBag } from './bag/check-bag.js';
import { Checklist, worst } from './checklist.js';
import { ASKED } from './checks.js';
import { openFolder } from './container/folder.js';
import { openZip } from './container/zip.js';
import { foreignForm } from './container/zip-form.js';
import { checkTogether, excuseNewer } from './cross-checks.js';
import { checkRecordFiles } from './delivery-record/check-record-files.js';
import { Malformed, refuse } from './malformed.js';
import { type Kind, kindOf, readDossier } from './open-subject.js';
import type { VerifyOptions } from './options.js';
import { examineDossier } from './verify-dossier.js';

/** One thing that was checked, and what it holds of the record. */
export interface Examined {
  subject: Subject;
  delivery?: string;
  leaves?: readonly Sha256[];
  /** Originals that are here, whole. */
  originals?: ReadonlySet<Sha256>;
  manifest?: Manifest;
  tagManifestSha256?: Sha256;
}

/** What a delivery folder is looked at for; everything else in it is the owner's business. */
const RECORD_FILES =
  /^(?:ledger\.jsonl|checkpoint|delivery\.yaml|originals\/[^/]*|dossiers\/(?:[^/]+\.pdf)?)$/i;

/**
 * Checks dossiers, bags (zip or folder) and record folders, each alone and all together, as a stranger would.
 * Never throws, whatever the bytes are; only a path that cannot be looked at rejects, with the system's error.
 */
export async function verifyAll(
  paths: readonly string[],
  options: VerifyOptions = {},
): Promise<VerificationReport> {
  const examined: Examined[] = [];
  for (const path of paths) examined.push(await examine(path, options));
  const together = new Checklist(ASKED.together);
  checkTogether(examined, together);
  if (!together.has('failed')) excuseNewer(examined, knownOf(options));
  const subjects = examined.map(({ subject }) => ({ ...subject, verdict: verdictOf(subject) }));
  const verdicts = subjects.map(({ verdict }) => verdict);
  return {
    schema: 'load-dossier-verification-1',
    verdict: together.has('failed') ? 'broken' : overall(subjects, verdicts),
    subjects,
    together: together.checks(),
  };
}

/** A bag that a signed dossier names, or a record that it is the beginning of, needs no signature of its own. */
function overall(subjects: readonly Subject[], verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('broken')) return 'broken';
  const dossiers = subjects.filter(({ is }) => is === 'dossier');
  return worst((dossiers.length === 0 ? subjects : dossiers).map(({ verdict }) => verdict));
}

function knownOf(options: VerifyOptions) {
  const one = options.fingerprint === undefined ? [] : [options.fingerprint];
  return [...one, ...(options.fingerprints ?? [])];
}

async function examine(path: string, options: VerifyOptions): Promise<Examined> {
  try {
    const kind = await kindOf(path);
    return kind === 'dossier' ? await examinePdf(path, options) : await examineFiles(path, kind, options);
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    const list = new Checklist(ASKED.dossier);
    list.fail('pdf.header', error.message);
    return { subject: { path, is: 'unknown', verdict: 'broken', checks: list.checks() } };
  }
}

async function examinePdf(path: string, options: VerifyOptions): Promise<Examined> {
  const { verification, manifest, leaves } = await examineDossier(await readDossier(path), options);
  return {
    subject: { path, is: 'dossier', ...verification },
    ...omitUndefined({ manifest, leaves, delivery: verification.fingerprint?.delivery }),
  };
}

async function examineFiles(path: string, kind: Kind, options: VerifyOptions): Promise<Examined> {
  const is = kind === 'record' ? 'record' : kind === 'unknown' ? 'unknown' : 'bag';
  const list = new Checklist(is === 'record' ? ASKED.record : ASKED.bag);
  let found: Omit<Examined, 'subject'> & Pick<Verification, 'fingerprint'> = {};
  try {
    found = await lookInto(path, kind, list, options);
    list.pass('check.finished', 'all of them');
  } catch (error) {
    if (error instanceof Malformed)
      list.fail(is === 'record' ? 'record.files' : 'bag.container', error.message);
    // Whatever stops a check must not pass for a good result.
    else
      list.fail('check.finished', `a check stopped on something unforeseen: ${String(error).slice(0, 200)}`);
  }
  const { fingerprint, ...more } = found;
  const checks = list.checks();
  return {
    subject: {
      path,
      is,
      verdict: 'intact-signer-not-vouched-for',
      checks,
      ...omitUndefined({ fingerprint }),
    },
    ...more,
  };
}

async function lookInto(path: string, kind: Kind, list: Checklist, options: VerifyOptions) {
  if (kind === 'unknown') refuse('this folder is neither a record of a delivery nor a bag');
  const container =
    kind === 'bag-zip'
      ? await openZip(path)
      : await openFolder(path, kind === 'record' ? (name) => RECORD_FILES.test(name) : undefined);
  try {
    const here = kind === 'record' ? 'this record' : 'this bag';
    const wanted = { trusted: options.trusted ?? [], fingerprints: knownOf(options), here };
    const bag = kind === 'record' ? undefined : await checkBag(container, list, wanted);
    if (kind === 'bag-zip') await checkZip(path, list);
    else if (kind === 'bag-folder') list.skip('bag.zip', 'The bag is a folder.');
    const record =
      kind === 'record'
        ? await checkRecordFiles({ container, below: '', hashes: new Map() }, list, wanted)
        : bag?.record;
    return {
      ...omitUndefined({
        delivery: record?.head.delivery,
        leaves: record?.leaves,
        originals: record?.originals,
        fingerprint: record?.head,
        tagManifestSha256: bag?.tagManifestSha256,
      }),
    };
  } finally {
    container.close();
  }
}

/** The same files may be packed again by any program: what differs is said, and breaks nothing. */
async function checkZip(path: string, list: Checklist): Promise<void> {
  const other = await foreignForm(path);
  list.remark(
    'bag.zip',
    other.length === 0
      ? []
      : [
          `packed again by another program, or changed where nothing is said about its files, which stand by their hashes: ${other.slice(0, 3).join('; ')}${other.length > 3 ? `; and ${other.length - 3} more` : ''}`,
        ],
    'as it was made',
  );
}

function verdictOf({ verdict, checks }: Subject): Verdict {
  return checks.some(({ result }) => result === 'failed') ? 'broken' : verdict;
}
