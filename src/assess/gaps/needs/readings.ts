import type { SimpleNeed } from '../../../model/rule-set.js';
import type { EvidenceItem, ItemOf } from '../../../model/state.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import type { NeedVerdict } from '../verdict.js';
import { say } from '../window.js';

type ReadingNeed = Extract<SimpleNeed, { reading: 'set-point' | 'bracing' | 'contact' | 'statement' }>;
type EventNeed = Extract<SimpleNeed, { event: unknown }>;
type Plain = ItemOf<ReadingNeed['reading']>;

const NOUNS: Record<ReadingNeed['reading'], [one: string, many: string]> = {
  'set-point': ['set-point reading', 'set-point readings'],
  bracing: ['note of bracing', 'notes of bracing'],
  contact: ['note of who was told', 'notes of who was told'],
  statement: ['statement', 'statements'],
};

/** Set points, bracing, contacts and statements. A set point in another run mode than asked contradicts. */
export function readingVerdict(context: RuleContext, need: ReadingNeed): NeedVerdict {
  const [one, many] = NOUNS[need.reading];
  const detail = need.with ?? need.shownBy;
  const from = detail === undefined ? '' : ` (${detail})`;
  const ask = {
    is: (item: EvidenceItem): item is Plain => item.kind === need.reading,
    miss: (item: Plain) => {
      if (item.kind === 'contact' && need.with !== undefined && item.with !== need.with)
        return 'wrong-source' as const;
      if (item.kind !== 'set-point') return undefined;
      if (need.shownBy !== undefined && item.shownBy !== need.shownBy) return 'wrong-source' as const;
      return need.run !== undefined && item.run === undefined ? ('bad-value' as const) : undefined;
    },
    one: `${one}${from}`,
    many: `${many}${from}`,
  };
  const groups = groupsFor(context, need, ask);
  const verdict = verdictOf(groups, need, ask);
  const other = groups
    .flatMap((group) => group.counted)
    .filter((item) => item.kind === 'set-point' && need.run !== undefined && item.run !== need.run);
  if (other.length === 0) return verdict;
  return {
    ...verdict,
    outcome: 'contradicted',
    against: [...new Set(other.map((item) => item.evidence))],
    lacking: [...verdict.lacking, `the unit was seen in another run mode than ${need.run}`],
  };
}

/** Recorded events. */
export function eventVerdict(context: RuleContext, need: EventNeed): NeedVerdict {
  const ask = {
    is: (item: EvidenceItem): item is ItemOf<'event'> => item.kind === 'event' && item.event === need.event,
    one: `time of: ${say(need.event)}`,
    many: `times of: ${say(need.event)}`,
  };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}
