import { randomBytes } from 'node:crypto';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { CLOCK_TOLERANCE_MS } from '../core/verify/clock-tolerance.js';
import { judgeTimeStamp, readTimeStamp, type TimeStamp } from '../core/verify/cms/time-stamp.js';
import { Malformed } from '../core/verify/malformed.js';
import { requestTimeStamp } from '../signing/time-stamp.js';

export interface TimeStampWish {
  url: string;
  /** Dotted identifier of the policy asked for. */
  policy?: string;
  now: () => Date;
  /** Milliseconds for each try, and how many. */
  timeout?: number;
  tries?: number;
}

/**
 * A time stamp over the bytes, checked as a stranger would: imprint, nonce, policy, signature, certificate for time
 * stamps. Whether the server itself deserves trust is for the reader of the dossier to say.
 * Throws DossierError `time-stamp` when the server can't be reached, refuses, or answers with anything else.
 */
export async function obtainTimeStamp(
  wish: TimeStampWish,
  bytes: Uint8Array,
): Promise<{ token: Uint8Array; at: Date; server: string }> {
  const { url, policy, timeout, tries } = wish;
  const { token, nonce } = await requestTimeStamp({
    url,
    bytes,
    random: (count) => randomBytes(count),
    ...omitUndefined({ policy, timeout, tries }),
  });
  const { read, wrong, server } = judge(token, bytes);
  if (read !== undefined) {
    if (read.nonce === undefined || Buffer.compare(read.nonce, nonce) !== 0)
      wrong.push('the time stamp repeats another nonce: it may be an old one');
    if (policy !== undefined && read.policy !== policy)
      wrong.push(`the time stamp is under policy ${read.policy}, asked was ${policy}`);
    const apart = Math.abs(read.at.getTime() - wish.now().getTime());
    // A machine whose clock is farther off would spoil the dossier.
    if (apart > CLOCK_TOLERANCE_MS)
      wrong.push(
        `the server says ${read.at.toISOString()} and this machine ${wish.now().toISOString()}: check the date of this machine`,
      );
  }
  if (read === undefined || wrong.length > 0)
    throw new DossierError('time-stamp', `the time stamp that came back is not good: ${wrong.join('; ')}`, {
      where: { file: url },
      fix: 'Nothing was kept of it. Ask another server, or the one who runs this one.',
    });
  return { token, at: read.at, server };
}

function judge(token: Uint8Array, bytes: Uint8Array) {
  let read: TimeStamp | undefined;
  try {
    read = readTimeStamp(token);
    const { wrong, server } = judgeTimeStamp(read, bytes);
    return { read, wrong, server: server?.x509.subject.replaceAll('\n', ', ') ?? '' };
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    return { read: undefined, wrong: [error.message], server: '' };
  }
}
