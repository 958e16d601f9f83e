import '../../../src/platform/browser/jitless.js';
import { coreResults } from './core-results.js';

/** What a page and a worker of it have. */
declare const self: {
  document?: object;
  coreResultsOf?: (text: string) => string;
  addEventListener(type: 'message', listener: (event: { data: string }) => void): void;
  postMessage(text: string): void;
};

// The same script serves both: a page is called, a worker is sent to.
if (self.document === undefined)
  self.addEventListener('message', ({ data }) => self.postMessage(coreResults(data)));
else self.coreResultsOf = coreResults;
