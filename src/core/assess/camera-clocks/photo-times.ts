import type { EvidenceItem, ItemOf, RecordState } from '../../model/state.js';
import { type KnownTime, milliseconds, toInstant } from '../../model/time.js';
import { cameraName } from './camera.js';
import { correctionAt } from './correct.js';
import { cameraPoints } from './points.js';

/**
 * The record with photo times corrected by the comparisons of the cameras' clocks. Only times that rest on the
 * camera's clock are corrected (by its offset, or in the zone of the place); satellite time and times that a person
 * stated stay. The stated time is kept beside the corrected one, and the correction names its ledger entry.
 */
export function correctPhotoTimes(state: RecordState): RecordState {
  if (!state.clocks.some(({ clock }) => clock.is === 'camera')) return state;
  const evidence = state.evidence.map((item): EvidenceItem => {
    if (item.kind !== 'photo') return item;
    const time = corrected(item, state.clocks);
    return time === undefined ? item : { ...item, time };
  });
  return { ...state, evidence };
}

function corrected(photo: ItemOf<'photo'>, clocks: RecordState['clocks']): KnownTime | undefined {
  const { time, statedTimes } = photo;
  const camera = cameraName(photo);
  if (camera === undefined || time.is !== 'known' || time.correction !== undefined) return undefined;
  if (statedTimes?.camera === undefined || (time.basis !== 'offset' && time.basis !== 'place-zone'))
    return undefined;
  const clock = milliseconds(time.instant);
  const correction = correctionAt(cameraPoints(clocks, camera), clock);
  if (correction === undefined || correction.addSeconds === 0) return undefined;
  // With a stale fix the uncertainty was the distance to the fix; a comparison gives the clock's own error.
  const own = statedTimes.gps !== undefined && time.basis === 'offset' ? 1 : time.uncertaintySeconds;
  return {
    ...time,
    instant: toInstant(Math.round(clock + correction.addSeconds * 1000)),
    uncertaintySeconds: own + correction.uncertaintySeconds,
    correction: { addedSeconds: correction.addSeconds, comparedAt: correction.seq },
  };
}
