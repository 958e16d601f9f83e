import { z } from 'zod';

/** The options of `dossier record`, as typed. */
export const typedFields = z.object({
  at: z.string().optional(),
  stop: z.string().optional(),
  line: z.string().optional(),
  position: z.string().optional(),
  by: z.string().optional(),
  caption: z.string().optional(),
  from: z.string().optional(),
  instrument: z.string().optional(),
  shownBy: z.string().optional(),
  run: z.string().optional(),
  setPoint: z.string().optional(),
  fuel: z.string().optional(),
  alarm: z.array(z.string()).optional(),
  state: z.string().optional(),
  note: z.string().optional(),
  how: z.string().optional(),
  about: z.string().optional(),
  notice: z.string().optional(),
  rows: z.string().optional(),
  blocks: z.array(z.string()).optional(),
  outcome: z.string().optional(),
  rest: z.string().optional(),
  reason: z.union([z.string(), z.array(z.string())]).optional(),
  words: z.string().optional(),
  saidBy: z.string().optional(),
  told: z.string().optional(),
  toldName: z.string().optional(),
  on: z.string().optional(),
});
export type TypedFields = z.infer<typeof typedFields>;
