import type { ContentsItem } from '../../model/results.js';
import type { ClaimEntryOf } from '../../model/state.js';

/** Held by a report of the rule, not read whole. */
const RULE = { source: '49 CFR 370.3(b)', basis: 'secondary' } as const;

/**
 * The least that a claim must say: 49 CFR 370.3(b). A communication by word of mouth, or electronic without an
 * agreement on that, is not in the form the rule asks for. What nobody has looked at is not taken for missing, but an
 * amount that is recorded is an amount that is stated.
 */
export function contentsOf({ contents, amount }: ClaimEntryOf<'received'>): ContentsItem[] {
  const { form, shipment, liability } = contents;
  const stated = contents.amount ?? (amount === undefined ? undefined : 'stated');
  return [
    item('form', form === undefined ? undefined : form === 'written' || form === 'electronic-agreed'),
    item('shipment', shipment),
    item('liability', liability),
    item('amount', stated === undefined ? undefined : stated !== 'none'),
  ];
}

function item(id: ContentsItem['id'], said: boolean | undefined): ContentsItem {
  return { id, state: said === undefined ? 'not-looked-at' : said ? 'said' : 'not-said', ...RULE };
}
