import type { Rule } from '../../model/rule-set.js';
import { happened } from '../moments.js';
import type { Context } from './context.js';

/**
 * Whether a rule is meant for this delivery. What the delivery does not say about its trailer is taken to be so:
 * a rule on the air chute holds until someone writes that there is none.
 */
export function appliesTo(rule: Rule, context: Context): boolean {
  const { applies } = rule;
  if (applies === undefined) return true;
  const { lines, equipment } = context.state.delivery;
  const { trailer } = equipment;
  const facts: [wanted: boolean | undefined, is: boolean][] = [
    [applies.iced, lines.some((line) => line.iced)],
    [applies.temperatureControlled, lines.some((line) => line.instruction !== undefined)],
    [applies.airChute, trailer.airChute ?? true],
    [applies.drains, trailer.drains !== 'none'],
  ];
  if (facts.some(([wanted, is]) => wanted !== undefined && wanted !== is)) return false;
  return applies.happened === undefined || happened(context.moments, applies.happened);
}
