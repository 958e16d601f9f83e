/** What a person read off a thermometer or a display. */
import { z } from 'zod';
import { runMode } from '../delivery.js';
import { temperature } from '../temperature.js';
import { readingFields } from './fields.js';

export const readingFrom = z.enum(['driver', 'shipper', 'receiver', 'inspector', 'other']);
/** Whose hand or paper a reading comes from. */
export type ReadingFrom = z.infer<typeof readingFrom>;

export const pulp = z.strictObject({
  kind: z.literal('pulp'),
  ...readingFields,
  temperature,
  from: readingFrom.default('driver'),
  instrument: z.string().max(100).optional(),
});

/** Where a set point was read or heard. The bill's own line is an instruction in delivery.yaml. */
export const setPointSource = z.enum(['bill', 'dispatcher', 'shipper', 'display']);

export const setPoint = z.strictObject({
  kind: z.literal('set-point'),
  ...readingFields,
  temperature,
  shownBy: setPointSource,
  run: runMode.optional(),
});

/** A look at the running unit on the way. */
export const unitCheck = z.strictObject({
  kind: z.literal('round'),
  ...readingFields,
  boxAir: temperature.optional(),
  setPoint: temperature.optional(),
  /** Fuel of the unit's own tank as a fraction, 0 to 1. */
  fuel: z.number().min(0).max(1).optional(),
  alarms: z.array(z.string().max(200)).default([]),
});
