import { type AssessedDelivery, assessDelivery } from './assess.js';
import type { OpenDelivery } from './delivery.js';
import { readAt } from './typed/read-at.js';

/**
 * How the load of a delivery stood and was handled: `assessment.loading`, `weights`, `doors` and `shocks`, each absent
 * where nothing is recorded of it.
 */
export async function load(open: OpenDelivery): Promise<AssessedDelivery> {
  return assessDelivery({ ...open, at: readAt(undefined, open.now) });
}
