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

/** Content credentials (C2PA) that a picture carries, as they were checked when it was taken in. */
export const contentCredentials = z.strictObject({
  /** Whether the picture is as it was signed; `unreadable` when that could not be found out. */
  state: z.enum(['intact', 'broken', 'unreadable']),
  /** What the signer claims; a signature does not make it true. */
  claims: z
    .strictObject({
      madeWith: z.string().max(200).optional(),
      title: z.string().max(200).optional(),
      actions: z.array(z.string().max(200)).max(40),
    })
    .optional(),
  /** Who the certificate names, and whether he is on a list of trusted signers. */
  signer: z
    .strictObject({
      name: z.string().max(200).optional(),
      issuer: z.string().max(200).optional(),
      signedAt: z.string().max(200).optional(),
      /** By a time-stamp server; else by the signer's own clock. */
      stamped: z.boolean(),
      trusted: z.boolean(),
    })
    .optional(),
  /** What did not hold, by the codes of the C2PA specification, or why nothing could be read. */
  findings: z.array(z.string().max(200)).max(20),
});
export type ContentCredentials = z.infer<typeof contentCredentials>;

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
  credentials: contentCredentials.optional(),
  /** What the picture looks like, coarsely: 64 bits, close for pictures of one scene. See docs/method.md. */
  sceneHash: z
    .string()
    .regex(/^[0-9a-f]{16}$/)
    .optional(),
});
