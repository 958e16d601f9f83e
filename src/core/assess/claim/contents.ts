import type { ContentsItem } from '../../model/results.js';
import type { ClaimEntryOf } from '../../model/state.js';

const RULE = { source: '49 CFR 370.3(b)', basis: 'read' } as const;

/**
 * The minimum contents of a claim: 49 CFR 370.3(b). A spoken communication, or an electronic one without an
 * agreement on that, is not in the form the rule requires. What nobody has reviewed is not counted as missing, and
 * a recorded amount counts as a stated amount.
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
