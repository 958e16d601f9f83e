import { omitUndefined } from '../../model/omit-undefined.js';
import { plannedTime } from '../../model/planned-time.js';
import type { InspectionRemark, InspectionResult } from '../../model/results.js';
import type { ItemOf } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import type { Milestones } from '../milestones.js';

/** How long the load was on the way, how late it came, and how long after it the lot was looked at, at a place of unloading. */
export interface InspectionCourse {
  spans: Pick<InspectionResult, 'transitSeconds' | 'lateSeconds' | 'afterArrivalSeconds'>;
  remarks: InspectionRemark[];
}

export function courseOf(
  { place, time, evidence }: ItemOf<'inspection'>,
  { events, stops }: Milestones,
): InspectionCourse {
  const stop = stops.find(({ id }) => id === place?.stop);
  const at = knownMilliseconds(time);
  if (stop?.does !== 'unload') return { spans: {}, remarks: [] };
  const here = events.filter((one) => one.stop === stop.id);
  const arrived = here.find(({ event }) => event === 'arrived');
  const disposed = here.find(({ event }) => event === 'disposed');
  const departed = events.findLast(({ event, side }) => event === 'departed' && side === 'load');
  const seconds = (from: number | undefined, to: number | undefined) =>
    from === undefined || to === undefined ? undefined : (to - from) / 1000;
  const remarks: InspectionRemark[] = [];
  if (at !== undefined && arrived !== undefined && at < arrived.at)
    remarks.push({ is: 'before-arrival', evidence: [evidence, arrived.evidence] });
  if (at !== undefined && disposed !== undefined && at > disposed.at)
    remarks.push({ is: 'after-disposal', evidence: [evidence, disposed.evidence] });
  return {
    spans: omitUndefined({
      transitSeconds: seconds(departed?.at, arrived?.at),
      lateSeconds: seconds(plannedTime(stop), arrived?.at),
      afterArrivalSeconds: seconds(arrived?.at, at),
    }),
    remarks,
  };
}
