import { omitUndefined } from '../../../model/omit-undefined.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import type { NeedVerdict } from '../verdict.js';

type ParticularNeed = Extract<SimpleNeed, { particular: unknown }>;
type InstrumentNeed = Extract<SimpleNeed, { instrument: unknown }>;

const listOf = <T extends string>(value: T | T[] | undefined): T[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value];

/** Particulars of the subjects asked for, by the party asked for where one is. */
export function particularVerdict(context: RuleContext, need: ParticularNeed): NeedVerdict {
  const subjects = listOf(need.particular);
  const who = listOf(need.who);
  const ask = {
    candidates: context.evidence.of('particular').filter((item) => subjects.includes(item.of)),
    rejectionReason: (item: ItemOf<'particular'>) =>
      who.length === 0 || (item.who !== undefined && who.includes(item.who.party))
        ? undefined
        : ('wrong-source' as const),
    thing: subjects.map((subject) => `particular-${subject}`).join(','),
  };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}

/**
 * Instruments of a type with the details asked for. What is said of one instrument at several times is put together: a
 * thermometer checked in ice before loading and after delivery has both checks.
 */
export function instrumentVerdict(context: RuleContext, need: InstrumentNeed): NeedVerdict {
  const all = context.evidence.of('instrument').filter(({ type }) => listOf(need.instrument).includes(type));
  const owners = listOf(need.owner);
  const details = need.has ?? [];
  const known = new Map<string, Partial<ItemOf<'instrument'>>>();
  for (const item of all) {
    const said = omitUndefined(Object.fromEntries(details.map((name) => [name, item[name]])));
    known.set(keyOf(item), { ...known.get(keyOf(item)), ...said });
  }
  const ask = {
    candidates: all,
    rejectionReason: (item: ItemOf<'instrument'>) => {
      if (owners.length > 0 && (item.owner === undefined || !owners.includes(item.owner.party)))
        return 'wrong-source' as const;
      const said = known.get(keyOf(item));
      return details.every((name) => said?.[name] !== undefined) ? undefined : ('incomplete' as const);
    },
    thing: [
      ...listOf(need.instrument).map((type) =>
        owners.length === 0 ? `instrument-${type}` : `instrument-${type}-of-${owners[0]}`,
      ),
    ].join(','),
  };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}

const keyOf = ({ type, name }: ItemOf<'instrument'>) => `${type} ${name.trim().toLowerCase()}`;
