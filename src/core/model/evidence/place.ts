/** Where evidence was taken. */
import { z } from 'zod';

export const position = z.enum(['nose', 'middle', 'tail']);
/** Part of the load, counted from the unit at the nose to the doors at the tail. */
export type Position = z.infer<typeof position>;

export const place = z.strictObject({
  stop: z.string().optional().meta({ description: 'Stop id of the delivery' }),
  position: position
    .optional()
    .meta({ description: 'Part of the load, counted from the unit at the nose to the doors' }),
  compartment: z
    .string()
    .optional()
    .meta({ description: 'Compartment of the trailer, where delivery.yaml lists several' }),
  gps: z
    .strictObject({ latitude: z.number(), longitude: z.number() })
    .optional()
    .meta({ description: 'Where the camera was, by its own GPS: degrees on WGS 84' }),
});
export type Place = z.infer<typeof place>;
