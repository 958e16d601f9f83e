import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';
import { DossierError } from '../core/model/error.js';
import { lengthOf } from '../core/words/wrap.js';
import { Interrupted } from './interruption.js';

/** Whether a person can be prompted. */
export function isInteractive(): boolean {
  return process.stdin.isTTY === true && process.stderr.isTTY === true;
}

/** Lines typed or pasted ahead, and the unfinished line. */
const ahead: string[] = [];
let begun = '';

/** Whether lines were typed or pasted ahead of their questions. */
export const hasLinesAhead = (): boolean => ahead.length > 0;

/** Asks on stderr, so that the result on stdout stays clean. Throws DossierError `bad-usage` where the input ends, Interrupted at Ctrl-C. */
export async function prompt(question: string, fallback?: string): Promise<string> {
  const shown = fallback === undefined ? `${question}: ` : `${question} [${fallback}]: `;
  const answer = (await oneLine(shown, process.stderr, {})).trim();
  return answer === '' && fallback !== undefined ? fallback : answer;
}

/**
 * The next line. The terminal is read only during a prompt, so that it behaves normally in between; input beyond
 * the line waits for the next prompt.
 */
async function oneLine(shown: string, output: Writable, how: { terminal?: true }): Promise<string> {
  const waiting = ahead.shift();
  if (waiting !== undefined) {
    output.write(`${shown}${waiting}\n`);
    return waiting;
  }
  const lines = createInterface({ input: process.stdin, output, ...how });
  try {
    const answer = lines.question(shown);
    // In raw mode Ctrl-C arrives as a character.
    const interrupted = new Promise<never>((_, reject) =>
      lines.on('SIGINT', () => reject(new Interrupted())),
    );
    lines.on('line', (line) => ahead.push(line));
    if (begun !== '') lines.write(begun);
    const ended = new Promise<never>((_, reject) => lines.on('close', () => reject(inputEnded())));
    return await Promise.race([answer, ended, interrupted]);
  } finally {
    begun = ahead.length > 0 ? lines.line : '';
    lines.close();
  }
}

function inputEnded(): DossierError {
  return new DossierError('bad-usage', 'the input ended before everything was answered', {
    fix: 'Start the command again.',
  });
}

/** Numbered choices in as many columns as a line has room for; each below the one before it. */
export function choiceLines(choices: readonly string[], width: number): string[] {
  const cells = choices.map((choice, i) => `${String(i + 1).padStart(4)} ${choice}`);
  const cell = Math.max(...cells.map(lengthOf)) + 2;
  const columns = Math.max(1, Math.floor(width / cell));
  const rows = Math.ceil(cells.length / columns);
  return Array.from({ length: rows }, (_, row) =>
    cells
      .filter((_cell, i) => i % rows === row)
      .map((text) => text + ' '.repeat(cell - lengthOf(text)))
      .join('')
      .trimEnd(),
  );
}

/**
 * Prompts until the answer is one of the choices: a whole word, its number, or an unambiguous beginning.
 * @param fallback the choice for Enter alone
 */
export async function promptChoice(
  question: string,
  choices: readonly string[],
  fallback?: string,
): Promise<string> {
  const shown = choices.length > 8 ? `${question} (? lists)` : `${question} (${choices.join(', ')})`;
  for (;;) {
    const answer = await prompt(shown, fallback);
    const found = matchChoice(answer, choices);
    if (found !== undefined) return found;
    for (const line of choiceLines(choices, process.stderr.columns ?? 80)) process.stderr.write(`${line}\n`);
  }
}

/** The choice that an answer means; undefined when it is none or ambiguous. */
export function matchChoice(answer: string, choices: readonly string[]): string | undefined {
  const plain = answer
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
  if (plain === '') return undefined;
  const exact = choices.find((choice) => choice.toLowerCase() === plain);
  if (exact !== undefined) return exact;
  if (/^\d+$/.test(plain)) return choices[Number(plain) - 1];
  const [only, other] = choices.filter((choice) => choice.toLowerCase().startsWith(plain));
  return other === undefined ? only : undefined;
}

/** Prompts without echo. */
export async function promptSecret(question: string): Promise<string> {
  process.stderr.write(`${question}: `);
  const silent = new Writable({ write: (_chunk, _encoding, done) => done() });
  try {
    return await oneLine('', silent, { terminal: true });
  } finally {
    process.stderr.write('\n');
  }
}
