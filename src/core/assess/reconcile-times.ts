import type { RecordState } from '../model/state.js';
import { reconcileByNeighbours } from './camera-clocks/neighbours.js';
import { correctPhotoTimes } from './camera-clocks/photo-times.js';
import { flagSameScenes } from './scenes.js';

/**
 * The record as everything downstream reads it: what only the whole delivery can show of single photos is laid
 * over what each states of itself. Doubtful local times are settled by neighbours, clocks that were measured
 * are corrected, and one scene photographed twice is named. The ledger keeps the stated times.
 */
export function reconcileTimes(state: RecordState): RecordState {
  return flagSameScenes(correctPhotoTimes(reconcileByNeighbours(state)));
}
