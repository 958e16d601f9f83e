import type { Closable } from '../../model/results.js';
import type { Moment, Rule } from '../../model/rule-set.js';
import { toInstant } from '../../model/time.js';
import { happened, pastBy, sideOf, stopsOf } from '../moments.js';
import type { Context } from './context.js';

/** When a moment was past at every stop of its side; a time is given where the events themselves are recorded. */
function pastEverywhere(context: Context, rule: Rule, moment: Moment): { at?: number } | undefined {
  const stops = stopsOf(context.moments, sideOf(moment, undefined, rule.stage));
  const known = stops.map((stop) => pastBy(context.moments, stop.id, moment));
  if (known.some((one) => one === undefined)) return undefined;
  const exact = known.flatMap((one) => (one === undefined || one.standIn !== undefined ? [] : [one.at]));
  return exact.length === stops.length ? { at: Math.max(...exact) } : {};
}

/** Whether the evidence of an open rule can still be got: as long as its closing moment is not past at every stop. */
export function closableOf(context: Context, rule: Rule): Closable {
  if (rule.closes === undefined) return { is: 'now' };
  const past = pastEverywhere(context, rule, rule.closes);
  if (past === undefined) return { is: 'until', moment: rule.closes };
  return { is: 'lost', since: rule.closes, ...(past.at === undefined ? {} : { at: toInstant(past.at) }) };
}

/** Whether the moment before which a rule is not due has come at the first stop it can come at. */
export function isDue(context: Context, rule: Rule): boolean {
  const { opens } = rule;
  if (opens === undefined) return true;
  const stops = stopsOf(context.moments, sideOf(opens, undefined, rule.stage));
  return (
    stops.some((stop) => pastBy(context.moments, stop.id, opens) !== undefined) ||
    happened(context.moments, opens)
  );
}
