import { readMailDate } from './date.js';

const FIELD = /^([!-9;-~]{1,60}):(.*)$/;
/** Header fields that mail programs write and people do not. */
const OF_PROGRAMS = new Set([
  'received',
  'message-id',
  'mime-version',
  'content-type',
  'return-path',
  'dkim-signature',
]);
const OF_PEOPLE = new Set(['from', 'to', 'date', 'subject', 'cc', 'reply-to', 'sender']);
const MOST_LINES = 500;

/**
 * Whether a text is an e-mail file: it begins with a block of header fields (RFC 5322 §2.2). At least one of them is
 * written by mail programs only, or the two that the standard asks for (§3.6) have its form: an address that sent it and
 * a date with an offset. A note with `From:`, `To:` and `Date: today` stays a note.
 */
export function looksLikeMail(head: string): boolean {
  const lines = head.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/, MOST_LINES);
  // Files cut out of a mailbox begin with its separator line (RFC 4155).
  if (lines[0]?.startsWith('From ') === true) lines.shift();
  const seen = new Set<string>();
  let sender = false;
  let dated = false;
  for (const line of lines) {
    if (line === '') break;
    if (/^[ \t]/.test(line) && seen.size > 0) continue;
    const [, field, value = ''] = FIELD.exec(line) ?? [];
    const name = field?.toLowerCase();
    if (name === undefined) return false;
    seen.add(name);
    if (name === 'from') sender ||= /[^\s@<]@[^\s@>]/.test(value);
    if (name === 'date') dated ||= readMailDate(value) !== undefined;
  }
  const of = (names: ReadonlySet<string>) => [...names].filter((name) => seen.has(name)).length;
  return of(OF_PEOPLE) >= 2 && (of(OF_PROGRAMS) >= 1 || (sender && dated));
}
