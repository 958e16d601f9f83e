import { z } from 'zod';
import { writtenTemperature, writtenTemperatureDifference } from './temperature.js';

export const runMode = z.enum(['continuous', 'start-stop']);

/** What the bill says to run. */
export const instruction = z.strictObject({
  setPoint: writtenTemperature.meta({ description: 'Instructed temperature' }),
  tolerance: writtenTemperatureDifference
    .optional()
    .meta({ description: 'Tolerance, where the bill states one' }),
  run: runMode.optional().meta({ description: 'Run mode, where the bill states one' }),
});
