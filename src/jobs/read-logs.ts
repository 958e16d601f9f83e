import { correctLog } from '../core/assess/camera-clocks/log-times.js';
import { logPoints, logShifts } from '../core/assess/camera-clocks/points.js';
import { logsByCompartment } from '../core/assess/logs/compartments.js';
import { type JoinedLogs, joinLogs } from '../core/assess/logs/join.js';
import { DossierError } from '../core/model/error.js';
import type { EvidenceId } from '../core/model/evidence.js';
import { findEvidence, type ItemOf, type RecordState } from '../core/model/state.js';
import type { UnitLog } from '../core/model/unit-log.js';
import { readUnitLog } from '../intake/unit-log/read.js';
import type { RecordView } from '../record/record-at.js';

/**
 * The unit logs of a record, read from their originals by their mappings, with clocks corrected and downloads of
 * one instrument joined. Throws DossierError `record-damaged` when an original is missing.
 */
export async function readLogs(record: RecordView, state: RecordState): Promise<JoinedLogs> {
  const logs: UnitLog[] = [];
  for (const item of state.evidence) {
    // A replaced reading of the same rows must not count twice.
    if (item.kind !== 'unit-log' || item.replacedBy !== undefined) continue;
    const path = await record.originalPath(item.file.sha256);
    if (path === undefined)
      throw new DossierError(
        'record-damaged',
        `the original of ${item.evidence} (${item.file.name}) is missing`,
        {
          where: { file: record.folder },
          fix: 'Put the folder back from a copy, or collect the file again.',
        },
      );
    const before = readBefore(state, item);
    const shifts = logShifts(state.clocks, item.evidence, before);
    const log = await readUnitLog(path, item.mapping, { evidence: item.evidence, addedSeconds: 0, shifts });
    const points = logPoints(state.clocks, item.evidence, before);
    logs.push(...logsByCompartment(log, item.place?.compartment).map((one) => correctLog(one, points)));
  }
  return joinLogs(logs);
}

/** Earlier readings of the same file in the same zone: comparisons of their clock apply to this one. */
function readBefore(state: RecordState, log: ItemOf<'unit-log'>): EvidenceId[] {
  const before: EvidenceId[] = [];
  for (let id = log.replaces; id !== undefined; ) {
    const item = findEvidence(state, id);
    if (item?.kind !== 'unit-log' || before.includes(id)) break;
    if (item.mapping.time.zone === log.mapping.time.zone) before.push(id);
    id = item.replaces;
  }
  return before;
}
