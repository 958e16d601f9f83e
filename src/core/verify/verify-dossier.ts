import type { MergedRecord } from '../ledger/merge/merged-records.js';
import { latin1 } from '../model/bytes.js';
import type { Sha256 } from '../model/evidence.js';
import type { Manifest } from '../model/manifest.js';
import { omitUndefined } from '../model/omit-undefined.js';
import { milliseconds } from '../model/time.js';
import type { Verdict, Verification } from '../model/verification.js';
import { checkAttachments } from './check-attachments.js';
import { checkRecord } from './check-record.js';
import { CheckResults } from './check-results.js';
import { checkSignature, checkSignatureForm } from './check-signature.js';
import { CLOCK_TOLERANCE_MS } from './clock-tolerance.js';
import type { VerifyOptions } from './options.js';
import { activeContent } from './pdf/active-content.js';
import { readPdf, startsAsPdf } from './pdf/file.js';
import { hiddenParts } from './pdf/hidden.js';
import { unplainParts } from './pdf/plain-pages.js';
import { checkPictureLikeness } from './pictures/check-likeness.js';

/** What was found, and what further checks against a bag or a record need. */
export interface DossierFindings {
  verification: Verification;
  manifest?: Manifest;
  leaves?: readonly Sha256[];
  merged?: readonly MergedRecord[];
}

/**
 * Checks a dossier as a stranger would, with no trust in who made it, and reports every check. Never throws,
 * whatever the bytes are: bytes that are no dossier are `broken`.
 */
export async function verifyDossier(bytes: Uint8Array, options: VerifyOptions = {}): Promise<Verification> {
  return (await examineDossier(bytes, options)).verification;
}

/** The same, with the manifest for those who hold more of the record. */
export async function examineDossier(bytes: Uint8Array, options: VerifyOptions): Promise<DossierFindings> {
  const results = new CheckResults();
  let found: Found = {};
  try {
    found = await run(bytes, results, options);
    results.pass('check.finished', 'all of them');
  } catch (error) {
    // Whatever stops a check must not pass for a good result.
    results.fail('check.finished', `a check stopped on something unforeseen: ${String(error).slice(0, 200)}`);
  }
  const { manifest, merged = [], ...said } = found;
  const verification = { verdict: verdictOf(results), checks: results.checks(), ...said };
  return manifest === undefined
    ? { verification }
    : { verification, manifest, leaves: manifest.record.leaves, merged };
}

type Found = Pick<Verification, 'signer' | 'fingerprint' | 'volume'> & {
  manifest?: Manifest;
  merged?: readonly MergedRecord[];
};

async function run(bytes: Uint8Array, results: CheckResults, options: VerifyOptions): Promise<Found> {
  if (!startsAsPdf(bytes)) {
    results.fail(
      'pdf.header',
      bytes.length === 0 ? 'the file is empty' : 'this is not a PDF, or there are bytes before its header',
    );
    return {};
  }
  results.pass('pdf.header', latin1(bytes, 0, 8).trim());
  const file = results.attempt(
    'pdf.structure',
    () => readPdf(bytes),
    ({ objects }) => `${objects.size} objects`,
  );
  if (file === undefined) return {};
  const hidden = results.attempt(
    'pdf.hidden',
    () => hiddenParts(file),
    () => 'nothing is left over',
  );
  if (hidden !== undefined) results.failIf('pdf.hidden', hidden, 'nothing is left over');
  const active = results.attempt(
    'pdf.active-content',
    () => activeContent(file),
    () => 'none found',
  );
  if (active !== undefined) results.failIf('pdf.active-content', active, 'none found');
  const unplain = results.attempt(
    'pdf.plain-pages',
    () => unplainParts(file),
    () => 'nothing else found',
  );
  if (unplain !== undefined) results.failIf('pdf.plain-pages', unplain, 'nothing else found');
  const signature = await checkSignature(file, results, options);
  const signer = signature?.signer;
  const contents = await checkAttachments(file, results);
  const signedAt = signer?.claimedTime === undefined ? undefined : new Date(signer.claimedTime);
  if (contents !== undefined && signature !== undefined)
    checkSignatureForm(contents.manifest, signature, results);
  if (contents !== undefined && signedAt !== undefined) compareTimes(contents.manifest, signedAt, results);
  const known = options.fingerprint === undefined ? [] : [options.fingerprint];
  const record =
    contents === undefined
      ? undefined
      : await checkRecord(contents, results, {
          trusted: options.trusted ?? [],
          fingerprints: [...known, ...(options.fingerprints ?? [])],
          ...omitUndefined({ signedAt }),
        });
  if (contents !== undefined && options.pictures !== undefined) {
    await checkPictureLikeness(contents, results, options.pictures());
  } else if (contents !== undefined) results.skip('plates.alike', 'It takes longer, and was not asked for.');
  return {
    ...omitUndefined({
      manifest: contents?.manifest,
      volume: contents && (contents.manifest.volume ?? 'dossier'),
      signer,
      fingerprint: record?.fingerprint,
      merged: record?.merged,
    }),
  };
}

/** A dossier is signed when it is built: an old one that is signed anew, or dated back, states two times. */
function compareTimes({ builtAt }: Manifest, signedAt: Date, results: CheckResults): void {
  if (Math.abs(milliseconds(builtAt) - signedAt.getTime()) > CLOCK_TOLERANCE_MS)
    results.fail(
      'signature.time',
      `the claimed signing time ${signedAt.toISOString()} is more than a day from that of building, ${builtAt}`,
    );
}

function verdictOf(results: CheckResults): Verdict {
  if (results.has('failed')) return 'broken';
  return results.has('passed', 'signer.trusted') ? 'intact' : 'intact-signer-not-vouched-for';
}
