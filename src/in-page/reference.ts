/** What is published, in a page, as `load-dossier/reference` has it. */
import '../platform/browser/jitless.js';

export * from '../reference.js';
