import type { Timeline } from '../model/results.js';
import type { Zone } from '../model/time.js';
import type { Format } from '../words/format.js';
import type { Labels } from '../words/labels.js';
import { timelinePicture } from './timeline.js';

/** The timeline of a delivery on one axis, as SVG: events by name, and the main intervals as bars. */
export function deliveryTimeline(
  { items, intervals }: Pick<Timeline, 'items' | 'intervals'>,
  zones: { zone: Zone; otherZone?: Zone },
  format: Format,
  labels: Labels,
): string {
  return timelinePicture(
    {
      items,
      name: (item) =>
        item.event !== undefined
          ? labels(`event.${item.event}`)
          : item.outcome !== undefined
            ? labels(`kind-of-outcome.${item.outcome}`)
            : item.label,
      bars: intervals.map((span) => ({
        from: span.from,
        to: span.to,
        label: labels(`interval.${span.id}`),
        alert: span.id === 'arrival-to-refusal',
      })),
      ...zones,
    },
    format,
    labels,
  );
}
