import { z } from 'zod';
import { eventName } from './evidence.js';

/**
 * Moments that open and close the time in which evidence can be got. `accepted` is an outcome by which goods were taken,
 * with or without exceptions; `delivery-over` is unloaded, refused or accepted.
 */
export const milestone = z.enum([...eventName.options, 'accepted', 'delivery-over']);
/** A moment of a delivery that deadlines of evidence are counted from. */
export type Milestone = z.infer<typeof milestone>;

/** A moment that one entry tells of: an event, or an outcome of goods. */
export type MilestoneName = Exclude<Milestone, 'delivery-over'>;

/** A moment, or a time from it: negative seconds are before it. */
export interface MilestoneOffset {
  moment: Milestone;
  seconds: number;
}

/** A time next to a moment: the `seconds` before it, or after it. */
export interface WithinWindow {
  moment: Milestone;
  side: 'before' | 'after';
  seconds: number;
}

const SECONDS = { min: 60, h: 3600, days: 86_400, day: 86_400 } as const;
const WRITTEN = /^(\d{1,4}(?:\.\d{1,2})?) (min|h|days?) (before|after) ([a-z-]+)$/;
const LIKE = 'write it like "30 min after doors-opened", with min, h or days, before or after, and a moment';

const writtenWithin = z
  .string()
  .regex(WRITTEN, { error: LIKE })
  .transform((text, ctx): WithinWindow => {
    const [, amount = '', unit = '', side = '', name = ''] = WRITTEN.exec(text) ?? [];
    const read = milestone.safeParse(name);
    const per =
      unit === 'min' || unit === 'h' || unit === 'day' || unit === 'days' ? SECONDS[unit] : undefined;
    if (!read.success || per === undefined || (side !== 'before' && side !== 'after')) {
      ctx.addIssue({
        code: 'custom',
        message: `"${name}" is not a moment; the moments are: ${milestone.options.join(', ')}`,
      });
      return z.NEVER;
    }
    return { moment: read.data, side, seconds: Number(amount) * per };
  });

/** `30 min after doors-opened`: only what lies in this time counts. */
export const withinWindow = writtenWithin.meta({
  description: 'A time next to a moment, such as "30 min after doors-opened" or "2 h before loading-began".',
  examples: ['30 min after doors-opened'],
});

/** `doors-closed`, or `24 h after delivery-over`. */
export const milestoneOffset = z.union([
  milestone.transform((name): MilestoneOffset => ({ moment: name, seconds: 0 })),
  writtenWithin
    .transform(
      ({ moment: name, side, seconds }): MilestoneOffset => ({
        moment: name,
        seconds: side === 'before' ? -seconds : seconds,
      }),
    )
    .meta({ description: 'A time from a moment, such as "24 h after delivery-over".' }),
]);

/** `2 h`, `30 min`, `1 day`: a length of time, in seconds. */
export const writtenDuration = z
  .string()
  .regex(/^\d{1,4}(?:\.\d{1,2})? (?:min|h|days?)$/, { error: 'write it like "30 min", "4 h" or "2 days"' })
  .transform((text) => {
    const [amount = '', unit = ''] = text.split(' ');
    return Number(amount) * (unit === 'min' ? SECONDS.min : unit === 'h' ? SECONDS.h : SECONDS.day);
  })
  .meta({ description: 'A length of time, such as "30 min", "4 h" or "2 days".', examples: ['4 h'] });
