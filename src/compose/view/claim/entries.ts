import type { Day } from '../../../core/model/claim.js';
import { type Money, minorUnits } from '../../../core/model/money.js';
import type { ClaimResult } from '../../../core/model/results.js';
import type { ClaimEntry } from '../../../core/model/state.js';
import { type Inline, text } from '../../../core/words/blocks.js';
import { exhibitLinks, type View } from '../context.js';

/** Current entries of one claim, in the order of the record. */
export const claimEntriesOf = (view: View, { claim }: Pick<ClaimResult, 'claim'>): ClaimEntry[] =>
  view.input.state.claims.filter((one) => one.claim === claim && one.replacedBy === undefined);

/** Links to the supporting documents of entries; the entry's number where it has none. */
export function supportLinks(view: View, seqs: readonly number[]): Inline[] {
  const entries = view.input.state.claims.filter((one) => seqs.includes(one.seq));
  const links = exhibitLinks(view, [...new Set(entries.flatMap((one) => one.evidence))], 4);
  const bare = entries.filter((one) => one.evidence.length === 0).map((one) => one.seq);
  const without = bare.length === 0 ? [] : [text(view.labels('claim.entry').replace('N', bare.join(', ')))];
  return links.length > 0 && without.length > 0 ? [...links, text('; '), ...without] : [...links, ...without];
}

/** Exhibits in brackets after words; empty without exhibits. */
export function bracketed(links: readonly Inline[]): Inline[] {
  return links.length === 0 ? [] : [text(' ('), ...links, text(')')];
}

/** `Mon Aug 3, 2026 CDT`: a calendar day at its place. */
export const formatDayIn = ({ format }: View, { date, zone }: Day): string =>
  `${format.day(date)}\u00a0${format.zoneName(Date.parse(`${date}T12:00:00Z`), zone)}`;

export const formatMoneyIn = ({ format }: View, money: Money): string =>
  format.money(minorUnits(money), money.currency);
