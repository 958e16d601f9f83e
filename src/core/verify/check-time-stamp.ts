import type { Checklist } from './checklist.js';
import { subjectLine } from './cms/certificate.js';
import type { SignedData } from './cms/signed-data.js';
import { judgeTimeStamp, readTimeStamp } from './cms/time-stamp.js';
import { isVouchedFor, readableCertificates } from './trust.js';

/** A sound time stamp: when, and whether the reader trusts its server. */
export interface Stamped {
  at: Date;
  trusted: boolean;
}

/** Checks the time stamp over the signature value, if there is one (ETSI EN 319 142-1, baseline B-T). */
export function checkTimeStamp(
  signer: SignedData['signer'],
  list: Checklist,
  trusted: readonly Uint8Array[],
): Stamped | undefined {
  const { timeStamp } = signer;
  if (timeStamp === undefined) {
    list.skip('signature.time-stamp', 'There is none; it is not required.');
    list.skip('time-stamp.trusted', 'There is no time stamp.');
    return undefined;
  }
  const read = list.ask(
    'signature.time-stamp',
    () => readTimeStamp(timeStamp),
    ({ at }) => at.toISOString(),
  );
  if (read === undefined) return undefined;
  const judged = list.ask(
    'signature.time-stamp',
    () => judgeTimeStamp(read, signer.signature.value),
    ({ said }) => said,
  );
  if (judged === undefined) return undefined;
  const { wrong, server, said } = judged;
  list.judge('signature.time-stamp', wrong, said);
  if (wrong.length > 0 || server === undefined) return undefined;
  const vouched = isVouchedFor(server, read.certificates, readableCertificates(trusted), read.at);
  if (vouched) list.pass('time-stamp.trusted', subjectLine(server));
  else
    list.skip(
      'time-stamp.trusted',
      'None of the certificates you trust is or issued that of the time-stamp server; its time is only its word.',
    );
  return { at: read.at, trusted: vouched };
}
