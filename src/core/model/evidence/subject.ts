/** What evidence shows. */
import { z } from 'zod';

/** What a photo can show. Papers may be photographed too: see `documentSubject`. */
export const sceneSubject = z.enum([
  'pulp-display',
  'unit-display',
  'trailer-inside',
  'drains',
  'air-chute',
  'pallets-on-dock',
  'load-pattern',
  'air-path',
  'bracing',
  'seal',
  'load-at-opening',
  'damage',
  'fuel-gauge',
  'thermometer-in-ice',
  'pallet-tag',
  'recorder-in-load',
  'fresh-air-vent',
  'equipment-plate',
  'other-scene',
]);

/** What a paper can be, whether it came as PDF, text or picture. */
export const documentSubject = z.enum([
  'bill-of-lading',
  'proof-of-delivery',
  'inspection-certificate',
  'washout-receipt',
  'scale-ticket',
  'thermometer-check',
  'pre-trip-report',
  'shipper-pulp-sheet',
  'tally-sheet',
  'rejection-notice',
  'claim-letter',
  'claim-acknowledgement',
  'claim-answer',
  'invoice',
  'sale-account',
  'consignment-note',
  'native-download',
  'recorder-download',
  'calibration-certificate',
  'service-record',
  'harvest-record',
  'origin-certificate',
  'equipment-certificate',
  'disposal-instruction',
  'market-report',
  'proof-of-payment',
  'title-document',
  'duty-record',
  'customs-document',
  'phytosanitary-certificate',
  'message',
  'other-paper',
]);

export const subjectName = z.enum([...sceneSubject.options, ...documentSubject.options]);
export type SubjectName = z.infer<typeof subjectName>;

/** What evidence shows: proposed by the tool until a person says so. */
export const subject = z.strictObject({
  is: subjectName.meta({ description: 'What it shows' }),
  sure: z
    .enum(['proposed', 'confirmed'])
    .meta({ description: 'Proposed by the tool, or confirmed by a person' }),
  from: z
    .string()
    .optional()
    .meta({ description: 'What the proposal rests on, such as the folder name or a caption' }),
});
export type Subject = z.infer<typeof subject>;
