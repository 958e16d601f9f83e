/** One message of an exported chat. */
export interface ChatMessage {
  /** Date and time as the phone wrote them: `12/07/2026, 14:05`. */
  stamp: string;
  sender: string;
  /** Name of the file that came with it. */
  attached?: string;
}

const DAY = String.raw`\d{1,4}[./-]\d{1,2}[./-]\d{1,4}`;
const CLOCK = String.raw`\d{1,2}[:.]\d{2}(?:[:.]\d{2})?(?:\s?[ap]\.?\s?m\.?)?`;
/** Between the day and the time: a comma, a blank, `à` or `um`. */
const GAP = String.raw`[,،]?\s(?:à\s|um\s|kl\.?\s)?`;
/** `12/07/2026, 14:05 - Name: …` and `[12/07/2026, 14:05:32] Name: …`: the forms of the two kinds of phones. */
const HEAD = new RegExp(
  `^(?:\\[(${DAY})${GAP}(${CLOCK})\\]|(${DAY})${GAP}(${CLOCK})\\s[-–])\\s([^:]{1,100}):\\s?(.*)$`,
  'i',
);
/** `IMG-….jpg (file attached)` and `<attached: ….jpg>`, in the languages of such exports: any word in the brackets. */
const BEHIND = /^([^<>:"/\\|?*]{1,150}\.[A-Za-z0-9]{2,5})\s+\([\p{L}\s]{3,40}\)$/u;
const BEFORE = /^<[\p{L}\s]{2,40}[:：]\s*([^<>:"/\\|?*]{1,150}\.[A-Za-z0-9]{2,5})>$/u;
/** No line with a head is longer; what follows is text. */
const LONGEST = 600;

/** The messages of an exported chat; none for another text. A further line belongs to the message before it. */
export function parseChat(text: string): ChatMessage[] {
  const messages: ChatMessage[] = [];
  for (const line of text.split(/\r\n|\n|\r/)) {
    // Marks of direction and narrow blanks stand between what people see.
    const plain = inFigures(
      line
        .slice(0, LONGEST)
        .replaceAll(/[\u200E\u200F\u202A-\u202E\uFEFF]/g, '')
        .replaceAll(/[\u00A0\u202F]/g, ' ')
        .trimEnd(),
    );
    const match = HEAD.exec(plain);
    if (match === null) continue;
    const [, day = match[3] ?? '', clock = match[4] ?? '', , , sender = '', body = ''] = match;
    const attached = BEHIND.exec(body)?.[1] ?? BEFORE.exec(body)?.[1];
    messages.push({
      stamp: `${day} ${clock}`,
      sender: sender.trim(),
      ...(attached === undefined ? {} : { attached: attached.trim() }),
    });
  }
  return messages;
}

/** Behind which no head goes on. */
const HEAD_LENGTH = 40;

/** A line whose day and time are written as in English: with figures of 0 to 9, AM and PM, and no blanks in the day. */
function inFigures(line: string): string {
  const head = line
    .slice(0, HEAD_LENGTH)
    .replaceAll(/[\u0660-\u0669\u06F0-\u06F9]/g, (digit) => String(digit.charCodeAt(0) % 16))
    .replace(/^(\[?\d{4}\.) (\d{1,2}\.) (\d{1,2})\.(?= )/, '$1$2$3')
    .replace(
      /(\d{1,2}:\d{2}(?::\d{2})?) ([مص])(?=[\s\]])/,
      (_, clock: string, half: string) => `${clock} ${half === 'م' ? 'PM' : 'AM'}`,
    )
    .replace(
      /(上午|下午|오전|오후)\s?(\d{1,2}:\d{2}(?::\d{2})?)/,
      (_, half: string, clock: string) => `${clock} ${/下午|오후/.test(half) ? 'PM' : 'AM'}`,
    );
  return head + line.slice(HEAD_LENGTH);
}

/** Share of lines with a head from which a text is a chat: a message may go on over lines. */
const MOSTLY = 0.3;

/** Whether lines of text are the messages of an exported chat, which have commas as a table does. */
export function isChat(lines: readonly string[]): boolean {
  const full = lines.filter((line) => line.trim() !== '').slice(0, 200);
  return full.length > 0 && parseChat(full.join('\n')).length >= Math.max(1, MOSTLY * full.length);
}
