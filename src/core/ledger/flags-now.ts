import type { Delivery } from '../model/delivery.js';
import { logDeliveryFlags } from '../model/delivery-flags.js';
import type { FlagName } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { EvidenceItem, ItemOf } from '../model/state.js';
import type { StatedNumbers } from '../model/unit-log.js';

const OF_DELIVERY: ReadonlySet<FlagName> = new Set(['other-trailer', 'outside-delivery-time']);

/**
 * The item with the flags that rest on the delivery worked out from its facts as they are now: what was flagged at
 * intake goes once the fact that it rested on is corrected, and comes where the corrected fact asks for it.
 */
export function withFlagsNow(item: EvidenceItem, delivery: Delivery): EvidenceItem {
  if (item.kind !== 'unit-log') return item;
  const stated = item.stated === undefined ? statedInFlags(item) : omitUndefined(item.stated);
  const facts = { from: Date.parse(item.from), to: Date.parse(item.to), ...omitUndefined({ stated }) };
  const flags = logDeliveryFlags(facts, delivery);
  return { ...item, flags: [...flags, ...item.flags.filter(({ is }) => !OF_DELIVERY.has(is))] };
}

/** Entries of before the numbers were kept say them in the words of their flags. */
function statedInFlags(item: ItemOf<'unit-log'>): StatedNumbers | undefined {
  const stated: StatedNumbers = {};
  for (const { is, detail } of item.flags) {
    const [, whose, number] = /^the log is of (trailer|unit) (.+), the delivery of /.exec(detail) ?? [];
    if (is !== 'other-trailer' || number === undefined) continue;
    if (whose === 'trailer') stated.trailer = number;
    else stated.unit = number;
  }
  return Object.keys(stated).length === 0 ? undefined : stated;
}
