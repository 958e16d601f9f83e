import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding } from '../../model/results.js';
import type { Need } from '../../model/rule-need.js';
import type { ItemOf } from '../../model/state.js';
import { longestInterval } from '../gaps/needs/unit-checks.js';
import { duration, type FindingContext, finding } from './make.js';

/** Longest interval between two unit checks where no rule says one, hours. Common practice, no source. */
const BETWEEN_UNIT_CHECKS = 4;

/**
 * Time between unit checks, against what the rule on watching the unit allows. A rule that is met in another way, such
 * as by a log without gaps and fewer checks, is met: what it allows then counts.
 */
export function unitWatchFindings(context: FindingContext): Finding[] {
  const checks = context.state.evidence.filter((item): item is ItemOf<'round'> => item.kind === 'round');
  const apart = longestInterval(
    { ...context, stage: 'in-transit' },
    { after: { moment: 'departed', seconds: 0 }, before: { moment: 'arrived', seconds: 0 } },
    checks,
  );
  if (apart === undefined || checks.length === 0) return [];
  const rules = context.ruleSet.rules.filter(({ needs }) => hoursAllowed(needs).length > 0);
  const allowed = rules.flatMap(({ needs }) => hoursAllowed(needs)).sort((a, b) => a - b);
  const strict = allowed[0] ?? BETWEEN_UNIT_CHECKS;
  const isMet =
    rules.length > 0 &&
    rules.every(({ id }) => context.gaps.some(({ rule, outcome }) => rule === id && outcome === 'met'));
  const limit = isMet ? (allowed.find((hours) => apart.hours <= hours) ?? strict) : strict;
  const id = apart.hours <= limit ? 'rounds-kept' : 'rounds-far-apart';
  const facts = {
    count: checks.length,
    longest: duration(apart.hours * 3600),
    limit: duration(limit * 3600),
  };
  const evidence = checks.map((item) => item.evidence);
  const by = 'time between unit checks, against the rule on watching the unit';
  return id === 'rounds-kept'
    ? [
        finding(id, by, evidence, {
          ...facts,
          ...omitUndefined({ beside: limit > strict ? true : undefined }),
        }),
      ]
    : // A rule that is met although the checks are far apart leaves them open, not against the carrier.
      [finding(id, by, evidence, facts, isMet ? 'open' : undefined)];
}

/** Hours between unit checks that a need or one of its parts allows. */
function hoursAllowed(need: Need): number[] {
  if ('all' in need) return need.all.flatMap(hoursAllowed);
  if ('any' in need) return need.any.flatMap(hoursAllowed);
  if ('none' in need) return [];
  return 'everyHours' in need && need.everyHours !== undefined ? [need.everyHours] : [];
}
