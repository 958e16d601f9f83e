import type { DeadlineRule } from '../../model/claim-deadlines.js';
import type { Stop } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import type { DeadlineRemark, DeadlineTime } from '../../model/results.js';
import type { MilestoneEvent, Milestones } from '../milestones.js';
import { HOUR } from './business-hours.js';
import { atTime, beginningOf } from './deadline-milestones.js';
import { type ConsignorNotice, firstNotice } from './notices.js';

/**
 * What an inspection does to a time to reject (7 CFR 46.2(cc)(3)): the end moves only where the receiver could not
 * obtain one, or could not make a thorough one for weather, before the end, and told the consignor so within the time;
 * then to so long after its result is available. Otherwise a remark says why it moves nothing. Undefined when no
 * inspection is spoken of. `due` that is undefined: there is no end until the result.
 */
export function extensionOf(
  { extended }: Pick<DeadlineRule, 'extended'>,
  stop: Stop,
  due: DeadlineTime,
  { milestones, notices }: { milestones: Milestones; notices: readonly ConsignorNotice[] },
): { due?: DeadlineTime | undefined; remarks: DeadlineRemark[] } | undefined {
  if (extended === undefined) return undefined;
  const events = milestones.events.filter((one) => one.stop === stop.id);
  const first = (name: MilestoneEvent['event']) => events.find(({ event }) => event === name);
  const asked = first('inspection-requested');
  const failed = first('inspection-unavailable');
  const began = asked ?? failed;
  if (began === undefined) return undefined;
  const remark = (is: DeadlineRemark['is'], ...more: (EvidenceId | undefined)[]) => ({
    // One certificate can say both when it was asked for and what it found.
    remarks: [{ is, evidence: [...new Set([began.evidence, ...more.filter((one) => one !== undefined)])] }],
  });
  const end = beginningOf(due);
  const result = events.findLast(({ event, at }) => event === 'inspected' && at >= began.at);
  if (began.at > end) return remark('inspection-after-period', result?.evidence);
  if (result !== undefined && result.at <= end) return remark('inspection-in-time', result.evidence);
  if (failed === undefined || failed.at > end) return remark('inspection-not-refused', result?.evidence);
  const told = firstNotice(notices, 'inspection-delay', stop.id, { to: end });
  if (told === undefined) return remark('inspection-consignor-not-told', failed.evidence);
  if (result === undefined)
    return { due: undefined, ...remark('inspection-awaited', failed.evidence, told.evidence) };
  const after = result.at + extended.hours * HOUR;
  return {
    due: atTime(after, stop.zone, []),
    ...remark('inspection-moved-end', failed.evidence, told.evidence, result.evidence),
  };
}
