/** Where evidence was taken. */
import { z } from 'zod';

export const position = z.enum(['nose', 'middle', 'tail']);
/** Part of the load, counted from the unit at the nose to the doors at the tail. */
export type Position = z.infer<typeof position>;

export const height = z.enum(['top', 'middle', 'bottom']);
/** Height on a pallet. */
export type Height = z.infer<typeof height>;

export const place = z.strictObject({
  stop: z.string().optional().meta({ description: 'Stop id of the delivery' }),
  position: position
    .optional()
    .meta({ description: 'Part of the load, counted from the unit at the nose to the doors' }),
  compartment: z
    .string()
    .optional()
    .meta({ description: 'Compartment of the trailer, where delivery.yaml lists several' }),
  pallet: z
    .string()
    .min(1)
    .max(40)
    .optional()
    .meta({ description: 'Pallet, by the mark on it, such as R-08' }),
  height: height.optional().meta({ description: 'Height on the pallet' }),
  carton: z.string().min(1).max(40).optional().meta({ description: 'Carton, by the mark on it' }),
  gps: z
    .strictObject({ latitude: z.number(), longitude: z.number() })
    .optional()
    .meta({ description: 'Where the camera was, by its own GPS: degrees on WGS 84' }),
});
export type Place = z.infer<typeof place>;
