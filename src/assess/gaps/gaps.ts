import type { GapResult, Outcome } from '../../model/results.js';
import type { Rule } from '../../model/rule-set.js';
import { appliesTo } from './applies.js';
import { closableOf, isDue } from './closable.js';
import type { Context } from './context.js';
import { evaluate } from './evaluate.js';
import { substitutesFor } from './substitutes.js';
import { type NeedVerdict, nothing } from './verdict.js';

/** Every rule of the set held against the record, in the order of the set. Never throws; no rule is left out. */
export function gapsOf(context: Context): GapResult[] {
  return context.ruleSet.rules.map((rule) => gapOf(context, rule));
}

function gapOf(context: Context, rule: Rule): GapResult {
  const applies = appliesTo(rule, context);
  const verdict = applies ? evaluate({ ...context, stage: rule.stage }, rule.needs) : nothing();
  const outcome = applies ? outcomeOf(context, rule, verdict) : 'does-not-apply';
  const open = outcome === 'short' || outcome === 'missing' || outcome === 'contradicted';
  return {
    rule: rule.id,
    stage: rule.stage,
    title: rule.title,
    outcome,
    counted: verdict.counted,
    nearly: verdict.nearly,
    against: verdict.against,
    lacking: verdict.lacking,
    closable: closableOf(context, rule),
    substitutes: open ? substitutesFor(context, rule) : [],
    proves: rule.proves,
    why: rule.why,
    how: rule.how,
    basis: rule.basis,
  };
}

/** What is met or contradicted is so at any time; what is open is not yet due before the rule's opening moment. */
function outcomeOf(context: Context, rule: Rule, verdict: NeedVerdict): Outcome {
  if (verdict.outcome === 'met' || verdict.outcome === 'contradicted') return verdict.outcome;
  return isDue(context, rule) ? verdict.outcome : 'not-yet-due';
}
