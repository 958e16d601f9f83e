import { z } from 'zod';
import { rule } from './rule-set.js';

const ruleId = rule.shape.id;

/** What of a rule people read on a dossier's pages. */
const ruleText = z.strictObject({
  title: rule.shape.title.exactOptional(),
  why: rule.shape.why.exactOptional(),
  how: rule.shape.how.exactOptional(),
  weightWhy: rule.shape.weightWhy.unwrap().exactOptional(),
});
export type RuleText = z.infer<typeof ruleText>;
export const RULE_TEXTS = ['title', 'why', 'how', 'weightWhy'] as const satisfies readonly (keyof RuleText)[];

/**
 * One file of rules in the words of another language: what it adds and changes, and why it switches rules off, by the
 * ids of the rules. It lies in a folder named by the language, beside the file it is for, under the same name.
 */
export const ruleWordsFile = z.strictObject({
  title: z.string().min(1).max(160).exactOptional(),
  rules: z.record(ruleId, ruleText).default({}),
  off: z.record(ruleId, z.string().min(5, { error: 'give the reason in words' }).max(300)).default({}),
  /** Why only some rules of the extended sets hold. */
  only: z.string().min(5, { error: 'give the reason in words' }).max(300).exactOptional(),
});
export type RuleWordsFile = z.infer<typeof ruleWordsFile>;

/** A resolved rule set in another language; what has no words in it stays as it was written. */
export interface RuleSetWords {
  title?: string;
  rules: ReadonlyMap<string, RuleText>;
  /** Rules that are switched off, and rules that are changed, in the order of the rule set. */
  off: readonly { title?: string; why?: string }[];
  changed: readonly { title?: string }[];
}
