/** Papers and tables of readings. */

import { z } from 'zod';
import { fileFields } from './fields.js';

export const readingsTable = z
  .strictObject({
    kind: z.literal('readings'),
    ...fileFields,
    rows: z.int().nonnegative().meta({ description: 'Rows read' }),
    rowsLeftOut: z.int().nonnegative().meta({ description: 'Rows excluded' }),
  })
  .meta({ description: 'A readings table' });

export const document = z
  .strictObject({
    kind: z.literal('document'),
    ...fileFields,
    pages: z.int().positive().optional().meta({ description: 'Pages' }),
    seconds: z
      .int()
      .nonnegative()
      .optional()
      .meta({ description: 'Length of a film or a recording, in seconds' }),
  })
  .meta({ description: 'A document' });
