import type { GapsInput } from '../core/assess/assess-gaps.js';
import type { JoinedLogs } from '../core/assess/logs/join.js';
import { reconcileTimes } from '../core/assess/reconcile-times.js';
import type { RecordState } from '../core/model/state.js';
import type { Instant } from '../core/model/time.js';
import type { RecordView } from '../record/record-at.js';
import { readLogs } from './read-logs.js';
import { type LoadedRuleSet, loadRuleSet } from './rule-set.js';

export interface AssessedInput extends GapsInput {
  ruleSet: LoadedRuleSet;
  /** Logs that cover the same time, and where downloads of one instrument disagree. */
  overlaps: Omit<JoinedLogs, 'joined'>;
}

/** What a record is assessed from: its state with times reconciled, its logs, its rules. */
export async function readAssessInput(
  record: RecordView,
  at: Instant,
  /** The part of the record to assess; all of it by default. */
  select: (state: RecordState) => RecordState = (state) => state,
): Promise<AssessedInput> {
  const state = select(reconcileTimes(record.state()));
  const { joined: logs, ...overlaps } = await readLogs(record, state);
  return { state, logs, overlaps, ruleSet: await loadRuleSet(state.delivery.rules, record.folder), at };
}
