import { treeHash } from '../ledger/tree.js';
import type { Sha256 } from '../model/evidence.js';
import type { Manifest, OmittedOriginal } from '../model/manifest.js';
import type { CheckResults } from './check-results.js';
import { CHECKS_BY_SUBJECT } from './checks.js';
import type { ExaminedItem } from './examined-item.js';
import type { KnownFingerprint } from './options.js';

type WithLeaves = ExaminedItem & { leaves: readonly Sha256[] };

/** Whether the things that were given belong to one record, and make up for what one of them leaves out. */
export function crossCheck(all: readonly ExaminedItem[], results: CheckResults): void {
  if (all.length < 2) {
    for (const id of CHECKS_BY_SUBJECT.together) results.skip(id, 'Only one thing was given.');
    return;
  }
  checkStates(all, results);
  checkBags(all, results);
  checkOmitted(all, results);
  checkVolumes(all, results);
}

function checkStates(all: readonly ExaminedItem[], results: CheckResults): void {
  const read = all.filter((one): one is WithLeaves => one.leaves !== undefined);
  const [first, ...rest] = read;
  if (first === undefined || rest.length === 0) {
    results.skip('together.states', 'Fewer than two of them could be read.');
    return;
  }
  const longest = read.reduce((a, b) => (b.leaves.length > a.leaves.length ? b : a));
  const wrong = read.flatMap(({ subject, leaves, delivery }) => {
    if (delivery !== longest.delivery)
      return [`${subject.path} is of "${delivery}", and ${longest.subject.path} of "${longest.delivery}"`];
    const at = leaves.findIndex((leaf, i) => leaf !== longest.leaves[i]);
    // A record that was merged in is told of by what it was merged into.
    const isMerged = read.some(({ merged = [] }) =>
      merged.some((one) => leaves.every((leaf, i) => leaf === one.leaves[i])),
    );
    return at < 0 || isMerged
      ? []
      : [`${subject.path} and ${longest.subject.path} differ from entry ${at} on`];
  });
  results.failIf(
    'together.states',
    wrong,
    read
      .map(({ subject, leaves }) => `${subject.path}: ${leaves.length} entries`)
      .concat(
        read.some(({ leaves }) => leaves.length < longest.leaves.length)
          ? [`the newest is ${longest.subject.path}`]
          : [],
      )
      .join('; '),
  );
}

function checkBags(all: readonly ExaminedItem[], results: CheckResults): void {
  const bags = all.filter(({ subject }) => subject.is === 'bag');
  const naming = all.filter(({ manifest }) => manifest?.bag !== undefined);
  if (bags.length === 0 || naming.length === 0) {
    results.skip(
      'together.bag',
      bags.length === 0 ? 'No bag was given.' : 'No dossier that was given names a bag.',
    );
    return;
  }
  const wrong = bags.flatMap(({ subject, tagManifestSha256 }) =>
    naming.some(({ manifest }) => manifest?.bag?.tagManifestSha256 === tagManifestSha256)
      ? []
      : [`${subject.path} is not the bag that ${naming.map((one) => one.subject.path).join(' or ')} names`],
  );
  results.failIf('together.bag', wrong, `${bags.length} named by a signed dossier`);
}

function checkOmitted(all: readonly ExaminedItem[], results: CheckResults): void {
  const holders = all.filter(({ originals }) => originals !== undefined);
  const dossiers = all.filter(({ manifest }) => manifest !== undefined && !isAssessment(manifest));
  if (holders.length === 0 || dossiers.length === 0) {
    results.skip('together.originals', 'It takes a dossier with its bag or record.');
    return;
  }
  const here = new Set(holders.flatMap(({ originals }) => [...(originals ?? [])]));
  const wanted = dossiers.flatMap(({ subject, manifest }) =>
    (manifest?.leftOut ?? []).map((one) => ({ ...one, path: subject.path })),
  );
  const missing = wanted.filter(({ why, sha256 }) => isPromised(why) && !here.has(sha256));
  const withheld = wanted.filter(({ why, sha256 }) => !isPromised(why) && !here.has(sha256)).length;
  const said = `${wanted.length - missing.length - withheld} of ${wanted.length} are here`;
  if (missing.length > 0)
    results.failIf(
      'together.originals',
      missing.map(({ name, path }) => `"${name}", left out of ${path}, is not here whole`),
      '',
    );
  else if (withheld > 0) results.notice('together.originals', `${said}; ${withheld} are kept back`);
  else results.pass('together.originals', said);
}

/** An assessment speaks of the exhibits of the dossier of the same record. */
function checkVolumes(all: readonly ExaminedItem[], results: CheckResults): void {
  const pdfs = all.flatMap(({ subject, manifest }) =>
    manifest === undefined ? [] : [{ subject, manifest }],
  );
  const assessments = pdfs.filter(({ manifest }) => isAssessment(manifest));
  const dossiers = pdfs.filter(({ manifest }) => !isAssessment(manifest));
  if (assessments.length === 0 || dossiers.length === 0) {
    results.skip('together.volumes', 'It takes an assessment and a dossier.');
    return;
  }
  const alone = assessments.flatMap(({ subject, manifest: { record } }) =>
    dossiers.some(({ manifest }) => manifest.record.root === record.root)
      ? []
      : [
          `${subject.path} is over a record of ${record.size} entries; ${dossiers.map((one) => `${one.subject.path} shows ${one.manifest.record.size}`).join(', ')}`,
        ],
  );
  results.noteIf('together.volumes', alone, `${assessments.length} over the same fingerprint as a dossier`);
}

const isAssessment = ({ volume }: Manifest): boolean => volume === 'assessment';

/** Whether an original that is not inside is to come along in a bag; the others are kept back on purpose. */
function isPromised(why: OmittedOriginal['why']): boolean {
  return why === 'size-budget' || why === 'empty-file';
}

/**
 * A fingerprint that is newer than a dossier breaks nothing when a longer record that was given too holds both: the
 * dossier is then known to be its beginning.
 */
export function acceptNewerFingerprint(
  all: readonly ExaminedItem[],
  known: readonly KnownFingerprint[],
): void {
  for (const { subject, leaves = [], delivery } of all) {
    const check = subject.checks.find(({ id }) => id === 'fingerprint.matches');
    if (check?.result !== 'failed') continue;
    const proven = known.every((one) => {
      if (one.delivery !== delivery) return false;
      const holder = all.find((other) => (other.leaves?.length ?? 0) >= Math.max(one.size, leaves.length));
      return (
        one.size >= 1 &&
        holder?.leaves !== undefined &&
        treeHash(holder.leaves.slice(0, one.size)) === one.root
      );
    });
    if (!proven) continue;
    check.result = 'notice';
    check.detail = `the fingerprint is newer than this; the longer record that was given holds both`;
    if (!subject.checks.some(({ result }) => result === 'failed') && subject.verdict === 'broken')
      subject.verdict = subject.checks.some(
        ({ id, result }) => id === 'signer.trusted' && result === 'passed',
      )
        ? 'intact'
        : 'intact-signer-not-vouched-for';
  }
}
