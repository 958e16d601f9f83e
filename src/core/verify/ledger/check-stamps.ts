import { printCheckpoint } from '../../ledger/checkpoint.js';
import { fromBase64, utf8Bytes } from '../../model/bytes.js';
import type { Entry, EntryOf } from '../../model/entry.js';
import { milliseconds } from '../../model/time.js';
import type { CheckResults } from '../check-results.js';
import { CLOCK_TOLERANCE_MS } from '../clock-tolerance.js';
import { judgeTimeStamp, readTimeStamp } from '../cms/time-stamp.js';
import { Malformed, refuse } from '../malformed.js';
import { isTrusted, readableCertificates } from '../trust.js';

/** The tokens (RFC 3161) that the ledger keeps: each is over the checkpoint text of the state that it names. */
export async function checkStamps(
  entries: readonly Entry[],
  name: string | undefined,
  results: CheckResults,
  trusted: readonly Uint8Array[],
): Promise<void> {
  const stamps = entries.filter(
    (one): one is EntryOf<'time-stamp-received'> => one.type === 'time-stamp-received',
  );
  if (stamps.length === 0) {
    results.skip('ledger.time-stamps', 'The ledger keeps none.');
    return;
  }
  if (name === undefined) {
    results.skip(
      'ledger.time-stamps',
      'The name of the record is not in this copy, and the stamps are over it.',
    );
    return;
  }
  const authorities = readableCertificates(trusted);
  const wrong: string[] = [];
  const open: string[] = [];
  for (const { seq, at, body } of stamps) {
    const say = (words: string) => `entry ${seq}: ${words}`;
    try {
      const read = readTimeStamp(fromBase64(body.token) ?? refuse('the time stamp is not in base64'));
      const stamped = utf8Bytes(printCheckpoint({ delivery: name, size: body.size, root: body.root }));
      const judged = await judgeTimeStamp(read, stamped);
      wrong.push(...judged.wrong.map(say));
      if (Math.abs(milliseconds(at) - read.at.getTime()) > CLOCK_TOLERANCE_MS)
        wrong.push(say(`entered at ${at} by the machine's clock, and stamped at ${read.at.toISOString()}`));
      const { server } = judged;
      if (server !== undefined && !(await isTrusted(server, read.certificates, authorities, read.at)))
        open.push(say(`${judged.said}; none of the certificates you trust vouches for that server`));
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      wrong.push(say(error.message));
    }
  }
  if (wrong.length > 0) results.failIf('ledger.time-stamps', wrong, '');
  else results.noteIf('ledger.time-stamps', open, `${stamps.length} time stamps`);
}
