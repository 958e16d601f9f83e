import type { EvidenceId } from '../../model/evidence.js';
import type { GapResult } from '../../model/results.js';
import type { Rule } from '../../model/rule-set.js';
import { custodyOf } from '../custody.js';
import { knownShare } from '../temperature/coverage.js';
import type { Context } from './context.js';
import { say } from './window.js';

type Substitute = Rule['substitutes'][number];
/** The air of the first hours after loading is what a pull-down is read from. */
const PULL_DOWN_MS = 4 * 3_600_000;

/** Evidence in the record that does not meet the rule but says something of the same. */
export function substitutesFor(context: Context, rule: Rule): GapResult['substitutes'] {
  return rule.substitutes.flatMap((one) => {
    const evidence = evidenceFor(context, one);
    return evidence.length === 0 ? [] : [{ what: nameOf(one), evidence }];
  });
}

function nameOf(one: Substitute): string {
  if ('document' in one) return say(one.document);
  if ('photo' in one) return `photo of: ${say(one.photo)}`;
  if ('statement' in one) return 'statement of a person';
  return one.computed === 'pull-down' ? 'pull-down after loading in the unit log' : 'the unit log';
}

function evidenceFor(context: Context, one: Substitute): EvidenceId[] {
  const usable = context.state.evidence.filter((item) => item.withheld === undefined);
  if ('document' in one)
    return usable
      .filter(
        (item) => (item.kind === 'document' || item.kind === 'photo') && item.subject?.is === one.document,
      )
      .map((item) => item.evidence);
  if ('photo' in one)
    return usable
      .filter((item) => item.kind === 'photo' && item.subject?.is === one.photo)
      .map((item) => item.evidence);
  if ('statement' in one)
    return usable.filter((item) => item.kind === 'statement').map((item) => item.evidence);
  return logsFor(context, one.computed);
}

function logsFor(context: Context, computed: 'pull-down' | 'log-coverage'): EvidenceId[] {
  const custody = custodyOf(context.moments, { from: context.now, to: context.now + 1 });
  if (custody === undefined || custody.from.basis === 'log-start') return [];
  const from = custody.from.at;
  const to = computed === 'pull-down' ? from + PULL_DOWN_MS : custody.to.at;
  return context.logs.filter((log) => knownShare([log], { from, to }) >= 0.5).map((log) => log.evidence);
}
