import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { sha256Of } from '../core/ledger/tree.js';
import { DossierError } from '../core/model/error.js';
import type { Clock } from '../core/ports/clock.js';
import type { OriginalsStore } from '../core/ports/originals-store.js';
import { parseDeliveryFile } from '../intake/delivery-file.js';
import { machinePorts, type Ports } from '../record/disk/ports.js';
import { type DeliveryRecord, openRecord } from '../record/store.js';

export const DELIVERY_FILE = 'delivery.yaml';

/** The delivery that is worked on. */
export interface OpenDelivery {
  folder: string;
  by: string;
  now: Clock;
  /** Where the delivery's originals are kept; in its folder when left out. */
  originals?: OriginalsStore;
}

/** The machine's disk and processes with the caller's clock. */
export function portsWith(now: Clock): Ports {
  return { ...machinePorts(), now };
}

/**
 * Opens a delivery, hands its record to `work`, and closes it whatever happens.
 * A change of delivery.yaml since the last command enters the record first, so that even a reading
 * command may write that one entry.
 * @param work gets the record and the text of delivery.yaml that its facts were read from
 * Throws DossierError for a bad delivery.yaml, a missing, damaged or locked record, or a disk error.
 */
export async function withDelivery<T>(
  { folder, by, now, originals }: OpenDelivery,
  write: boolean,
  work: (record: DeliveryRecord, factsText: string) => Promise<T>,
): Promise<T> {
  const file = join(folder, DELIVERY_FILE);
  const text = await readFile(file, 'utf8').catch((cause: unknown) => {
    throw new DossierError('bad-delivery-file', 'delivery.yaml cannot be read', { where: { file }, cause });
  });
  const sha256 = sha256Of(Buffer.from(text, 'utf8'));
  const ports = portsWith(now);
  let record = await openRecord(folder, ports, { write, originals });
  try {
    // Facts in the record were checked when they were entered.
    if (record.state().deliveryHash !== sha256) {
      const { written } = parseDeliveryFile(text, file);
      if (!write) {
        await record.close();
        record = await openRecord(folder, ports, { write: true, originals });
      }
      await record.syncFacts({ sha256, facts: written, by });
    }
    return await work(record, text);
  } finally {
    await record.close();
  }
}
