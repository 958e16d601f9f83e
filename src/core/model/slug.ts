import { z } from 'zod';

/** A short name that people and rules refer to: letters, digits, dash. */
export const slug = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,40}$/i, { error: 'use letters, digits and dashes, such as load-1' });
