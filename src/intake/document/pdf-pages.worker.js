// Counts the pages of a PDF by its page tree, in a thread that can be stopped: the library takes seconds per
// megabyte of anything but a PDF, and unpacks without bounds.
import { answering } from '../../platform/node/worker/answering.js';
import { pagesOf } from './pdf-pages.js';

answering(pagesOf);
