import { createHash } from 'node:crypto';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Signer } from '../model/verification.js';
import { checkCertificate } from './check-certificate.js';
import type { CheckResults } from './check-results.js';
import { checkTimeStamp } from './check-time-stamp.js';
import { CLOCK_TOLERANCE_MS } from './clock-tolerance.js';
import { describeKey, HASHES } from './cms/algorithms.js';
import { subjectLine } from './cms/certificate.js';
import { type DetachedSignature, judgeDetached, readDetached, requireBinding } from './cms/detached.js';
import { splitContents } from './cms/signed-data.js';
import type { TrustOptions } from './options.js';
import type { PdfFile } from './pdf/file.js';
import {
  type Covered,
  claimedTime,
  coveredBytes,
  findSignature,
  requireCertification,
} from './pdf/signature.js';

/** Checks the one signature of the file, its certificate, its time stamp and who vouches for it. */
export function checkSignature(file: PdfFile, list: CheckResults, options: TrustOptions): Signer | undefined {
  const found = list.attempt(
    'signature.present',
    () => findSignature(file),
    () => 'one signature found',
  );
  if (found === undefined) return undefined;
  list.attempt(
    'signature.certification',
    () => requireCertification(file, found),
    () => 'certified, no changes allowed',
  );
  const time = claimedTime(found);
  const covered = list.attempt(
    'signature.range',
    () => coveredBytes(file, found),
    ({ first, second }) => `${first.length + second.length} of ${file.bytes.length} bytes are covered`,
  );
  if (covered === undefined) {
    checkTime(time, undefined, list, options.at);
    return undefined;
  }
  const read = list.attempt(
    'signature.structure',
    () => readCms(covered, list),
    () => 'one signer, certificate inside',
  );
  if (read === undefined) {
    checkTime(time, undefined, list, options.at);
    return undefined;
  }
  const { certificate, embedded } = read;
  checkCryptography(covered, read, list);
  const trusted = options.trusted ?? [];
  const stamp = checkTimeStamp(read.data.signer, list, trusted);
  checkTime(time, stamp?.at, list, options.at);
  // Only a server that the reader trusts may say when; else it is the signer's own word.
  checkCertificate(certificate, embedded, stamp?.trusted === true ? stamp.at : time, list, trusted);
  return {
    name: subjectLine(certificate),
    certificateSha256: createHash('sha256').update(certificate.der).digest('hex'),
    ...omitUndefined({ claimedTime: time?.toISOString(), stampedTime: stamp?.at.toISOString() }),
  };
}

function checkTime(
  time: Date | undefined,
  stamped: Date | undefined,
  list: CheckResults,
  now: Date | undefined,
): void {
  if (time === undefined)
    list.fail('signature.time', 'the signature states no signing time that can be read');
  else if (now !== undefined && time.getTime() > now.getTime() + CLOCK_TOLERANCE_MS)
    list.fail('signature.time', `the claimed signing time ${time.toISOString()} lies in the future`);
  else if (stamped !== undefined && Math.abs(time.getTime() - stamped.getTime()) > CLOCK_TOLERANCE_MS)
    list.fail(
      'signature.time',
      `the claimed signing time ${time.toISOString()} is more than a day from the time stamp, ${stamped.toISOString()}`,
    );
  else list.pass('signature.time', `${time.toISOString()}, by the signer's own clock`);
}

function readCms({ contents }: Covered, list: CheckResults): DetachedSignature {
  const { structure, rest } = splitContents(contents);
  list.failIf(
    'signature.padding',
    rest.every((byte) => byte === 0) ? [] : ['something other than zeros follows the signature in its room'],
    `${rest.length} zero bytes`,
  );
  return readDetached(structure);
}

function checkCryptography(covered: Covered, read: DetachedSignature, list: CheckResults): void {
  const { digest } = read.data.signer;
  const judged = judgeDetached(read, [covered.first, covered.second]);
  list.failIf(
    'signature.algorithms',
    judged.algorithms,
    `${HASHES[digest] ?? digest} with ${describeKey(read.certificate.x509.publicKey)}`,
  );
  list.attempt(
    'signature.certificate',
    () => requireBinding(read),
    () => 'its hash is among what was signed',
  );
  if (judged.algorithms.length > 0) return;
  list.failIf(
    'signature.digest',
    judged.digest.map(() => 'the file was changed after it was signed'),
    judged.contentHash,
  );
  list.failIf('signature.value', judged.value, 'it fits');
}
