import '../../../src/platform/browser/jitless.js';
import { coreResults } from './core-results.js';
import { offer } from './offer.js';

offer(coreResults);
