// node --expose-gc fleet.worker.js FOLDER COUNT: asks deliveries FOLDER/0, FOLDER/1 … one after the other what is missing,
// and prints how many open requirements they have together, and the megabytes of objects that are still held then.
import { join } from 'node:path';
import { isOpen } from '../../dist/core/assess/gaps/gaps.js';
import { deliveryGaps } from '../../dist/jobs/gaps.js';
import { readAt } from '../../dist/jobs/typed/read-at.js';

const [room = '', count = '0'] = process.argv.slice(2);
const now = () => new Date('2026-07-17T09:05:00Z');
let open = 0;
for (let i = 0; i < Number(count); i++) {
  const folder = join(room, String(i));
  const { gaps } = await deliveryGaps({ folder, at: readAt(undefined, now), by: 'Bench', now });
  open += gaps.filter(isOpen).length;
}
globalThis.gc?.();
console.log(`${open} ${process.memoryUsage().heapUsed / 1e6}`);
