import { z } from 'zod';
import { runMode } from './delivery.js';
import { eventName, paperSubject, position, readingFrom, sceneSubject, setPointSource } from './evidence.js';
import { writtenTemperatureDifference } from './temperature.js';

export const stage = z.enum(['before-loading', 'loading', 'in-transit', 'arrival', 'rejection', 'claim']);
export type Stage = z.infer<typeof stage>;

/** What must be shown in a claim, and what a rule or finding helps to show. */
export const element = z.enum([
  'good-condition-at-receipt',
  'instructions-followed',
  'care-in-transit',
  'condition-at-delivery',
  'act-of-shipper',
  'nature-of-goods',
  'damages',
]);
export type Element = z.infer<typeof element>;

/** Moments that open and close the time in which evidence can be got. `delivery-over` is unloaded or refused. */
export const moment = z.enum([...eventName.options, 'delivery-over']);
export type Moment = z.infer<typeof moment>;

/** At which kind of stop the evidence belongs. */
const at = z.enum(['loading-stop', 'unloading-stop']);
const window = {
  at: at.optional(),
  /** Only evidence after, or before, this moment counts. */
  after: moment.optional(),
  before: moment.optional(),
};
const amount = {
  atLeast: z.int().positive().default(1),
  /** The count is required for each line, or each stop, on its own. */
  per: z.enum(['delivery', 'line', 'stop']).default('delivery'),
};
const spread = z.strictObject({ position: z.array(position).min(1) });

const photoNeed = z.strictObject({
  photo: z.union([sceneSubject, z.array(sceneSubject).min(1)]),
  ...amount,
  ...window,
});
const documentNeed = z.strictObject({
  document: z.union([paperSubject, z.array(paperSubject).min(1)]),
  ...amount,
  ...window,
});
const pulpNeed = z.strictObject({
  reading: z.literal('pulp'),
  from: readingFrom.optional(),
  spread: spread.optional(),
  /** Every pulp must lie within the line's instruction ± this (or the bill's own tolerance when it states one). */
  withinInstruction: z.strictObject({ tolerance: writtenTemperatureDifference }).optional(),
  ...amount,
  ...window,
});
const roundNeed = z.strictObject({
  reading: z.literal('round'),
  /** Longest time between looks, in hours. */
  everyHours: z.number().positive().optional(),
  fuelAtLeast: z.number().min(0).max(1).optional(),
  ...amount,
  ...window,
});
const plainReadingNeed = z.strictObject({
  reading: z.enum(['set-point', 'bracing', 'contact', 'statement']),
  with: z.enum(['shipper', 'receiver', 'broker', 'insurer']).optional(),
  /** Of a set point: where it was read. */
  shownBy: setPointSource.optional(),
  run: runMode.optional(),
  ...amount,
  ...window,
});
const sealNeed = z.strictObject({
  reading: z.literal('seal'),
  state: z.enum(['applied', 'intact']).optional(),
  /** The number must be the one that was applied at loading. */
  sameAsApplied: z.boolean().default(false),
  ...amount,
  ...window,
});
const eventNeed = z.strictObject({ event: eventName, ...amount, ...window });
const instructionNeed = z.strictObject({
  instruction: z.literal('on-the-bill'),
  per: z.literal('line').default('line'),
});
const agreementNeed = z.strictObject({
  agreement: z.literal('set-point'),
  /** Sources that must agree within this much of each other. */
  between: z.array(z.enum(['bill', 'display', 'log'])).min(2),
  tolerance: writtenTemperatureDifference,
});
const logNeed = z.strictObject({
  log: z.literal('unit-log'),
  /** Share of the window in which values are known, 0 to 1. */
  coverage: z.number().min(0).max(1),
  from: moment,
  to: moment,
});

const simpleNeed = z.union([
  photoNeed,
  documentNeed,
  pulpNeed,
  roundNeed,
  plainReadingNeed,
  sealNeed,
  eventNeed,
  instructionNeed,
  agreementNeed,
  logNeed,
]);
export type SimpleNeed = z.infer<typeof simpleNeed>;
export type Need = SimpleNeed | { all: Need[] } | { any: Need[] } | { none: Need[] };
type NeedInput =
  | z.input<typeof simpleNeed>
  | { all: NeedInput[] }
  | { any: NeedInput[] }
  | { none: NeedInput[] };

export const need: z.ZodType<Need, NeedInput> = z.lazy(() =>
  z.union([
    simpleNeed,
    z.strictObject({ all: z.array(need).min(1).max(20) }),
    z.strictObject({ any: z.array(need).min(1).max(20) }),
    z.strictObject({ none: z.array(need).min(1).max(20) }),
  ]),
);

/** For which deliveries a rule is meant; every condition given must hold. */
export const applies = z.strictObject({
  /** Some line is carried iced. */
  iced: z.boolean().optional(),
  /** Some line has a temperature instruction. */
  temperatureControlled: z.boolean().optional(),
  airChute: z.boolean().optional(),
  drains: z.boolean().optional(),
  /** An event that must have happened, such as refused. */
  happened: moment.optional(),
});

export const substitute = z.union([
  z.strictObject({ document: paperSubject }),
  z.strictObject({ photo: sceneSubject }),
  z.strictObject({ computed: z.enum(['pull-down', 'log-coverage']) }),
  z.strictObject({ statement: z.literal('person') }),
]);

export const rule = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9-]{1,60}$/),
  stage,
  title: z.string().min(1).max(160),
  applies: applies.optional(),
  needs: need,
  /** Before this moment the rule is not yet due. */
  opens: moment.optional(),
  /** After this moment the evidence can't be got any more. Left out: it can still be got later. */
  closes: moment.optional(),
  substitutes: z.array(substitute).default([]),
  proves: z.array(element).min(1),
  why: z.string().min(1).max(600),
  how: z.string().min(1).max(600),
  /** A source, or "common practice". */
  basis: z.string().min(1).max(300),
});
export type Rule = z.infer<typeof rule>;

export const ruleSet = z
  .strictObject({
    ruleSet: z.string().min(1).max(60),
    version: z.string().min(1).max(20),
    title: z.string().min(1).max(160),
    /** Tolerance around the bill's temperature when the bill states none. */
    tolerance: writtenTemperatureDifference.optional(),
    rules: z.array(rule).min(1).max(300),
  })
  .superRefine((set, ctx) => {
    const seen = new Set<string>();
    set.rules.forEach((r, i) => {
      if (seen.has(r.id))
        ctx.addIssue({ code: 'custom', message: `rule "${r.id}" stands twice`, path: ['rules', i, 'id'] });
      seen.add(r.id);
    });
  });
export type RuleSet = z.infer<typeof ruleSet>;
