import { omitUndefined } from '../model/omit-undefined.js';
import type { CheckedItem, Verdict, Verification, VerificationReport } from '../model/verification.js';
import { checkBag } from './bag/check-bag.js';
import { CheckResults, worst } from './check-results.js';
import { CHECKS_BY_SUBJECT } from './checks.js';
import { acceptNewerFingerprint, crossCheck } from './cross-checks.js';
import { checkRecordFiles } from './delivery-record/check-record-files.js';
import type { ExaminedItem } from './examined-item.js';
import type { Item, OpenedItem } from './item.js';
import { Malformed, refuse } from './malformed.js';
import type { VerifyOptions } from './options.js';
import { examineDossier } from './verify-dossier.js';

/**
 * Checks dossiers, bags and records, each alone and all together, as a stranger would.
 * Never rejects, whatever the bytes are, but for what `open` of an item throws beside Malformed.
 */
export async function verifyAll(
  items: readonly Item[],
  options: VerifyOptions = {},
): Promise<VerificationReport> {
  const examined: ExaminedItem[] = [];
  for (const item of items) examined.push(await examine(item, options));
  const together = new CheckResults(CHECKS_BY_SUBJECT.together);
  crossCheck(examined, together);
  if (!together.has('failed')) acceptNewerFingerprint(examined, knownOf(options));
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
function overall(subjects: readonly CheckedItem[], verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('broken')) return 'broken';
  const dossiers = subjects.filter(({ is }) => is === 'dossier');
  return worst((dossiers.length === 0 ? subjects : dossiers).map(({ verdict }) => verdict));
}

function knownOf(options: VerifyOptions) {
  const one = options.fingerprint === undefined ? [] : [options.fingerprint];
  return [...one, ...(options.fingerprints ?? [])];
}

async function examine({ path, open }: Item, options: VerifyOptions): Promise<ExaminedItem> {
  try {
    const opened = await open();
    return opened.is === 'dossier'
      ? await examinePdf(path, opened.bytes, options)
      : await examineFiles(path, opened, options);
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    const results = new CheckResults(CHECKS_BY_SUBJECT.dossier);
    results.fail('pdf.header', error.message);
    return { subject: { path, is: 'unknown', verdict: 'broken', checks: results.checks() } };
  }
}

async function examinePdf(path: string, bytes: Uint8Array, options: VerifyOptions): Promise<ExaminedItem> {
  const { verification, manifest, leaves, merged } = await examineDossier(bytes, options);
  return {
    subject: { path, is: 'dossier', ...verification },
    ...omitUndefined({ manifest, leaves, merged, delivery: verification.fingerprint?.delivery }),
  };
}

type OpenedFiles = Exclude<OpenedItem, { is: 'dossier' }>;

async function examineFiles(
  path: string,
  opened: OpenedFiles,
  options: VerifyOptions,
): Promise<ExaminedItem> {
  const { is } = opened;
  const results = new CheckResults(is === 'record' ? CHECKS_BY_SUBJECT.record : CHECKS_BY_SUBJECT.bag);
  let found: Omit<ExaminedItem, 'subject'> & Pick<Verification, 'fingerprint'> = {};
  try {
    found = await checkFiles(opened, results, options);
    results.pass('check.finished', 'all of them');
  } catch (error) {
    if (error instanceof Malformed)
      results.fail(is === 'record' ? 'record.files' : 'bag.container', error.message);
    // Whatever stops a check must not pass for a good result.
    else
      results.fail(
        'check.finished',
        `a check stopped on something unforeseen: ${String(error).slice(0, 200)}`,
      );
  }
  const { fingerprint, ...more } = found;
  const checks = results.checks();
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

async function checkFiles(opened: OpenedFiles, results: CheckResults, options: VerifyOptions) {
  if (opened.is === 'unknown') refuse('this folder is neither a record of a delivery nor a bag');
  const container = await opened.container();
  try {
    const here = opened.is === 'record' ? 'this record' : 'this bag';
    const wanted = { trusted: options.trusted ?? [], fingerprints: knownOf(options), here };
    const bag = opened.is === 'record' ? undefined : await checkBag(container, results, wanted);
    const record =
      opened.is === 'record'
        ? await checkRecordFiles({ container, below: '', hashes: new Map() }, results, wanted)
        : bag?.record;
    return omitUndefined({
      delivery: record?.head.delivery,
      leaves: record?.leaves,
      merged: record?.merged,
      originals: record?.originals,
      fingerprint: record?.head,
      tagManifestSha256: bag?.tagManifestSha256,
    });
  } finally {
    container.close();
  }
}

function verdictOf({ verdict, checks }: CheckedItem): Verdict {
  return checks.some(({ result }) => result === 'failed') ? 'broken' : verdict;
}
