import type { Stop } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Closable, GapOutcome, GapPart, GapResult, Shortfall } from '../../model/results.js';
import type { Rule } from '../../model/rule-set.js';
import { type StopSide, stopsOf } from '../milestones.js';
import { linesFor } from './applies.js';
import { closableOf, isDue, moreUrgent } from './closable.js';
import type { GapsContext, IndexedContext, RuleContext, Scope } from './context.js';
import { evaluate } from './evaluate.js';
import { indexOf } from './evidence-index.js';
import { missingSubstitutes, substitutesFor } from './substitutes.js';
import { merge, type NeedVerdict } from './verdict.js';
import { stopOfLine } from './window.js';

const OPEN: ReadonlySet<GapOutcome> = new Set(['short', 'missing', 'contradicted']);
/** Whether required evidence is missing or speaks against the rule. */
export const isOpen = (gap: { outcome: GapOutcome }) => OPEN.has(gap.outcome);

/** Evaluates every rule of the set against the record, in the order of the set. Never throws; no rule is left out. */
export function gapsOf(context: GapsContext): GapResult[] {
  const indexed = { ...context, evidence: indexOf(context.state.evidence) };
  return context.ruleSet.rules.map((rule) => gapOf(indexed, rule));
}

/** One part of a rule: the whole, one line or one stop. */
interface JudgedPart {
  scope: Scope;
  verdict: NeedVerdict;
  outcome: GapOutcome;
  closable: Closable;
}

function gapOf(context: IndexedContext, rule: Rule): GapResult {
  const lines = linesFor(rule.applies, context);
  const parts =
    lines === undefined
      ? []
      : scopesOf(context, rule, lines).map((scope) =>
          judge({ ...context, stage: rule.stage, scope, lines }, rule),
        );
  const outcome = outcomeOf(parts);
  const open = isOpen({ outcome });
  const said = parts.filter((part) => (open ? isOpen(part) : true));
  const all = merge(parts.map((part) => part.verdict));
  return {
    rule: rule.id,
    stage: rule.stage,
    weight: rule.weight,
    title: rule.title,
    outcome,
    counted: all.counted,
    nearly: all.rejected,
    against: all.against,
    lacking: said.flatMap((part) => stamped(part, parts.length > 1)),
    notes: all.notes,
    closable: said.map((part) => part.closable).sort(moreUrgent)[0] ?? closableOf(context, rule, {}),
    substitutes: open ? substitutesFor(context, rule) : [],
    wanted: open ? missingSubstitutes(context, rule) : [],
    ...omitUndefined({
      parts: parts.length > 1 ? parts.map((part) => partOf(part)) : undefined,
      clock: rule.clock,
      weightWhy: rule.weightWhy,
    }),
    proves: rule.proves,
    why: rule.why,
    how: rule.how,
    basis: rule.basis,
  };
}

/** The lines or stops for which a rule is evaluated one by one. */
function scopesOf(context: IndexedContext, rule: Rule, lines: RuleContext['lines']): Scope[] {
  switch (rule.each) {
    case undefined:
      return [{}];
    case 'line':
      return lines.map((line) => ({ line }));
    case 'loading-stop':
      return stopsUsed(context, 'load', lines).map((stop) => ({ stop }));
    case 'unloading-stop':
      return stopsUsed(context, 'unload', lines).map((stop) => ({ stop }));
    case 'first-loading-stop':
      return stopsUsed(context, 'load', lines)
        .slice(0, 1)
        .map((stop) => ({ stop }));
    case 'last-unloading-stop':
      return stopsUsed(context, 'unload', lines)
        .slice(-1)
        .map((stop) => ({ stop }));
  }
}

/** Stops of one side at which a line of the rule is loaded or unloaded. */
function stopsUsed(context: IndexedContext, side: StopSide, lines: RuleContext['lines']): Stop[] {
  return stopsOf(context.milestones, side).filter((stop) =>
    lines.some((line) => stopOfLine(line, side) === stop.id),
  );
}

/** A met or contradicted part is so at any time; an open part is not yet due before the rule's opening time. */
function judge(context: RuleContext, rule: Rule): JudgedPart {
  const verdict = evaluate(context, rule.needs);
  const settled = verdict.outcome === 'met' || verdict.outcome === 'contradicted';
  return {
    scope: context.scope,
    verdict,
    outcome: settled || isDue(context, rule, context.scope) ? verdict.outcome : 'not-yet-due',
    closable: closableOf(context, rule, context.scope),
  };
}

/** The outcome of a rule from its parts. Parts not yet due are no gap. */
function outcomeOf(parts: readonly JudgedPart[]): GapOutcome {
  if (parts.length === 0) return 'does-not-apply';
  if (parts.some((part) => part.outcome === 'contradicted')) return 'contradicted';
  const open = parts.filter(isOpen);
  if (open.length === 0) return parts.every((part) => part.outcome === 'met') ? 'met' : 'not-yet-due';
  const some = parts.some(
    (part) => part.outcome === 'met' || part.outcome === 'short' || part.verdict.counted.length > 0,
  );
  return some ? 'short' : 'missing';
}

/** The shortfalls of a part; they name its line or stop where there are several parts. */
function stamped({ verdict, scope, outcome }: JudgedPart, several: boolean): Shortfall[] {
  if (outcome === 'met') return [];
  const { line, stop } = scope;
  if (!several) return verdict.lacking;
  return verdict.lacking.map((one) => ({
    ...one,
    ...omitUndefined({
      line: line === undefined || one.line !== undefined ? undefined : line.id,
      stop: stop === undefined || one.stop !== undefined ? undefined : stop.id,
    }),
  }));
}

function partOf({ scope: { line, stop }, verdict, outcome, closable }: JudgedPart): GapPart {
  return {
    ...omitUndefined({ line: line?.id, stop: stop?.id }),
    outcome,
    lacking: outcome === 'met' ? [] : verdict.lacking,
    closable,
  };
}
