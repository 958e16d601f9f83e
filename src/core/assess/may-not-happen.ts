import type { Milestone } from '../model/rule-set.js';

/** Events that may not happen: a later event does not show that they are past. */
const MAY_NOT_HAPPEN: ReadonlySet<Milestone> = new Set([
  'stopped',
  'resumed',
  'dropped',
  'picked-up',
  'notice-of-arrival',
  'inspection-requested',
  'inspection-unavailable',
  'inspected',
  'diverted',
  'refused',
  'jointly-checked',
  'accepted',
  'disposed',
]);

/** Whether a delivery can be without a milestone, so that a later event does not show that it is past. */
export const mayNotHappen = (moment: Milestone): boolean => MAY_NOT_HAPPEN.has(moment);
