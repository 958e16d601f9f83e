import type { EvidenceId } from '../../model/evidence.js';
import type { GapResult } from '../../model/results.js';
import type { Rule, Substitute } from '../../model/rule-set.js';
import { knownShare } from '../temperature/coverage.js';
import { shownStartOf, transitWindowOf } from '../transit-window.js';
import type { IndexedContext } from './context.js';
import { mayConcern } from './statements.js';
import { isInFuture } from './window.js';

/** A pull-down is read from the air of these hours after loading. */
const PULL_DOWN_MS = 4 * 3_600_000;

/** Accepted substitutes on file for the rule's evidence, best first. */
export function substitutesFor(context: IndexedContext, rule: Rule): GapResult['substitutes'] {
  return rule.substitutes.flatMap((what) => {
    const evidence = evidenceFor(context, what);
    return evidence.length === 0 ? [] : [{ what, evidence }];
  });
}

/** Accepted substitutes that are not on file. */
export function missingSubstitutes(context: IndexedContext, rule: Rule): Substitute[] {
  return rule.substitutes.filter((what) => evidenceFor(context, what).length === 0);
}

function evidenceFor(context: IndexedContext, one: Substitute): EvidenceId[] {
  if ('computed' in one) return logsFor(context, one.computed);
  const items =
    'document' in one
      ? context.evidence.showing([one.document])
      : 'photo' in one
        ? context.evidence.showing([one.photo]).filter((item) => item.kind === 'photo')
        : context.evidence.of('statement').filter((item) => mayConcern(item, one.about));
  return items
    .filter((item) => item.withheld === undefined && !isInFuture(context, item))
    .map((item) => item.evidence);
}

function logsFor(context: IndexedContext, computed: 'pull-down' | 'log-coverage'): EvidenceId[] {
  const from = shownStartOf(context.milestones);
  if (from === undefined) return [];
  const end = transitWindowOf(context.milestones)?.to.at ?? context.now;
  const to = computed === 'pull-down' ? from + PULL_DOWN_MS : end;
  return context.logs.filter((log) => knownShare([log], { from, to }) >= 0.5).map((log) => log.evidence);
}
