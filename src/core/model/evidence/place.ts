/** Where evidence was taken. */
import { z } from 'zod';

export const position = z.enum(['nose', 'middle', 'tail']);
/** Part of the load, counted from the unit at the nose to the doors at the tail. */
export type Position = z.infer<typeof position>;

export const place = z.strictObject({
  /** Stop id of the delivery. */
  stop: z.string().optional(),
  position: position.optional(),
  /** Where the camera was, by its own GPS: degrees on WGS 84. */
  gps: z.strictObject({ latitude: z.number(), longitude: z.number() }).optional(),
});
export type Place = z.infer<typeof place>;
