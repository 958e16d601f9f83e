/** How the load was weighed, shaken and found standing. */
import { z } from 'zod';
import { acceleration } from '../acceleration.js';
import { HEAVIEST, kilograms, type Weight, weight } from '../weight.js';
import { readingFields } from './fields.js';
import { evidenceId } from './ids.js';

const groupWeight = weight.refine((one) => kilograms(one) <= HEAVIEST['axle-group'], {
  error: 'heavier than any axle group; is a figure or the unit wrong?',
});

/** The axle groups of a scale, in the order of the vehicle. */
export const axleGroup = z.enum(['steer', 'drive', 'trailer']);
/** A group of axles that a scale weighs. */
export type AxleGroup = z.infer<typeof axleGroup>;

export const scale = z
  .strictObject({
    kind: z.literal('scale'),
    ...readingFields,
    steer: groupWeight.optional().meta({ description: 'Weight on the steer axle' }),
    drive: groupWeight.optional().meta({ description: 'Weight on the drive axles' }),
    trailer: groupWeight.optional().meta({ description: 'Weight on the axles of the trailer' }),
    gross: weight
      .refine((one) => kilograms(one) <= HEAVIEST.gross, {
        error: 'heavier than any vehicle; is a figure or the unit wrong?',
      })
      .optional()
      .meta({ description: 'Weight of the whole vehicle' }),
    ticket: z.string().min(1).max(60).optional().meta({ description: 'Number of the scale ticket' }),
  })
  .superRefine((reading, ctx) => {
    const problem = scaleProblem(reading);
    if (problem !== undefined) ctx.addIssue({ code: 'custom', message: problem, path: ['gross'] });
  })
  .meta({ description: 'What a scale showed, by axle group' });

/** Weights of a scale that do not hold together. */
function scaleProblem(reading: Partial<Record<AxleGroup | 'gross', Weight | undefined>>): string | undefined {
  const groups = axleGroup.options.flatMap((name) => reading[name] ?? []);
  if (groups.length === 0 && reading.gross === undefined) return 'no weight is given';
  if (reading.gross === undefined) return undefined;
  const sum = groups.reduce((total, one) => total + kilograms(one), 0);
  const gross = kilograms(reading.gross);
  const all = groups.length === axleGroup.options.length;
  const apart = all ? Math.abs(sum - gross) : sum - gross;
  return apart > ROUNDED * gross
    ? `the axle groups add up to ${Math.round(sum)} kg, and the whole vehicle is said to weigh ${Math.round(gross)} kg`
    : undefined;
}

/** Scales round each group: of a sum of three, this share may be rounding. Common practice, no source. */
const ROUNDED = 0.005;

export const shockEvent = z.enum(['shock', 'hard-braking', 'hard-acceleration', 'hard-turn', 'tilt']);
/** What a recorder marked. */
export type ShockEvent = z.infer<typeof shockEvent>;

export const shockAxis = z.enum(['vertical', 'lateral', 'longitudinal', 'x', 'y', 'z', 'resultant']);
/** The way that an acceleration points, as the recorder names it. */
export type ShockAxis = z.infer<typeof shockAxis>;

export const shock = z
  .strictObject({
    kind: z.literal('shock'),
    ...readingFields,
    what: shockEvent.default('shock').meta({ description: 'What the recorder marked' }),
    peak: acceleration.optional().meta({ description: 'Peak acceleration: `value` and `unit`' }),
    milliseconds: z
      .number()
      .positive()
      .max(600_000)
      .optional()
      .meta({ description: 'How long it lasted, ms' }),
    axis: shockAxis.optional().meta({ description: 'The way that it points, as the recorder names it' }),
    threshold: acceleration
      .optional()
      .meta({ description: 'The threshold that the recorder was set to, or that was agreed' }),
    instrument: z.string().max(100).optional().meta({ description: 'The recorder' }),
  })
  .meta({ description: 'A shock, or hard braking, that a recorder marked' });

export const palletState = z.enum(['leaning', 'fallen', 'shifted', 'crushed']);

export const pallets = z
  .strictObject({
    kind: z.literal('pallets'),
    ...readingFields,
    state: palletState.meta({ description: 'How they were found' }),
    rows: z
      .strictObject({ from: z.int().min(1).max(60), to: z.int().min(1).max(60) })
      .refine(({ from, to }) => from <= to, { error: 'the first row comes before the last' })
      .optional()
      .meta({ description: 'In which rows, counted from the nose' }),
    count: z.int().positive().max(100).optional().meta({ description: 'How many' }),
    documents: z
      .array(evidenceId)
      .max(20)
      .default([])
      .meta({ description: 'The photographs that show them' }),
    note: z.string().max(2000).optional().meta({ description: 'Free text' }),
  })
  .meta({ description: 'Pallets found leaning, fallen, shifted or crushed' });
