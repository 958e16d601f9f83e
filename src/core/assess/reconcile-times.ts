import type { RecordState } from '../model/state.js';
import { reconcileByNeighbours } from './camera-clocks/neighbours.js';
import { correctPhotoTimes } from './camera-clocks/photo-times.js';
import { flagSameScenes } from './scenes.js';
import { flagStopWindows } from './stop-windows.js';

/**
 * The record with photo times and flags that only the whole delivery can show. Doubtful local times are resolved by
 * neighbouring photos, times of compared clocks are corrected, repeated photos of one scene are flagged, and so are
 * photos far from the planned time of their stop. The
 * ledger keeps the stated times.
 */
export function reconcileTimes(state: RecordState): RecordState {
  return flagStopWindows(flagSameScenes(correctPhotoTimes(reconcileByNeighbours(state))));
}
