import { z } from 'zod';
import { THRESHOLDS } from './rule-need.js';
import { rule } from './rule-set.js';
import { writtenTemperatureDifference } from './temperature.js';

const ruleId = rule.shape.id;

/**
 * Numbers to set wherever the rule's needs state them: `{ atLeast: 5 }`. The values are checked as part of the
 * changed rule.
 */
const thresholds = z.partialRecord(z.enum(THRESHOLDS), z.json());

/** Fields of a rule that are put in place of those of the set it comes from. */
const change = z
  .strictObject({
    stage: rule.shape.stage.optional(),
    title: rule.shape.title.optional(),
    applies: rule.shape.applies,
    each: rule.shape.each,
    needs: rule.shape.needs.optional(),
    weight: rule.shape.weight.unwrap().optional(),
    weightWhy: rule.shape.weightWhy,
    opens: rule.shape.opens,
    closes: rule.shape.closes,
    substitutes: z.array(rule.shape.substitutes.unwrap().element).optional(),
    proves: rule.shape.proves.optional(),
    why: rule.shape.why.optional(),
    how: rule.shape.how.optional(),
    basis: rule.shape.basis.optional(),
    thresholds: thresholds.optional(),
  })
  .refine((fields) => Object.keys(fields).length > 0, { error: 'says nothing to change' });

export const ruleSetFile = z
  .strictObject({
    ruleSet: z.string().min(1).max(60),
    version: z.string().min(1).max(20),
    title: z.string().min(1).max(160),
    /** The name of a shipped set, or a path from this file's folder: its rules hold here too. */
    extends: z.string().min(1).max(400).optional(),
    /** Of the extended sets only these rules hold here, and why. */
    only: z
      .strictObject({
        rules: z.array(ruleId).min(1).max(300),
        why: z.string().min(5, { error: 'give the reason in words' }).max(300),
      })
      .optional(),
    /** Tolerance around the bill's temperature when the bill states none. */
    tolerance: writtenTemperatureDifference.optional(),
    rules: z.array(rule).max(300).default([]),
    /** Rules of the extended set that are changed, by their id. */
    change: z.record(ruleId, change).default({}),
    /** Rules of the extended set that do not hold here, each with the reason. */
    off: z.record(ruleId, z.string().min(5, { error: 'give the reason in words' }).max(300)).default({}),
  })
  .superRefine((file, ctx) => {
    const issue = (message: string, path: (string | number)[]) =>
      ctx.addIssue({ code: 'custom', message, path });
    const seen = new Set<string>();
    file.rules.forEach((one, i) => {
      if (seen.has(one.id)) issue(`rule "${one.id}" stands twice`, ['rules', i, 'id']);
      seen.add(one.id);
    });
    if (file.extends === undefined) {
      if (file.rules.length === 0) issue('there are no rules, and no set is extended', ['rules']);
      for (const field of ['change', 'off', 'only'] as const)
        if (Object.keys(file[field] ?? {}).length > 0)
          issue('only a set that extends another can say this; add extends:', [field]);
    }
    for (const id of Object.keys(file.off))
      if (id in file.change) issue(`rule "${id}" is changed and switched off`, ['off', id]);
  });
/** A rule set as people write it: whole, or an extension of another. */
export type RuleSetFile = z.infer<typeof ruleSetFile>;
