import { createHash, randomBytes } from 'node:crypto';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Clock } from '../../core/ports/clock.js';
import type { TimeStampClient } from '../../core/ports/time-stamps.js';
import { CLOCK_TOLERANCE_MS } from '../../core/verify/clock-tolerance.js';
import { judgeTimeStamp, readTimeStamp, type TimeStamp } from '../../core/verify/cms/time-stamp.js';
import { Malformed } from '../../core/verify/malformed.js';

/** How a time stamp is obtained. */
export interface Obtaining {
  from: TimeStampClient;
  now: Clock;
  signal?: AbortSignal | undefined;
}

/** A time stamp that was checked. */
export interface ObtainedTimeStamp {
  /** The token in DER. */
  token: Uint8Array;
  /** The time it states. */
  at: Date;
  /** The server, as its certificate names it. */
  server: string;
}

/**
 * A time stamp over the bytes, checked as a stranger would: imprint, nonce, policy, signature, certificate for time
 * stamps. Whether the server itself deserves trust is for the reader of the dossier to say.
 * @throws DossierError time-stamp when what came back is no good, and whatever the client throws
 */
export async function obtainTimeStamp(
  { from, now, signal }: Obtaining,
  bytes: Uint8Array,
): Promise<ObtainedTimeStamp> {
  const nonce = positive(randomBytes(16));
  const digest = new Uint8Array(createHash('sha256').update(bytes).digest());
  const token = await from.request({
    digest,
    nonce: Uint8Array.from(nonce),
    ...omitUndefined({ signal }),
  });
  const { policy } = from;
  const { read, wrong, server } = await judge(token, bytes);
  if (read !== undefined) {
    if (read.nonce === undefined || Buffer.compare(read.nonce, nonce) !== 0)
      wrong.push('the time stamp repeats another nonce: it may be an old one');
    if (policy !== undefined && read.policy !== policy)
      wrong.push(`the time stamp is under policy ${read.policy}, asked was ${policy}`);
    const here = now();
    // A machine whose clock is farther off would spoil the dossier.
    if (Math.abs(read.at.getTime() - here.getTime()) > CLOCK_TOLERANCE_MS)
      wrong.push(
        `the server says ${read.at.toISOString()} and this machine ${here.toISOString()}: check the date of this machine`,
      );
  }
  if (read === undefined || wrong.length > 0)
    throw new DossierError('time-stamp', `the time stamp that came back is not good: ${wrong.join('; ')}`, {
      where: { file: from.name },
      fix: 'Nothing was kept of it. Ask another server, or the one who runs this one.',
    });
  return { token, at: read.at, server };
}

/** A positive DER integer of fixed length: the first byte between 0x40 and 0x7f. */
function positive(bytes: Uint8Array): Uint8Array {
  const copy = Uint8Array.from(bytes);
  copy[0] = ((copy[0] ?? 0) & 0x3f) | 0x40;
  return copy;
}

async function judge(token: Uint8Array, bytes: Uint8Array) {
  let read: TimeStamp | undefined;
  try {
    read = readTimeStamp(token);
    const { wrong, server } = await judgeTimeStamp(read, bytes);
    return { read, wrong, server: server?.subjectLine ?? '' };
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    return { read: undefined, wrong: [error.message], server: '' };
  }
}
