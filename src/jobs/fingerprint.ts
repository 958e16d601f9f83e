import { printCheckpoint, printFingerprint } from '../core/ledger/checkpoint.js';
import type { NewEntry } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { TimeStampClient } from '../core/ports/time-stamps.js';
import { type OpenDelivery, withDelivery } from './delivery.js';

/** To whom a fingerprint is sent, or who confirms it. */
export interface FingerprintInput extends OpenDelivery {
  /** The recipient and the channel; recorded as sent. */
  to?: string;
  how?: string;
  /** Time-stamp server that is to confirm it, such as `httpTimeStamps({ url })`. */
  timeStamps?: TimeStampClient;
}

/** The fingerprint of the record as it stands. */
export interface FingerprintReport {
  /** `<delivery> <size> <root>`: the line to send, which later proves what the record held. */
  line: string;
  delivery: string;
  size: number;
  root: string;
  /** Entries added for it. */
  recorded: number[];
  stamped?: { at: string; server: string };
  notices: string[];
}

/**
 * The fingerprint of the record. With `to` or `timeStamps` the disclosure or the time stamp is recorded in entries
 * after it, which the line itself does not cover. Throws DossierError `bad-usage`, `time-stamp`, and whatever
 * opening the record throws.
 */
export async function fingerprint(input: FingerprintInput): Promise<FingerprintReport> {
  const { to, how, timeStamps } = input;
  if (to === undefined && how !== undefined)
    throw new DossierError('bad-usage', '--how says how it was sent, and --to to whom is missing', {
      fix: 'Such as: dossier fingerprint --to "R. Vela" --how text',
    });
  const writes = to !== undefined || timeStamps !== undefined;
  return withDelivery(input, writes, async (record) => {
    const head = record.head;
    const entries: NewEntry[] = [];
    let stamped: FingerprintReport['stamped'];
    if (timeStamps !== undefined) {
      const { obtainTimeStamp } = await import('./signing/time-stamp.js');
      const { token, at, server } = await obtainTimeStamp(
        { from: timeStamps, now: input.now },
        Buffer.from(printCheckpoint(head)),
      );
      stamped = { at: at.toISOString(), server };
      entries.push({
        type: 'time-stamp-received',
        by: input.by,
        body: {
          size: head.size,
          root: head.root,
          token: Buffer.from(token).toString('base64'),
          from: server,
        },
      });
    }
    if (to !== undefined)
      entries.push({
        type: 'fingerprint-published',
        by: input.by,
        body: { size: head.size, root: head.root, to, how: how ?? 'not said' },
      });
    const added = entries.length === 0 ? [] : await record.append(entries);
    return {
      line: printFingerprint(head),
      ...head,
      recorded: added.map(({ seq }) => seq),
      ...omitUndefined({ stamped }),
      notices: record.notices.map(({ message }) => message),
    };
  });
}
