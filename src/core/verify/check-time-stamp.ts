import type { CheckResults } from './check-results.js';
import type { SignedData } from './cms/signed-data.js';
import { judgeTimeStamp, readTimeStamp } from './cms/time-stamp.js';
import { isTrusted, readableCertificates } from './trust.js';

/** A sound time stamp: when, and whether the reader trusts its server. */
export interface CheckedTimeStamp {
  at: Date;
  trusted: boolean;
}

/** Checks the time stamp over the signature value, if there is one (ETSI EN 319 142-1, baseline B-T). */
export async function checkTimeStamp(
  signer: SignedData['signer'],
  results: CheckResults,
  trusted: readonly Uint8Array[],
): Promise<CheckedTimeStamp | undefined> {
  const { timeStamp } = signer;
  if (timeStamp === undefined) {
    results.skip('signature.time-stamp', 'There is none; it is not required.');
    results.skip('time-stamp.trusted', 'There is no time stamp.');
    return undefined;
  }
  const read = results.attempt(
    'signature.time-stamp',
    () => readTimeStamp(timeStamp),
    ({ at }) => at.toISOString(),
  );
  if (read === undefined) return undefined;
  const judged = await results.attemptLater(
    'signature.time-stamp',
    () => judgeTimeStamp(read, signer.signature.value),
    ({ said }) => said,
  );
  if (judged === undefined) return undefined;
  const { wrong, server, said } = judged;
  results.failIf('signature.time-stamp', wrong, said);
  if (wrong.length > 0 || server === undefined) return undefined;
  const vouched = await isTrusted(server, read.certificates, readableCertificates(trusted), read.at);
  if (vouched) results.pass('time-stamp.trusted', server.subjectLine);
  else
    results.skip(
      'time-stamp.trusted',
      'None of the certificates you trust is or issued that of the time-stamp server; its time is only its word.',
    );
  return { at: read.at, trusted: vouched };
}
