/** What is known of the instruments of a delivery, and what is assumed of those of which nothing is known. */
import { z } from 'zod';
import { channel } from './evidence/unit-log.js';
import { writtenTemperature, writtenTemperatureDifference } from './temperature.js';
import { localTime } from './time.js';

const iceCheck = z.strictObject({
  reads: writtenTemperature.meta({ description: 'What it showed in ice water' }),
  at: localTime.optional().meta({ description: 'When, local to the place' }),
  stop: z.string().optional().meta({ description: 'At which stop; left out: the first one' }),
});

export const instrument = z.strictObject({
  name: z
    .string()
    .min(1)
    .max(60)
    .meta({ description: 'Name as readings give it, such as P-7; `probe P-7` of a reading is that one' }),
  serial: z.string().max(60).optional().meta({ description: 'Serial number' }),
  owner: z.string().max(200).optional().meta({ description: 'Whose it is' }),
  channel: channel.optional().meta({ description: 'The column of the unit log that it measures' }),
  accuracy: writtenTemperatureDifference
    .optional()
    .meta({ description: 'Stated accuracy to either side, such as 1 °F' }),
  resolution: writtenTemperatureDifference.optional().meta({ description: 'Smallest step that it shows' }),
  certificate: z.string().max(200).optional().meta({ description: 'Calibration certificate' }),
  checks: z.array(iceCheck).max(100).default([]).meta({ description: 'Checks in ice water' }),
});
/** A thermometer, or the sensor behind a column of a log. */
export type Instrument = z.infer<typeof instrument>;

/** What is assumed where nothing is stated; each half-width to either side. Left out: the values of docs/method.md. */
export const assumedUncertainty = z.strictObject({
  thermometers: writtenTemperatureDifference
    .optional()
    .meta({ description: 'Accuracy of thermometers that state none' }),
  sensors: writtenTemperatureDifference
    .optional()
    .meta({ description: 'Accuracy of sensors of a log that state none' }),
  airAtPlace: writtenTemperatureDifference
    .optional()
    .meta({ description: 'How far the air at a place in the load may be from return and supply air' }),
  cartons: writtenTemperatureDifference
    .optional()
    .meta({ description: 'How far cartons of one place may differ from each other' }),
});

/** Half-cooling times of a line, where its packing has been measured. */
export const halfCoolingHours = z
  .strictObject({ shortest: z.number().positive().max(2000), longest: z.number().positive().max(2000) })
  .refine(({ shortest, longest }) => shortest <= longest, { error: 'shortest is longer than longest' });
