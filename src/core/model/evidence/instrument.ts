/** Thermometers, recorders and sensors of a delivery, and the controller of its unit. */
import { z } from 'zod';
import { temperature } from '../temperature.js';
import { readingFields } from './fields.js';
import { evidenceId } from './ids.js';
import { signatory } from './signatory.js';

export const instrumentType = z.enum(['thermometer', 'recorder', 'sensor', 'controller']);

/**
 * What is known of one instrument at one time: a thermometer with its checks in ice water, a portable recorder with its
 * place in the load, a sensor of the unit with its calibration, the unit's controller with its serial number and software.
 */
export const instrumentRecord = z
  .strictObject({
    kind: z.literal('instrument'),
    ...readingFields,
    name: z
      .string()
      .min(1)
      .max(60)
      .meta({ description: 'Name as readings give it, such as P-7, or the number on it' }),
    type: instrumentType.meta({ description: 'What it is' }),
    serial: z.string().min(1).max(60).optional().meta({ description: 'Serial number' }),
    owner: signatory.optional().meta({ description: 'Whose it is' }),
    where: z.string().min(1).max(200).optional().meta({ description: 'Where in the load or on the unit' }),
    accuracy: z.string().min(1).max(60).optional().meta({ description: 'Accuracy as stated, such as ±1 °F' }),
    certificate: z.string().min(1).max(200).optional().meta({ description: 'Calibration certificate' }),
    calibrated: z.iso.date().optional().meta({ description: 'Day of its last calibration' }),
    serviced: z.iso.date().optional().meta({ description: 'Day of its last service' }),
    software: z.string().min(1).max(100).optional().meta({ description: 'Software and its version' }),
    iceBefore: temperature.optional().meta({ description: 'What it showed in ice water before use' }),
    iceAfter: temperature.optional().meta({ description: 'What it showed in ice water after use' }),
    documents: z.array(evidenceId).max(20).default([]).meta({ description: 'The papers on which it stands' }),
    document: z.string().min(1).max(400).optional().meta({ description: 'Or the paper in words' }),
  })
  .meta({ description: 'An instrument' });

/** What of an instrument a rule can ask for. */
export const instrumentDetail = z.enum([
  'serial',
  'owner',
  'where',
  'accuracy',
  'certificate',
  'calibrated',
  'serviced',
  'software',
  'iceBefore',
  'iceAfter',
]);
