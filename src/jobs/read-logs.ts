import { correctLog } from '../assess/clocks/log-times.js';
import { logPoints } from '../assess/clocks/points.js';
import { type JoinedLogs, joinLogs } from '../assess/logs/join.js';
import { readUnitLog } from '../intake/unit-log/read.js';
import { DossierError } from '../model/error.js';
import type { RecordState } from '../model/state.js';
import type { UnitLog } from '../model/unit-log.js';
import type { DeliveryRecord } from '../record/store.js';

/**
 * The unit logs of a record, read anew from their originals as their mappings say, with their clocks corrected,
 * and downloads of one instrument joined. Throws DossierError `record-damaged` when an original is missing.
 */
export async function readLogs(record: DeliveryRecord, state: RecordState): Promise<JoinedLogs> {
  const logs: UnitLog[] = [];
  for (const item of state.evidence) {
    if (item.kind !== 'unit-log') continue;
    const path = record.originalPath(item.file.sha256);
    if (path === undefined)
      throw new DossierError(
        'record-damaged',
        `the original of ${item.evidence} (${item.file.name}) is missing`,
        {
          where: { file: record.folder },
          fix: 'Put the folder back from a copy, or collect the file again.',
        },
      );
    const log = await readUnitLog(path, item.mapping, { evidence: item.evidence, addedSeconds: 0 });
    logs.push(correctLog(log, logPoints(state.clocks, item.evidence)));
  }
  return joinLogs(logs);
}
