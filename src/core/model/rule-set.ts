import { z } from 'zod';
import { deadlineId } from './claim.js';
import { runMode } from './delivery.js';
import { documentSubject, type Sha256, sceneSubject, statementTopic } from './evidence.js';
import { writtenLength } from './length.js';
import { milestone, milestoneOffset } from './milestone.js';
import { need } from './rule-need.js';
import { writtenTemperature, writtenTemperatureDifference } from './temperature.js';

export { type Milestone, type MilestoneOffset, milestone } from './milestone.js';
export type { Need, SimpleNeed } from './rule-need.js';

export const stage = z.enum(['before-loading', 'loading', 'in-transit', 'arrival', 'rejection', 'claim']);
/** The stage of a delivery that a rule belongs to. */
export type Stage = z.infer<typeof stage>;

export const element = z.enum([
  'good-condition-at-receipt',
  'instructions-followed',
  'care-in-transit',
  'condition-at-delivery',
  'act-of-shipper',
  'nature-of-goods',
  'damages',
]);
/** What must be shown in a claim, and what a rule or finding helps to show. */
export type Element = z.infer<typeof element>;

export const ruleWeight = z.enum(['decisive', 'supporting', 'good-practice']);
/**
 * What a rule weighs when there is a dispute: it turns on evidence that is decisive; supporting evidence makes other
 * evidence better; good practice prevents disputes and is seldom asked for in one.
 */
export type RuleWeight = z.infer<typeof ruleWeight>;

const count = z
  .strictObject({ atLeast: z.int().min(0).optional(), atMost: z.int().min(0).optional() })
  .refine((range) => range.atLeast !== undefined || range.atMost !== undefined, {
    error: 'say atLeast, atMost or both',
  });

/** Conditions on a line of the bill. Those given choose the lines that a rule is about; some line must be chosen. */
const lineConditions = {
  iced: z.boolean().optional(),
  /** The bill states a temperature for it. */
  temperatureControlled: z.boolean().optional(),
  /** Some source of the reference library recommends a temperature for its goods. */
  temperatureRecommended: z.boolean().optional(),
  /** Its goods are one of these, by the key or name in delivery.yaml. */
  goods: z.array(z.string().min(1)).min(1).optional(),
  /** The bill's temperature is at most, or at least, this. */
  setPointAtMost: writtenTemperature.optional(),
  setPointAtLeast: writtenTemperature.optional(),
  /** What the bill says on running the unit; `silent` when it says nothing. */
  run: z.enum([...runMode.options, 'silent']).optional(),
  stackHeightAtLeast: writtenLength.optional(),
};
const deliveryConditions = {
  airChute: z.boolean().optional(),
  drains: z.boolean().optional(),
  /** An event that must have happened, such as refused. */
  happened: milestone.optional(),
  /** Whether a claim is in the record: as recorded, or a claim letter, its acknowledgement or an answer to it. */
  claim: z.boolean().optional(),
  /** How many stops, lines and different goods there are. */
  loadingStops: count.optional(),
  unloadingStops: count.optional(),
  lines: count.optional(),
  kindsOfGoods: count.optional(),
};

/**
 * For which deliveries and lines a rule is meant; every condition given must hold. Conditions on lines hold together
 * for one line.
 */
export const applies = z.strictObject({
  ...lineConditions,
  ...deliveryConditions,
  /** At least one of these holds; none of these holds. */
  any: z
    .array(z.strictObject({ ...lineConditions, ...deliveryConditions }))
    .min(1)
    .optional(),
  none: z
    .array(z.strictObject({ ...lineConditions, ...deliveryConditions }))
    .min(1)
    .optional(),
});
export type Applies = z.infer<typeof applies>;

const substitute = z.union([
  z.strictObject({ document: documentSubject }),
  z.strictObject({ photo: sceneSubject }),
  z.strictObject({ computed: z.enum(['pull-down', 'log-coverage']) }),
  z.strictObject({
    statement: z.literal('person'),
    /** Its topic; a statement that names none counts too. */
    about: z.union([statementTopic, z.array(statementTopic).min(1)]).optional(),
  }),
]);
/** Evidence that is accepted in the place of what a rule asks for. */
export type Substitute = z.infer<typeof substitute>;

export const rule = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9-]{1,60}$/),
  stage,
  title: z.string().min(1).max(160),
  applies: applies.optional(),
  /** The rule is held against each line, or each stop, or one stop, on its own, with its own closing moment. */
  each: z
    .enum(['line', 'loading-stop', 'unloading-stop', 'first-loading-stop', 'last-unloading-stop'])
    .optional(),
  needs: need,
  weight: ruleWeight.default('supporting'),
  /** Why it weighs so. */
  weightWhy: z.string().min(1).max(300).optional(),
  /** Before this the rule is not yet due. */
  opens: milestoneOffset.optional(),
  /** After this the evidence is no longer obtainable. Left out: it is obtainable later too. */
  closes: milestoneOffset.optional(),
  /** The clock of a claim by which it is due, by its id in claim-deadlines.yaml. Past it, it is obtainable still, late. */
  clock: deadlineId.optional(),
  /** What says something of the same when the evidence is not obtainable, best first. */
  substitutes: z.array(substitute).default([]),
  proves: z.array(element).min(1),
  why: z.string().min(1).max(600),
  how: z.string().min(1).max(600),
  /** A source, or "common practice". */
  basis: z.string().min(1).max(300),
});
export type Rule = z.infer<typeof rule>;

/** A rule set with all that it extends worked in. */
export const ruleSet = z
  .strictObject({
    /** Of sets that are named together, with ` + ` between them. */
    ruleSet: z.string().min(1).max(600),
    version: z.string().min(1).max(200),
    title: z.string().min(1).max(1500),
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
/** Rules of required evidence, with the tolerance around instructed temperatures: see docs/formats/rule-sets-and-templates.md. */
export type RuleSet = z.infer<typeof ruleSet>;

/** Where a resolved rule set comes from, so that a reader of the dossier can see what was asked and what was not. */
export interface RuleSetOrigin {
  /** Every file that took part, the one extended first. */
  files: { name: string; ruleSet: string; version: string; sha256: Sha256 }[];
  changed: { rule: string; title: string; by: string; fields: string[] }[];
  off: { rule: string; title: string; by: string; why: string }[];
  /** Where sets that do not extend each other say different things; absent where they don't. */
  conflicts?: RuleConflict[];
}

/** Two sets that say different things of one rule, or of the tolerance, and the one that counts. */
export interface RuleConflict {
  rule?: string;
  title?: string;
  /** The field that both change; `off` where one switches the rule off, `rule` where both add it. */
  field: string;
  sets: string[];
  counts: string;
}
