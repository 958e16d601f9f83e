/** The numbers that the trade files by. */
import { z } from 'zod';

const number = z
  .string({ error: 'write it in quotes, such as "0044719", so that no digit is lost' })
  .min(1)
  .max(80);
const numbers = z
  .union([number.transform((one) => [one]), z.array(number).min(1).max(40)])
  .meta({ description: 'One number in quotes, or a list of them.' });

/** Numbers of a delivery, or of one of its stops. */
export const references = z.strictObject({
  billOfLading: numbers.optional(),
  pro: numbers.optional(),
  purchaseOrder: numbers.optional(),
  load: numbers.optional(),
  trailer: numbers.optional(),
  seal: numbers.optional(),
  /** The number under which a claim is filed. */
  claim: numbers.optional(),
  lot: numbers.optional(),
  /** The driver by name, where stops have different ones. */
  driver: numbers.optional(),
});
export type References = z.infer<typeof references>;

/** What a number is of: the bill of lading, the PRO … */
export const referenceKind = references.keyof();
export type ReferenceKind = z.infer<typeof referenceKind>;
