import { assess } from '../assess/assess.js';
import { correctLog } from '../assess/clocks/log-times.js';
import { logPoints } from '../assess/clocks/points.js';
import { settle } from '../assess/settle.js';
import { readUnitLog } from '../intake/unit-log/read.js';
import { DossierError } from '../model/error.js';
import type { Assessment } from '../model/results.js';
import type { RecordState } from '../model/state.js';
import { type Instant, toInstant } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import type { DeliveryRecord } from '../record/store.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { type LoadedRuleSet, loadRuleSet } from './rule-set.js';

export interface AssessedDelivery {
  state: RecordState;
  logs: UnitLog[];
  ruleSet: LoadedRuleSet;
  assessment: Assessment;
}

/**
 * What the record of a delivery shows at a moment.
 * @param at the moment that "not yet due" and "lost" are judged at
 */
export async function assessDelivery(input: OpenDelivery & { at: Instant }): Promise<AssessedDelivery> {
  return withDelivery(input, false, (record) => assessRecord(record, input.at));
}

/** The same for a record that is open already. */
export async function assessRecord(record: DeliveryRecord, at: Instant): Promise<AssessedDelivery> {
  const state = settle(record.state());
  const [logs, ruleSet] = await Promise.all([
    readLogs(record, state),
    loadRuleSet(state.delivery.rules, record.folder),
  ]);
  return { state, logs, ruleSet, assessment: assess({ state, logs, ruleSet, at }) };
}

async function readLogs(record: DeliveryRecord, state: RecordState): Promise<UnitLog[]> {
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
  return logs;
}

/** The moment meant by `--at`: an ISO time with offset, or now. */
export function readAt(text: string | undefined, now: () => Date): Instant {
  if (text === undefined) return toInstant(now().getTime());
  const withOffset = /(?:Z|[+-]\d{2}:?\d{2})$/i.test(text);
  const at = Date.parse(text);
  if (!withOffset || Number.isNaN(at))
    throw new DossierError('bad-usage', `"${text}" is not a moment`, {
      where: { field: '--at' },
      fix: 'Write it with its offset from UTC, such as 2026-07-14T05:00-07:00 or 2026-07-14T12:00Z.',
    });
  return toInstant(at);
}
