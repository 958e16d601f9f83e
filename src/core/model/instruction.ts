import { z } from 'zod';
import { evidenceId } from './evidence/ids.js';
import { writtenTemperature, writtenTemperatureDifference } from './temperature.js';

export const runMode = z.enum(['continuous', 'start-stop']);

/** What the bill says to run. */
export const instruction = z.strictObject({
  setPoint: writtenTemperature.meta({ description: 'Instructed temperature' }),
  tolerance: writtenTemperatureDifference
    .optional()
    .meta({ description: 'Tolerance, where the bill states one' }),
  run: runMode.optional().meta({ description: 'Run mode, where the bill states one' }),
  document: evidenceId.optional().meta({
    description:
      'Evidence id of the paper on which it stands, once somebody has compared the two; without it the instruction is as entered by the carrier',
  }),
});
