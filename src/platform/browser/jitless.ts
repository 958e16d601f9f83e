import { config } from 'zod';

/**
 * Imported before anything else by whatever runs in a page: schemas are walked, not made into code, which the page's
 * content security policy refuses to run and reports each time it is tried.
 */
config({ jitless: true });
