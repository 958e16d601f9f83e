import '../../../src/platform/browser/jitless.js';
import { offer } from './offer.js';
import { reportsOf } from './reports.js';

offer(reportsOf);
