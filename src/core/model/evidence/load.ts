/** What a person saw of the load and its doors. */
import { z } from 'zod';
import { HEAVIEST, kilograms, weight } from '../weight.js';
import { readingFields } from './fields.js';

export const seal = z
  .strictObject({
    kind: z.literal('seal'),
    ...readingFields,
    number: z.string().min(1).max(60).meta({ description: 'Number on it' }),
    state: z.enum(['applied', 'intact', 'broken', 'removed']).meta({ description: 'Its state' }),
  })
  .meta({ description: 'A seal' });

export const bracing = z
  .strictObject({
    kind: z.literal('bracing'),
    ...readingFields,
    device: z
      .enum(['air-bags', 'load-bars', 'straps', 'boards', 'foam-blocks', 'other'])
      .meta({ description: 'Device' }),
    note: z.string().max(2000).optional().meta({ description: 'Where and how' }),
  })
  .meta({ description: 'What holds the load' });

export const rowPattern = z.enum(['straight', 'turned', 'pinwheel', 'single']);
/** How the two pallets of a row stand: short side across, long side across, one of each; or one pallet alone. */
export type RowPattern = z.infer<typeof rowPattern>;

export const airBlock = z.enum(['air-return', 'floor', 'ceiling', 'air-chute', 'rear-doors']);
/** What a row of pallets stands in the way of. */
export type AirBlock = z.infer<typeof airBlock>;

/** How the pallets of some rows stood. Rows count from 1 at the nose; a later word on a row holds. */
export const pattern = z
  .strictObject({
    kind: z.literal('pattern'),
    ...readingFields,
    pattern: rowPattern.meta({
      description: 'Short sides across, long sides across, one of each, or one pallet alone',
    }),
    rows: z
      .strictObject({ from: z.int().min(1).max(60), to: z.int().min(1).max(60) })
      .refine(({ from, to }) => from <= to, { error: 'the first row comes before the last' })
      .meta({ description: 'Rows counted from the nose' }),
    palletWeight: weight
      .refine((one) => kilograms(one) <= HEAVIEST.pallet, {
        error: 'heavier than a pallet can be; is a figure or the unit wrong?',
      })
      .optional()
      .meta({ description: 'Weight of each pallet in these rows, with its load' }),
    blocks: z.array(airBlock).default([]).meta({ description: 'What the rows obstruct' }),
    note: z.string().max(2000).optional().meta({ description: 'Free text' }),
  })
  .meta({ description: 'How the pallets of some rows stand; a later one on a row replaces it' });
