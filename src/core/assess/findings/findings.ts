import type { Finding } from '../../model/results.js';
import { airFindings } from './air.js';
import { careFindings } from './care.js';
import { loadingFindings } from './loading.js';
import type { FindingContext } from './make.js';
import { mixingFindings } from './mixing.js';
import { productFindings } from './product.js';
import { pulpFindings } from './pulps.js';
import { refusalFindings } from './refusal.js';
import { setPointFindings } from './set-points.js';

/** Everything the record shows, for and against the carrier, heaviest first; equals in the order they were found. */
export function findingsOf(found: FindingContext): Finding[] {
  return [
    ...refusalFindings(found),
    ...pulpFindings(found),
    ...setPointFindings(found),
    ...airFindings(found),
    ...careFindings(found),
    ...productFindings(found),
    ...loadingFindings(found),
    ...mixingFindings(found),
  ].sort((a, b) => b.weight - a.weight);
}
