import type { TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { judgedChannel } from './channels.js';
import { gapLimit } from './sampling-interval.js';
import { walkSegments } from './segments.js';

/** Share of a window, 0 to 1, in which at least one log has known air. Overlaps count once. */
export function knownShare(logs: readonly UnitLog[], window: TimeRange): number {
  if (window.to <= window.from) return 0;
  const spans = logs.flatMap((log) => knownSpans(log, window)).sort((a, b) => a.from - b.from);
  let known = 0;
  let reached = window.from;
  for (const { from, to } of spans) {
    if (to <= reached) continue;
    known += to - Math.max(from, reached);
    reached = to;
  }
  return known / (window.to - window.from);
}

function knownSpans(log: UnitLog, window: TimeRange): TimeRange[] {
  const judged = judgedChannel(log);
  const values = judged === undefined ? undefined : log.channels[judged];
  if (values === undefined) return [];
  const spans: TimeRange[] = [];
  let open: TimeRange | undefined;
  walkSegments(log.times, values, window, gapLimit(log.times).gapLimitSeconds * 1000, {
    segment(t0, _v0, t1) {
      if (open !== undefined && open.to === t0) open.to = t1;
      else {
        open = { from: t0, to: t1 };
        spans.push(open);
      }
    },
    unknown() {},
    isolatedSample() {},
  });
  return spans;
}
