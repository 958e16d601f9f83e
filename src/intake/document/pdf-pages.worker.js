// Counts the pages of a PDF by its page tree; a thread of its own, which can be stopped: the library takes seconds for
// each megabyte of what is no PDF, and unpacks without bounds.
import { answering } from '../../platform/node/worker/answering.js';
import { pagesOf } from './pdf-pages.js';

answering(pagesOf);
