/** Words of version 0.1 by the command before them, and what they are now. */
const FORMER: readonly { after: readonly string[]; word: string; now: string }[] = [
  { after: [], word: 'sheet', now: 'checklist' },
  { after: ['record'], word: 'round', now: 'check' },
  { after: ['record'], word: '--sheet', now: '--checklist' },
];

/**
 * The arguments in today's words. Those of version 0.1 answer for one version more, and `say` gets a line for each
 * that names the new word.
 */
export function currentArguments(args: readonly string[], say: (line: string) => void): string[] {
  return args.map((word, at) => {
    const former = FORMER.find((one) => one.word === word && isAt(args, at, one));
    if (former === undefined) return word;
    const command = ['dossier', ...former.after].join(' ');
    say(`"${command} ${former.word}" is now "${command} ${former.now}".`);
    return former.now;
  });
}

/** Whether the word at a place is the command right after the others, or one of their options. */
function isAt(args: readonly string[], at: number, { after, word }: (typeof FORMER)[number]): boolean {
  const follows = after.every((command, i) => args[i] === command);
  return follows && (word.startsWith('-') ? at >= after.length : at === after.length);
}
