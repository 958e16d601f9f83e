import type { EvidenceId } from '../../model/evidence.js';
import type { TimeRange } from '../../model/results.js';
import type { Milestones } from '../milestones.js';

/** A door that people recorded as open. */
export type RecordedDoor = TimeRange & { evidence: EvidenceId[] };

/** Doors that people recorded as opened, each until the next closing or departure on record. */
export function recordedDoors({ events: atStops, onTheWay }: Milestones): RecordedDoor[] {
  const events = [...atStops, ...onTheWay].sort((a, b) => a.at - b.at);
  return events.flatMap((opened, index) => {
    if (opened.event !== 'doors-opened') return [];
    const closed = events
      .slice(index + 1)
      .find((one) => one.event === 'doors-closed' || one.event === 'departed');
    return [
      {
        from: opened.at,
        to: closed?.at ?? opened.at,
        evidence: closed === undefined ? [opened.evidence] : [opened.evidence, closed.evidence],
      },
    ];
  });
}
