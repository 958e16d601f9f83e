import { type AssessedDelivery, assessDelivery } from './assess.js';
import type { OpenDelivery } from './delivery.js';
import { readAt } from './typed/read-at.js';

/**
 * The inspected lots of a delivery, each held against what a good delivery may contain: `assessment.inspections`, absent
 * where none is recorded.
 */
export async function inspections(open: OpenDelivery): Promise<AssessedDelivery> {
  return assessDelivery({ ...open, at: readAt(undefined, open.now) });
}
