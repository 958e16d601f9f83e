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
  state: z.enum(['intact', 'broken', 'unreadable', 'not-checked']).meta({
    description:
      'Whether the picture is as it was signed; `unreadable` when they cannot be read, `not-checked` when the check was given up for its time or memory',
  }),
  /** What the signer claims; a signature does not make it true. */
  claims: z
    .strictObject({
      madeWith: z.string().max(200).optional(),
      title: z.string().max(200).optional(),
      actions: z.array(z.string().max(200)).max(40),
    })
    .optional()
    .meta({ description: 'What the signer claims; a signature does not make it true' }),
  /** Who the certificate names, and whether he is on a list of trusted signers. */
  signer: z
    .strictObject({
      name: z.string().max(200).optional(),
      issuer: z.string().max(200).optional(),
      signedAt: z.string().max(200).optional(),
      stamped: z.boolean().meta({ description: "By a time-stamp server; else by the signer's own clock" }),
      trusted: z.boolean(),
    })
    .optional()
    .meta({ description: 'Whom the certificate names, and whether they are on a list of trusted signers' }),
  findings: z.array(z.string().max(200)).max(20).meta({
    description: 'What did not hold, by the codes of the C2PA specification, or why nothing could be read',
  }),
});
export type ContentCredentials = z.infer<typeof contentCredentials>;

export const photo = z
  .strictObject({
    kind: z.literal('photo'),
    ...fileFields,
    width: z.int().positive().optional().meta({ description: 'Pixels' }),
    height: z.int().positive().optional().meta({ description: 'Pixels' }),
    orientation: z.int().min(1).max(8).optional().meta({ description: 'EXIF orientation, 1 to 8' }),
    camera: camera.optional().meta({ description: 'Camera, as stated in the file' }),
    /** What the file itself states about its time, before any of it was chosen. */
    statedTimes: z
      .strictObject({
        camera: localTime.optional().meta({ description: "The camera's wall clock" }),
        offsetMinutes: z.int().optional().meta({ description: 'Its offset east of UTC' }),
        gps: instant.optional().meta({ description: 'Satellite time of the last fix, not of the shutter' }),
      })
      .optional()
      .meta({ description: 'Times stated in the file, before one is chosen' }),
    credentials: contentCredentials.optional().meta({
      description: 'Content credentials (C2PA) that it carries, as they were checked when it was taken in',
    }),
    /** What the picture looks like, coarsely: 64 bits, close for pictures of one scene. See docs/method.md. */
    sceneHash: z
      .string()
      .regex(/^[0-9a-f]{16}$/)
      .optional()
      .meta({ description: '64 bits of coarse brightness, close for pictures of one scene: see method.md' }),
  })
  .meta({ description: 'A photo' });
