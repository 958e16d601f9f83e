import '../../../src/platform/browser/jitless.js';
import { coreResults } from './core-results.js';

declare global {
  /** What the check calls in the page. */
  var coreResultsOf: ((text: string) => string) | undefined;
}

globalThis.coreResultsOf = coreResults;
