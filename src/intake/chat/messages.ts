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
/** `12/07/2026, 14:05 - Name: …` and `[12/07/2026, 14:05:32] Name: …`: the forms of the two kinds of phones. */
const HEAD = new RegExp(
  `^(?:\\[(${DAY}),?\\s(${CLOCK})\\]|(${DAY}),?\\s(${CLOCK})\\s[-–])\\s([^:]{1,100}):\\s?(.*)$`,
  'i',
);
/** `IMG-….jpg (file attached)` and `<attached: ….jpg>`, in the languages of such exports: any word in the brackets. */
const BEHIND = /^([^<>:"/\\|?*]{1,150}\.[A-Za-z0-9]{2,5})\s+\([\p{L}\s]{3,40}\)$/u;
const BEFORE = /^<[\p{L}\s]{3,40}:\s*([^<>:"/\\|?*]{1,150}\.[A-Za-z0-9]{2,5})>$/u;
/** No line with a head is longer; what follows is text. */
const LONGEST = 600;

/** The messages of an exported chat; none for another text. A further line belongs to the message before it. */
export function parseChat(text: string): ChatMessage[] {
  const messages: ChatMessage[] = [];
  for (const line of text.split(/\r\n|\n|\r/)) {
    // Marks of direction and narrow blanks stand between what people see.
    const plain = line
      .slice(0, LONGEST)
      .replaceAll(/[\u200E\u200F\u202A-\u202E\uFEFF]/g, '')
      .replaceAll(/[\u00A0\u202F]/g, ' ')
      .trimEnd();
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
