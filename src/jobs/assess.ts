import { assess } from '../core/assess/assess.js';
import type { JoinedLogs } from '../core/assess/logs/join.js';
import type { Assessment } from '../core/model/results.js';
import type { RecordState } from '../core/model/state.js';
import type { Instant } from '../core/model/time.js';
import type { UnitLog } from '../core/model/unit-log.js';
import type { RecordView } from '../record/record-at.js';
import { readAssessInput } from './assess-input.js';
import { loadClaimDeadlines } from './claim-deadlines.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import type { LoadedRuleSet } from './rule-set.js';

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
  record: RecordView,
  at: Instant,
  /** The part of the record to assess; all of it by default. */
  select?: (state: RecordState) => RecordState,
  /** The carrier's own folder of templates, which may hold its claim deadlines. */
  templates?: string,
): Promise<AssessedDelivery> {
  const input = await readAssessInput(record, at, select);
  const { state, logs, overlaps, ruleSet } = input;
  const assessment = assess({ ...input, claimDeadlines: await loadClaimDeadlines(templates) });
  return { state, logs, overlaps, ruleSet, assessment };
}
