import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import { shortfall } from '../shortfalls.js';
import { mayConcern } from '../statements.js';
import type { NeedVerdict } from '../verdict.js';

type ReadingNeed = Extract<
  SimpleNeed,
  { reading: 'set-point' | 'bracing' | 'contact' | 'statement' | 'exception' }
>;
type EventNeed = Extract<SimpleNeed, { event: unknown }>;
type Plain = ItemOf<ReadingNeed['reading']>;

const listOf = <T extends string>(value: T | T[]): T[] => (Array.isArray(value) ? value : [value]);

/**
 * Set points, bracing, contacts, statements and exceptions. A set point in another run mode than instructed contradicts the
 * rule.
 */
export function readingVerdict(context: RuleContext, need: ReadingNeed): NeedVerdict {
  const wanted = wantedRuns(context, need);
  const all: readonly Plain[] = context.evidence.of(need.reading);
  const candidates = all.filter((item) => item.kind !== 'statement' || mayConcern(item, need.about));
  const ask = {
    candidates,
    rejectionReason: (item: Plain) => {
      if (item.kind === 'contact') return missOfContact(item, need);
      if (item.kind === 'exception') return missOfException(item, need);
      if (item.kind !== 'set-point') return undefined;
      if (need.shownBy !== undefined && item.shownBy !== need.shownBy) return 'wrong-source' as const;
      return wanted !== undefined && item.run === undefined ? ('bad-value' as const) : undefined;
    },
    thing: thingOf(need),
  };
  const groups = groupsFor(context, need, ask);
  const verdict = verdictOf(groups, need, ask);
  if (wanted === undefined || wanted.length === 0) return verdict;
  const other = groups
    .flatMap((group) => group.counted)
    .filter((item) => item.kind === 'set-point' && item.run !== undefined && !wanted.includes(item.run));
  const [first] = other;
  if (first === undefined || first.kind !== 'set-point') return verdict;
  return {
    ...verdict,
    outcome: 'contradicted',
    against: [...new Set(other.map((item) => item.evidence))],
    lacking: [
      ...verdict.lacking,
      shortfall(
        'run-differs',
        { seen: first.run ?? '', asked: wanted.join(',') },
        { line: context.scope.line },
      ),
    ],
  };
}

/** A contact counts for the party and the subject that a rule names; one without a subject only shows that it took place. */
function missOfContact(item: ItemOf<'contact'>, need: ReadingNeed) {
  if (need.with !== undefined && !listOf(need.with).includes(item.with)) return 'wrong-source' as const;
  if (need.subject === undefined) return undefined;
  const wanted = listOf(need.subject);
  return item.subjects?.some((subject) => wanted.includes(subject)) === true
    ? undefined
    : ('other-subject' as const);
}

function missOfException(item: ItemOf<'exception'>, { signedBy }: ReadingNeed) {
  if (signedBy === undefined) return undefined;
  const wanted = listOf(signedBy);
  return item.signedBy.some(({ party }) => wanted.includes(party)) ? undefined : ('not-signed' as const);
}

/** Accepted run modes: undefined when none is required, empty when any stated mode is accepted. */
function wantedRuns(context: RuleContext, need: ReadingNeed): string[] | undefined {
  if (need.run === undefined) return undefined;
  if (need.run !== 'as-on-bill') return [need.run];
  const lines = context.scope.line === undefined ? context.lines : [context.scope.line];
  const asked = [...new Set(lines.flatMap((line) => line.instruction?.run ?? []))];
  if (asked.length > 0) return asked;
  return need.runIfSilent === undefined ? [] : [need.runIfSilent];
}

function thingOf(need: ReadingNeed): string {
  if (need.with !== undefined)
    return listOf(need.with)
      .map((party) => `contact-with-${party}`)
      .join(',');
  if (need.signedBy !== undefined)
    return listOf(need.signedBy)
      .map((party) => `exception-signed-by-${party}`)
      .join(',');
  if (need.shownBy !== undefined) return `set-point-of-${need.shownBy}`;
  return need.reading;
}

/** Recorded events of the names given. */
export function eventVerdict(context: RuleContext, need: EventNeed): NeedVerdict {
  const names = listOf(need.event);
  const reasons = need.reason === undefined ? undefined : listOf(need.reason);
  const ask = {
    candidates: context.evidence
      .of('event')
      .filter(
        ({ event, reason }) =>
          names.includes(event) &&
          (reasons === undefined || (reason !== undefined && reasons.includes(reason))),
      ),
    thing: names.map((name) => `time-of-${name}`).join(','),
  };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}
