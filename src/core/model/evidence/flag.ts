/** What a reader should know about evidence. */
import { z } from 'zod';

/** Something about the evidence that a reader should know, with a stable id. */
export const flagName = z.enum([
  'no-capture-time',
  'time-zone-unknown',
  'time-happened-twice',
  'time-never-happened',
  'edited',
  'dark',
  'blurred',
  'tiny',
  'far-from-stop',
  'outside-stop-window',
  /** A log whose own lines name another trailer or unit than the delivery does. */
  'other-trailer',
  /** A log that does not touch the planned time of the delivery. */
  'outside-delivery-time',
  'same-scene',
  /** Content credentials that say the picture was changed since it was signed. */
  'credentials-broken',
  'picture-unreadable',
  'encrypted',
  /** A paper that carries programs, files or actions of its own; they are never run or opened. */
  'active-content',
  /** A paper or archive whose bytes do not hold together. */
  'damaged',
  'empty-file',
  'unknown-type',
]);
/** What a flag warns of. */
export type FlagName = z.infer<typeof flagName>;

export const flag = z.strictObject({ is: flagName, detail: z.string() });
/** Something that a reader of the evidence should know. */
export type Flag = z.infer<typeof flag>;
