/** Papers and tables of readings. */

import { z } from 'zod';
import { filed } from './fields.js';

export const readingsTable = z.strictObject({
  kind: z.literal('readings'),
  ...filed,
  rows: z.int().nonnegative(),
  rowsLeftOut: z.int().nonnegative(),
});

export const document = z.strictObject({
  kind: z.literal('document'),
  ...filed,
  pages: z.int().positive().optional(),
});
