import { readFile, stat } from 'node:fs/promises';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { EventTime } from '../core/model/time.js';
import { readMailDate } from './email/date.js';
import { type Address, type Attachment, type Mail, takeApart } from './email/take-apart.js';
import { timeWithOffset } from './time/event-time.js';

/** One file that came with an e-mail. */
export interface MailAttachment {
  /** Its name as sent, or one made from its position and type. */
  name: string;
  bytes: Uint8Array;
}

/** Contents of an e-mail. All of it is the sender's claim: anyone can write any header. */
export interface MailRead {
  from?: string;
  to?: string;
  subject?: string;
  time: EventTime;
  attachments: MailAttachment[];
  /** Attachments that were not extracted, each with its reason. */
  leftInside: { name: string; why: string }[];
  /** Beginning of the text, for proposing the mail's subject. */
  text: string;
}

/** Largest mail that is read, bytes, and most attachments extracted. */
const MOST_MAIL_BYTES = 64 * 1024 * 1024;
const MOST_ATTACHMENTS = 200;
/** Taking a mail apart costs about the same for each line, also an empty one; the largest of base64 has fewer. */
const MOST_LINES = 1_000_000;
/** Uncertainty of a Date header, seconds: it states the time of the sender's machine. */
const SENDERS_CLOCK = 60;

/**
 * Reads an e-mail file (RFC 5322, MIME). Forwarded mails stay whole, as attachments. Throws DossierError
 * `file-too-large` or `unreadable-file`; the caller then keeps the file as it is.
 */
export async function readMail(path: string, shown: string): Promise<MailRead> {
  const { size } = await stat(path);
  if (size > MOST_MAIL_BYTES)
    throw new DossierError('file-too-large', `${size} bytes; e-mails up to ${MOST_MAIL_BYTES} are read`, {
      where: { file: shown },
      fix: 'save the attachments and collect them too',
    });
  const bytes = await readFile(path);
  if (hasMoreLinesThan(bytes, MOST_LINES))
    throw new DossierError('file-too-large', `more than ${MOST_LINES} lines, more than e-mails have`, {
      where: { file: shown },
      fix: 'save the attachments and collect them too',
    });
  let mail: Mail;
  try {
    mail = await takeApart(bytes);
  } catch (cause) {
    throw new DossierError('unreadable-file', 'the e-mail cannot be taken apart; it is kept as it is', {
      where: { file: shown },
      fix: 'save the attachments and collect them too',
      cause,
    });
  }
  const from = addresses(mail.from === undefined ? [] : [mail.from]);
  const to = addresses(mail.to ?? []);
  const subject = oneLine(mail.subject ?? '', 300);
  const all = mail.attachments.map((attachment, i) => ({ attachment, name: nameOf(attachment, i) }));
  return {
    ...omitUndefined({
      from: from === '' ? undefined : from,
      to: to === '' ? undefined : to,
      subject: subject === '' ? undefined : subject,
    }),
    time: timeOf(mail),
    attachments: all
      .slice(0, MOST_ATTACHMENTS)
      .map(({ attachment, name }) => ({ name, bytes: bytesOf(attachment) })),
    leftInside: all
      .slice(MOST_ATTACHMENTS)
      .map(({ name }) => ({ name, why: `more than ${MOST_ATTACHMENTS} files in one e-mail` })),
    text: (mail.text ?? '').slice(0, 20_000),
  };
}

function hasMoreLinesThan(bytes: Buffer, most: number): boolean {
  let lines = 0;
  for (let at = bytes.indexOf(10); at !== -1 && lines <= most; at = bytes.indexOf(10, at + 1)) lines += 1;
  return lines > most;
}

/** The Date header as written: the parsed form has lost the sender's offset. */
function timeOf(mail: Mail): EventTime {
  const [header, second] = mail.headers.filter((h) => h.key === 'date');
  if (header === undefined) return { is: 'none', why: 'the e-mail has no Date header' };
  if (second !== undefined) return { is: 'none', why: 'the e-mail has two Date headers' };
  const read = readMailDate(header.value);
  const stated = oneLine(header.value, 100);
  if (read === undefined) return { is: 'none', why: `its Date header is not a date: ${stated}` };
  return timeWithOffset(read, undefined, SENDERS_CLOCK, stated, 'offset');
}

function addresses(list: readonly Address[]): string {
  const one = (address: Address): string[] =>
    'group' in address
      ? address.group.flatMap(one)
      : [address.name === '' ? address.address : `${address.name} <${address.address}>`];
  return oneLine(list.flatMap(one).join(', '), 300);
}

const EXTENSIONS: Readonly<Record<string, string>> = { 'message/rfc822': 'eml', 'text/plain': 'txt' };

function nameOf(attachment: Attachment, index: number): string {
  const given = oneLine((attachment.filename ?? '').replaceAll(/[\\/]+/g, '_'), 200);
  if (given !== '') return given;
  const subtype = /\/([a-z0-9]{1,8})$/.exec(attachment.mimeType)?.[1] ?? 'bin';
  return `part-${index + 1}.${EXTENSIONS[attachment.mimeType] ?? subtype}`;
}

function bytesOf({ content }: Attachment): Uint8Array {
  if (typeof content === 'string') return Buffer.from(content, 'utf8');
  return content instanceof Uint8Array ? content : new Uint8Array(content);
}

/** One line without control characters, cut to a length. */
function oneLine(text: string, most: number): string {
  return text
    .replaceAll(/[\p{Cc}\s]+/gu, ' ')
    .trim()
    .slice(0, most);
}
