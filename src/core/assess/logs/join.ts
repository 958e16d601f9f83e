import type { EvidenceId } from '../../model/evidence.js';
import type { TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { forEachSharedRow, type RowDifference, relateLogs, rowDifferences } from './compare.js';
import { mergeLogs } from './merge.js';

/** Two logs that cover the same time. */
export interface LogOverlap {
  /** The log that prevails where both have a row comes first. */
  logs: [EvidenceId, EvidenceId];
  span: TimeRange;
  /** Rows of the same instant in both, and of these the rows that agree within rounding. */
  sharedRows: number;
  agreeingRows: number;
  /** The rows show one instrument, and the logs are joined; otherwise each stays separate. */
  joined: boolean;
}

/** An instant at which two downloads of one instrument differ. */
export interface RowDisagreement {
  at: number;
  counts: { log: EvidenceId; row: number };
  other: { log: EvidenceId; row: number };
  differences: RowDifference[];
}

/** Unit logs, downloads of one instrument joined, and where they overlap. */
export interface JoinedLogs {
  /** One log for each instrument and stretch of time; an unjoined log is the one that was given. */
  joined: UnitLog[];
  overlaps: LogOverlap[];
  /** At most 1,000, in the order of time; `disagreementCount` counts all. */
  disagreements: RowDisagreement[];
  disagreementCount: number;
}

const KEPT = 1_000;

/**
 * Joins downloads of one unit or recorder that overlap or continue each other, so that time in two files is counted
 * once. Where both have a row of the same instant, the log that was recorded first prevails; rows that disagree are
 * counted and listed, never averaged. Logs of several instruments stay separate. Pure; never throws.
 */
export function joinLogs(logs: readonly UnitLog[]): JoinedLogs {
  const result: JoinedLogs = { joined: [], overlaps: [], disagreements: [], disagreementCount: 0 };
  const byTime = logs
    .map((log, rank) => ({ log, rank }))
    .sort((a, b) => (a.log.times.at(0) ?? 0) - (b.log.times.at(0) ?? 0) || a.rank - b.rank);
  const groups: { log: UnitLog; rank: number }[] = [];
  for (const next of byTime) {
    const group = groups.find((one) => takes(one, next, result));
    if (group === undefined) {
      groups.push({ ...next });
      continue;
    }
    const [first, second] = group.rank <= next.rank ? [group.log, next.log] : [next.log, group.log];
    group.log = mergeLogs(first, second);
    group.rank = Math.min(group.rank, next.rank);
  }
  result.disagreements.sort((a, b) => a.at - b.at);
  result.joined = groups.sort((a, b) => a.rank - b.rank).map(({ log }) => log);
  return result;
}

/** Whether a log belongs to a group; the rows it shares go into the result. */
function takes(
  group: { log: UnitLog; rank: number },
  next: { log: UnitLog; rank: number },
  result: JoinedLogs,
): boolean {
  const [a, b] = group.rank <= next.rank ? [group.log, next.log] : [next.log, group.log];
  const relation = relateLogs(a, b);
  if (relation.is === 'apart') return false;
  if (relation.is === 'continuation') return true;
  const { span, sharedRows, agreeingRows } = relation;
  const joined = relation.is === 'overlap';
  result.overlaps.push({ logs: [a.evidence, b.evidence], span, sharedRows, agreeingRows, joined });
  if (joined) nameDisagreements(a, b, result);
  return joined;
}

function nameDisagreements(a: UnitLog, b: UnitLog, result: JoinedLogs): void {
  forEachSharedRow(a, b, (i, j) => {
    const found = rowDifferences(a, i, b, j);
    if (found.length === 0) return;
    result.disagreementCount += 1;
    if (result.disagreements.length >= KEPT) return;
    result.disagreements.push({
      at: a.times[i] ?? 0,
      counts: { log: sourceLogOf(a, i), row: a.rows[i] ?? 0 },
      other: { log: sourceLogOf(b, j), row: b.rows[j] ?? 0 },
      differences: found,
    });
  });
}

/** The file that a row of a log comes from. */
export function sourceLogOf(log: UnitLog, index: number): EvidenceId {
  return log.joinedFrom?.evidence[log.joinedFrom.of[index] ?? 0] ?? log.evidence;
}
