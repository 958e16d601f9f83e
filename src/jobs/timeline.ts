import { omitUndefined } from '../core/model/omit-undefined.js';
import type { TimelineItem } from '../core/model/results.js';
import { toInstant, type Zone } from '../core/model/time.js';
import { inZone } from '../core/model/zoned-time.js';
import { type AssessedDelivery, assessDelivery } from './assess.js';
import { csvOf } from './csv.js';
import type { OpenDelivery } from './delivery.js';
import { readAt } from './typed/read-at.js';

/** Zones of the first and last stop, for items without a stop. */
export interface TimelineReport extends AssessedDelivery {
  startZone: Zone;
  endZone: Zone;
}

/** Everything with a known time, in order, and the intervals between events. */
export async function timeline(open: OpenDelivery): Promise<TimelineReport> {
  const assessed = await assessDelivery({ ...open, at: readAt(undefined, open.now) });
  const { stops } = assessed.state.delivery;
  const startZone = stops.find(({ does }) => does === 'load')?.zone ?? ('UTC' as Zone);
  return {
    ...assessed,
    startZone,
    endZone: stops.findLast(({ does }) => does === 'unload')?.zone ?? startZone,
  };
}

/** The line of the bill that a timeline item is about, where its evidence says so. */
export function lineOfItem({ state }: TimelineReport, item: TimelineItem): string | undefined {
  return state.evidence.find(({ evidence }) => evidence === item.evidence)?.line;
}

/**
 * One row per item: local time of its place with its offset, zone, UTC, seconds of uncertainty, what, words, stop,
 * line, evidence. Text that a spreadsheet would run as a formula gets a leading apostrophe (CWE-1236).
 */
export function timelineCsv(report: TimelineReport): string {
  const header = [
    'local',
    'zone',
    'utc',
    'uncertainty_seconds',
    'is',
    'event',
    'label',
    'stop',
    'line',
    'evidence',
  ];
  const rows = report.assessment.timeline.items.map((item) => [
    inZone(toInstant(item.at), item.zone).toISO({ suppressMilliseconds: true }) ?? '',
    item.zone,
    toInstant(item.at),
    item.uncertaintySeconds,
    item.is,
    item.event ?? '',
    item.label,
    item.stop ?? '',
    lineOfItem(report, item) ?? '',
    item.evidence ?? '',
  ]);
  return csvOf(header, rows);
}

/**
 * The dossier's picture of the delivery on one axis, as SVG.
 * Throws DossierError `bad-template` when the words of the delivery's language can't be read.
 */
export async function timelineSvg({
  state,
  assessment,
  startZone,
  endZone,
}: TimelineReport): Promise<string> {
  const [{ deliveryTimeline }, { drawingWords }] = await Promise.all([
    import('../core/charts/delivery-timeline.js'),
    import('./drawing-words.js'),
  ]);
  const { format, labels } = await drawingWords(state.delivery.show);
  const zones = {
    zone: startZone,
    ...omitUndefined({ otherZone: endZone === startZone ? undefined : endZone }),
  };
  return deliveryTimeline(assessment.timeline, zones, format, labels);
}
