import type { RecordState } from '../model/state.js';
import { reconcileByNeighbours } from './camera-clocks/neighbours.js';
import { correctPhotoTimes } from './camera-clocks/photo-times.js';
import { flagSameScenes } from './scenes.js';

/**
 * The record with photo times and flags that only the whole delivery can show. Doubtful local times are resolved by
 * neighbouring photos, times of compared clocks are corrected, and repeated photos of one scene are flagged. The
 * ledger keeps the stated times.
 */
export function reconcileTimes(state: RecordState): RecordState {
  return flagSameScenes(correctPhotoTimes(reconcileByNeighbours(state)));
}
