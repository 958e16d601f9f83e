/** What a person read off a thermometer or a display. */
import { z } from 'zod';
import { runMode } from '../delivery.js';
import { temperature } from '../temperature.js';
import { readingFields } from './fields.js';

export const readingFrom = z.enum(['driver', 'shipper', 'receiver', 'inspector', 'other']);
/** Whose hand or paper a reading comes from. */
export type ReadingFrom = z.infer<typeof readingFrom>;

export const pulp = z
  .strictObject({
    kind: z.literal('pulp'),
    ...readingFields,
    temperature: temperature.meta({ description: '`value` and `unit`' }),
    from: readingFrom.default('driver').meta({ description: 'Whose reading it is' }),
    instrument: z.string().max(100).optional().meta({ description: 'The thermometer' }),
  })
  .meta({ description: 'A pulp reading' });

/** Where a set point was read or heard. The bill's own line is an instruction in delivery.yaml. */
export const setPointSource = z.enum(['bill', 'dispatcher', 'shipper', 'display']);

export const setPoint = z
  .strictObject({
    kind: z.literal('set-point'),
    ...readingFields,
    temperature: temperature.meta({ description: '`value` and `unit`' }),
    shownBy: setPointSource.meta({ description: 'Where it was read or heard' }),
    run: runMode.optional().meta({ description: 'Run mode' }),
  })
  .meta({ description: 'A set point as read or heard' });

/** A look at the running unit on the way. */
export const unitCheck = z
  .strictObject({
    kind: z.literal('round'),
    ...readingFields,
    boxAir: temperature.optional().meta({ description: 'Box temperature: `value` and `unit`' }),
    setPoint: temperature.optional().meta({ description: 'Set point on the display: `value` and `unit`' }),
    fuel: z.number().min(0).max(1).optional().meta({ description: 'Fuel of the unit, 0 to 1' }),
    alarms: z.array(z.string().max(200)).default([]).meta({ description: 'Alarms on the display' }),
  })
  .meta({ description: 'A unit check' });
