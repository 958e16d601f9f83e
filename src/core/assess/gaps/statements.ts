import type { StatementTopic } from '../../model/evidence.js';
import type { ItemOf } from '../../model/state.js';

/**
 * Whether a statement can be about what a rule asks for: one that names a topic is about that alone, one that names
 * none may be about anything.
 */
export function mayConcern(
  { about }: ItemOf<'statement'>,
  topics: StatementTopic | readonly StatementTopic[] | undefined,
): boolean {
  if (about === undefined || topics === undefined) return true;
  return typeof topics === 'string' ? topics === about : topics.includes(about);
}
