import { sha256Of } from '../ledger/tree.js';
import type { Manifest } from '../model/manifest.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Signer } from '../model/verification.js';
import { checkCertificate } from './check-certificate.js';
import type { CheckResults } from './check-results.js';
import { checkTimeStamp } from './check-time-stamp.js';
import { CLOCK_TOLERANCE_MS } from './clock-tolerance.js';
import { type DetachedSignature, judgeDetached, readDetached, requireBinding } from './cms/detached.js';
import { isLowS, readEcdsaValue } from './cms/ecdsa-value.js';
import { describeKey, type PublicKey } from './cms/public-key.js';
import { HASHES } from './cms/signature-scheme.js';
import { splitContents } from './cms/signed-data.js';
import { Malformed } from './malformed.js';
import type { TrustOptions } from './options.js';
import type { PdfFile } from './pdf/file.js';
import {
  type Covered,
  claimedTime,
  coveredBytes,
  findSignature,
  requireCertification,
} from './pdf/signature.js';

/** Who signed, and what of the signature somebody without the key could write otherwise. */
export interface CheckedSignature {
  signer: Signer;
  /** Whether its value is the only one that can be made of it without the key. */
  single: boolean;
  timeStamped: boolean;
}

/** Checks the one signature of the file, its certificate, its time stamp and who vouches for it. */
export async function checkSignature(
  file: PdfFile,
  results: CheckResults,
  options: TrustOptions,
): Promise<CheckedSignature | undefined> {
  const found = results.attempt(
    'signature.present',
    () => findSignature(file),
    () => 'one signature found',
  );
  if (found === undefined) return undefined;
  results.attempt(
    'signature.certification',
    () => requireCertification(file, found),
    () => 'certified, no changes allowed',
  );
  const time = claimedTime(found);
  const covered = results.attempt(
    'signature.range',
    () => coveredBytes(file, found),
    ({ first, second }) => `${first.length + second.length} of ${file.bytes.length} bytes are covered`,
  );
  if (covered === undefined) {
    checkTime(time, undefined, results, options.at);
    return undefined;
  }
  const read = results.attempt(
    'signature.structure',
    () => readCms(covered, results),
    () => 'one signer, certificate inside',
  );
  if (read === undefined) {
    checkTime(time, undefined, results, options.at);
    return undefined;
  }
  const { certificate, embedded } = read;
  await checkCryptography(covered, read, results);
  const trusted = options.trusted ?? [];
  const stamp = await checkTimeStamp(read.data.signer, results, trusted);
  checkTime(time, stamp?.at, results, options.at);
  // Only a trusted time-stamp server decides the time of signing; otherwise the signer's own claim counts.
  await checkCertificate(certificate, embedded, stamp?.trusted === true ? stamp.at : time, results, trusted);
  const { timeStamp, signature } = read.data.signer;
  return {
    signer: {
      name: certificate.subjectLine,
      certificateSha256: sha256Of(certificate.der),
      ...omitUndefined({ claimedTime: time?.toISOString(), stampedTime: stamp?.at.toISOString() }),
    },
    single: isSingleValue(signature.value, certificate.key),
    timeStamped: timeStamp !== undefined,
  };
}

function isSingleValue(value: Uint8Array, { kind }: PublicKey): boolean {
  if (kind.is !== 'ec') return true;
  try {
    return isLowS(readEcdsaValue(value).s, kind.curve);
  } catch (error) {
    if (error instanceof Malformed) return false;
    throw error;
  }
}

/**
 * Whether the signature is the one that was made: its value has the one form that is written here, and it carries a
 * time stamp exactly if the manifest, which it covers, says so.
 */
export function checkSignatureForm(
  { timeStamp }: Manifest,
  { single, timeStamped }: CheckedSignature,
  results: CheckResults,
): void {
  if (timeStamp === undefined) {
    results.notice(
      'signature.form',
      'the manifest is of an earlier version and does not say whether there was a time stamp: one that was added or removed, and another writing of the same signature, would not be seen',
    );
    return;
  }
  const wrong = single ? [] : ['the value of the signature was replaced by the other one that verifies'];
  if (timeStamped && timeStamp === 'none') wrong.push('a time stamp was added after the file was signed');
  if (!timeStamped && timeStamp === 'inside') wrong.push('the time stamp was taken out');
  results.failIf('signature.form', wrong, timeStamped ? 'as signed, with its time stamp' : 'as signed');
}

function checkTime(
  time: Date | undefined,
  stamped: Date | undefined,
  results: CheckResults,
  now: Date | undefined,
): void {
  if (time === undefined)
    results.fail('signature.time', 'the signature states no signing time that can be read');
  else if (now !== undefined && time.getTime() > now.getTime() + CLOCK_TOLERANCE_MS)
    results.fail('signature.time', `the claimed signing time ${time.toISOString()} lies in the future`);
  else if (stamped !== undefined && Math.abs(time.getTime() - stamped.getTime()) > CLOCK_TOLERANCE_MS)
    results.fail(
      'signature.time',
      `the claimed signing time ${time.toISOString()} is more than a day from the time stamp, ${stamped.toISOString()}`,
    );
  else results.pass('signature.time', `${time.toISOString()}, by the signer's own clock`);
}

function readCms({ contents }: Covered, results: CheckResults): DetachedSignature {
  const { structure, rest } = splitContents(contents);
  results.failIf(
    'signature.padding',
    rest.every((byte) => byte === 0) ? [] : ['something other than zeros follows the signature in its room'],
    `${rest.length} zero bytes`,
  );
  return readDetached(structure);
}

async function checkCryptography(
  covered: Covered,
  read: DetachedSignature,
  results: CheckResults,
): Promise<void> {
  const { digest } = read.data.signer;
  const judged = await judgeDetached(read, [covered.first, covered.second]);
  results.failIf(
    'signature.algorithms',
    judged.algorithms,
    `${HASHES[digest] ?? digest} with ${describeKey(read.certificate.key)}`,
  );
  results.attempt(
    'signature.certificate',
    () => requireBinding(read),
    () => 'its hash is among what was signed',
  );
  if (judged.algorithms.length > 0) return;
  results.failIf(
    'signature.digest',
    judged.digest.map(() => 'the file was changed after it was signed'),
    judged.contentHash,
  );
  results.failIf('signature.value', judged.value, 'it fits');
}
