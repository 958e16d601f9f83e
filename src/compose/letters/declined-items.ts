import type { AmountItem } from '../../core/model/claim.js';
import type { ClaimEntry, ClaimEntryOf } from '../../core/model/state.js';
import { escapeMarkdown } from '../../core/words/escape.js';
import { MarkdownText } from '../../core/words/facts.js';
import type { LetterInput } from './input.js';
import type { LetterView } from './view.js';

/** Items that a claimant asks for; the others come off the claim. */
const CLAIMED: ReadonlySet<AmountItem> = new Set([
  'market-value',
  'origin-value',
  'invoice-value',
  'agreed-value',
  'freight-paid',
  'carriage-charges',
  'mitigation-cost',
  'inspection-cost',
  'disposal-cost',
]);

const words = (text: string): string[] => text.toLowerCase().split(/[^\p{L}\p{N}-]+/u);

/** Whether a reason is for an amount: it names its line, its item, or both and nothing else. */
function isFor(item: string, entry: ClaimEntryOf<'amount'>, name: (line: string) => string): boolean {
  const said = item.trim().toLowerCase();
  const names = [
    ...(entry.line === undefined ? [] : [entry.line.toLowerCase(), name(entry.line).toLowerCase()]),
  ];
  if (said === entry.item || names.includes(said)) return true;
  const parts = words(said);
  return parts.includes(entry.item) && names.some((one) => words(one).every((word) => parts.includes(word)));
}

/**
 * The items of a claim with the reason why each is declined, and those that have none and are asked about: what the
 * claimant states with an amount, in the order of the record. A reason for something else stays as it was given.
 */
export function declinedItems(
  { input, labels, names, money, source }: LetterView<LetterInput>,
  entries: readonly ClaimEntry[],
): { items: MarkdownText[]; itemsOpen: MarkdownText[] } {
  const { kind, disallowsRest } = input;
  if (kind !== 'denial' && !(kind === 'offer' && disallowsRest)) return { items: [], itemsOpen: [] };
  const current = entries.filter((entry) => entry.replacedBy === undefined);
  const recorded = current.flatMap((entry) => (entry.is === 'declined' ? (entry.items ?? []) : []));
  const given = input.items.length > 0 ? input.items : recorded;
  const claimed = current.filter(
    (entry): entry is ClaimEntryOf<'amount'> =>
      entry.is === 'amount' && entry.saidBy === 'claimant' && CLAIMED.has(entry.item),
  );
  const nameOf = (entry: ClaimEntryOf<'amount'>): string => {
    const item = labels(`amount-item.${entry.item}`);
    const sum = entry.total === undefined ? '' : ` (${money(entry.total)})`;
    const line = entry.line === undefined ? undefined : names.line(entry.line);
    return `${
      line === undefined
        ? item
        : labels('item.of-line')
            .replace('LINE', () => line)
            .replace('ITEM', () => item)
    }${sum}`;
  };
  const line = (name: string, reason: string) =>
    new MarkdownText(`**${escapeMarkdown(name)}:** ${escapeMarkdown(reason)}`);
  const used = new Set<string>();
  const items: MarkdownText[] = [];
  const itemsOpen: MarkdownText[] = [];
  for (const entry of claimed) {
    const found = given.filter(({ item }) => isFor(item, entry, names.line));
    for (const one of found) used.add(one.item);
    const name = nameOf(entry);
    if (found.length === 0)
      itemsOpen.push(new MarkdownText(`**${escapeMarkdown(name)}**${source(entry.evidence, entry.seq)}`));
    else items.push(line(name, found.map(({ reason }) => reason).join('; ')));
  }
  for (const { item, reason } of given) if (!used.has(item)) items.push(line(item, reason));
  return { items, itemsOpen };
}
