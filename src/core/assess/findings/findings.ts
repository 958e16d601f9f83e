import type { Finding } from '../../model/results.js';
import { airFindings } from './air.js';
import { careFindings } from './care.js';
import { exceptionFindings } from './exceptions.js';
import { frozenFindings } from './freezing.js';
import { handlingFindings } from './handling.js';
import { loadingFindings } from './loading.js';
import type { FindingContext } from './make.js';
import { mixingFindings } from './mixing.js';
import { outcomeFindings } from './outcomes.js';
import { productFindings } from './product.js';
import { pulpFindings } from './pulps.js';
import { refusalFindings } from './refusal.js';
import { setPointFindings } from './set-points.js';

/** All findings, for and against the carrier, heaviest first; equals in the order in which they were computed. */
export function findingsOf(context: FindingContext): Finding[] {
  return [
    ...refusalFindings(context),
    ...outcomeFindings(context),
    ...exceptionFindings(context),
    ...pulpFindings(context),
    ...frozenFindings(context),
    ...setPointFindings(context),
    ...airFindings(context),
    ...careFindings(context),
    ...productFindings(context),
    ...loadingFindings(context),
    ...handlingFindings(context),
    ...mixingFindings(context),
  ].sort((a, b) => b.weight - a.weight);
}
