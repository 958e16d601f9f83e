/** Computing in a page, as `load-dossier/assess` does. */
import '../platform/browser/jitless.js';

export * from '../assess.js';
