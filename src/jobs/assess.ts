import { assess } from '../core/assess/assess.js';
import type { JoinedLogs } from '../core/assess/logs/join.js';
import { reconcileTimes } from '../core/assess/reconcile-times.js';
import { DossierError } from '../core/model/error.js';
import type { Assessment } from '../core/model/results.js';
import type { RecordState } from '../core/model/state.js';
import { type Instant, toInstant } from '../core/model/time.js';
import type { UnitLog } from '../core/model/unit-log.js';
import type { Clock } from '../core/ports/clock.js';
import type { DeliveryRecord } from '../record/store.js';
import { loadClaimDeadlines } from './claim-deadlines.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { readLogs } from './read-logs.js';
import { type LoadedRuleSet, loadRuleSet } from './rule-set.js';

/** Which delivery is assessed, and for when. */
export interface AssessDeliveryInput extends OpenDelivery {
  /** The instant at which "not yet due" and "lost" are judged. */
  at: Instant;
  /** The carrier's own folder of templates, which may hold its deadlines of a claim. */
  templates?: string | undefined;
}

/** A delivery as its record stands, and what that shows. */
export interface AssessedDelivery {
  state: RecordState;
  /** Downloads of one instrument are joined to one log. */
  logs: UnitLog[];
  /** Logs that cover the same time, and where downloads of one instrument disagree. */
  overlaps: Omit<JoinedLogs, 'joined'>;
  ruleSet: LoadedRuleSet;
  assessment: Assessment;
}

/**
 * The assessment of a delivery's record.
 * @throws DossierError when the delivery, its rule set or its deadlines can't be read
 */
export async function assessDelivery(input: AssessDeliveryInput): Promise<AssessedDelivery> {
  return withDelivery(input, false, (record) => assessRecord(record, input.at, undefined, input.templates));
}

/** The assessment of a record that is open already. */
export async function assessRecord(
  record: DeliveryRecord,
  at: Instant,
  /** The part of the record to assess; all of it by default. */
  select: (state: RecordState) => RecordState = (state) => state,
  /** The carrier's own folder of templates, which may hold its claim deadlines. */
  templates?: string,
): Promise<AssessedDelivery> {
  const state = select(reconcileTimes(record.state()));
  const [{ joined: logs, ...overlaps }, ruleSet, claimClocks] = await Promise.all([
    readLogs(record, state),
    loadRuleSet(state.delivery.rules, record.folder),
    loadClaimDeadlines(templates),
  ]);
  const assessment = assess({ state, logs, ruleSet, at, claimDeadlines: claimClocks });
  return { state, logs, overlaps, ruleSet, assessment };
}

/** The instant given by `--at`: an ISO time with offset, or now. */
export function readAt(text: string | undefined, now: Clock): Instant {
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
