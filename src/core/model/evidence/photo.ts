/** Photos. */
import { z } from 'zod';
import { instant, localTime } from '../time.js';
import { fileFields } from './fields.js';

/** Part of an upright picture that copies for outsiders must not show, as fractions of its sides from left and top. */
export const region = z
  .strictObject({
    x: z.number().min(0).max(1),
    y: z.number().min(0).max(1),
    width: z.number().positive().max(1),
    height: z.number().positive().max(1),
  })
  .meta({ description: 'A part of a picture, as fractions of its width and height.' });
/** A part of a picture, as fractions of its width and height. */
export type Region = z.infer<typeof region>;

const camera = z.strictObject({
  make: z.string().optional(),
  model: z.string().optional(),
  serial: z.string().optional(),
});

export const photo = z.strictObject({
  kind: z.literal('photo'),
  ...fileFields,
  width: z.int().positive().optional(),
  height: z.int().positive().optional(),
  /** EXIF orientation 1 to 8. */
  orientation: z.int().min(1).max(8).optional(),
  camera: camera.optional(),
  /** What the file itself states about its time, before any of it was chosen. */
  statedTimes: z
    .strictObject({
      /** The camera's wall clock. */
      camera: localTime.optional(),
      /** Minutes east of UTC that the camera states for it. */
      offsetMinutes: z.int().optional(),
      /** Satellite time: of the last fix, not of the shutter. */
      gps: instant.optional(),
    })
    .optional(),
  /** What the picture looks like, coarsely: 64 bits, close for pictures of one scene. See docs/method.md. */
  sceneHash: z
    .string()
    .regex(/^[0-9a-f]{16}$/)
    .optional(),
});
