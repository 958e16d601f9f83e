import { type CameraClock, compareCameraClocks } from '../../core/assess/camera-clocks/compare-cameras.js';
import { currentComparisons } from '../../core/assess/camera-clocks/points.js';
import { reconcileTimes } from '../../core/assess/reconcile-times.js';
import type { NewEntry } from '../../core/model/entry.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { findEvidence, type RecordState } from '../../core/model/state.js';
import { toInstant } from '../../core/model/time.js';
import { numbersFor } from '../../core/words/numbers.js';
import { plainSpaces } from '../../core/words/spaces.js';
import type { DeliveryRecord } from '../../record/store.js';
import { type CollectReport, formatEventTime } from './report.js';

const duration = (seconds: number) => plainSpaces(numbersFor('en').exactDuration(seconds));

/**
 * What only the whole delivery shows, after all files are recorded: camera clocks are compared with satellite time
 * and the comparisons are recorded; then times and flags of the report are those that everything downstream uses.
 */
export async function reviewRecord(record: DeliveryRecord, by: string, report: CollectReport): Promise<void> {
  const clocks = await compareCameras(record, by);
  report.notices.push(...clocks.flatMap((clock) => formatClock(clock) ?? []));
  const state = reconcileTimes(record.state());
  for (const item of report.items) {
    const settled = item.evidence === undefined ? undefined : findEvidence(state, item.evidence);
    if (item.outcome !== 'taken-in' || settled === undefined || !('flags' in settled)) continue;
    item.time = settled.time;
    item.when = formatEventTime(settled.time);
    item.flags = settled.flags;
  }
}

/** Compares camera clocks with satellite time over all photos, and records what is new. */
export async function compareCameras(record: DeliveryRecord, by: string): Promise<CameraClock[]> {
  const clocks = compareCameraClocks(record.state());
  const entries = clocks.flatMap((clock) => entriesFor(clock, record.state(), by));
  if (entries.length > 0) await record.append(entries);
  return clocks;
}

/** New entries for comparisons; none for a clock that is right. */
function entriesFor(clock: CameraClock, state: RecordState, by: string): NewEntry[] {
  const { camera, photos, points, verdict, spreadSeconds } = clock;
  const before = currentComparisons(
    state.clocks,
    (one) => one.how === 'satellite-time' && one.clock.is === 'camera' && one.clock.camera === camera,
  );
  const measured = verdict === 'off' ? points : before.length > 0 && verdict === 'right' ? zeroed(clock) : [];
  const said = (one: { addSeconds: number; uncertaintySeconds: number }) =>
    `${one.addSeconds} ${one.uncertaintySeconds}`;
  if (measured.length === 0 || measured.map(said).join() === before.map(said).join()) return [];
  const from = `satellite time against the camera's clock in ${photos.length} photos (${photos.slice(0, 8).join(', ')}${photos.length > 8 ? ' …' : ''}), spread ${spreadSeconds.toFixed(1)} s`;
  return measured.map((point, i) => ({
    type: 'clock-compared',
    by,
    body: {
      clock: { is: 'camera', camera },
      at: toInstant(point.at),
      addSeconds: point.addSeconds,
      uncertaintySeconds: point.uncertaintySeconds,
      from,
      how: 'satellite-time',
      ...omitUndefined({ replaces: i > 0 || before.length === 0 ? undefined : before.map(({ seq }) => seq) }),
    },
  }));
}

/** With more photos the clock proves right: nothing is added. */
function zeroed({ points, medianSeconds }: CameraClock): CameraClock['points'] {
  return points.slice(0, 1).map(({ at, uncertaintySeconds }) => ({
    at,
    addSeconds: 0,
    uncertaintySeconds: Math.max(uncertaintySeconds, Math.ceil(Math.abs(medianSeconds))),
  }));
}

function formatClock({
  camera,
  photos,
  medianSeconds,
  drifts,
  driftSeconds,
  verdict,
}: CameraClock): string | undefined {
  const by = `by satellite time in ${photos.length} photos`;
  switch (verdict) {
    case 'off': {
      const side = medianSeconds < 0 ? 'fast' : 'slow';
      const drift = drifts ? `, and drifts by ${duration(driftSeconds ?? 0)} over the trip` : '';
      return `The clock of ${camera} is ${duration(medianSeconds)} ${side} ${by}${drift}; its photos' times are corrected, and the correction is shown.`;
    }
    case 'unsteady':
      return `The clock of ${camera} cannot be measured: satellite time and its own differ now more, now less ${by}. Nothing is corrected.`;
    case 'right':
    case 'too-few':
      return undefined;
  }
}
