import type { RuleResult } from '../../src/conformance.js';

/** The rules that were not kept. */
export function brokenRules(results: readonly RuleResult[]): string[] {
  return results.flatMap(({ rule, holds }) => (holds ? [] : [rule]));
}
