/** Papers and tables of readings. */

import { z } from 'zod';
import { fileFields } from './fields.js';

export const readingsTable = z.strictObject({
  kind: z.literal('readings'),
  ...fileFields,
  rows: z.int().nonnegative(),
  rowsLeftOut: z.int().nonnegative(),
});

export const document = z.strictObject({
  kind: z.literal('document'),
  ...fileFields,
  pages: z.int().positive().optional(),
});
