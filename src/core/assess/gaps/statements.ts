import type { StatementTopic } from '../../model/evidence.js';
import type { ItemOf } from '../../model/state.js';

/**
 * Whether a statement may concern a rule: a statement with a topic concerns that topic alone, one without may
 * concern anything.
 */
export function mayConcern(
  { about }: ItemOf<'statement'>,
  topics: StatementTopic | readonly StatementTopic[] | undefined,
): boolean {
  if (about === undefined || topics === undefined) return true;
  return typeof topics === 'string' ? topics === about : topics.includes(about);
}
