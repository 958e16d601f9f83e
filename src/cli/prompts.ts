import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';

/** True when a person can be asked. */
export function canAsk(): boolean {
  return process.stdin.isTTY === true && process.stderr.isTTY === true;
}

/** Asks on stderr, so that the result on stdout stays clean. */
export async function ask(question: string, fallback?: string): Promise<string> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  try {
    const shown = fallback === undefined ? `${question}: ` : `${question} [${fallback}]: `;
    const answer = (await lines.question(shown)).trim();
    return answer === '' && fallback !== undefined ? fallback : answer;
  } finally {
    lines.close();
  }
}

/**
 * Asks until the answer is one of the choices: a whole word, its number, or the beginning of only one of them.
 * @param fallback what Enter alone means
 */
export async function askChoice(
  question: string,
  choices: readonly string[],
  fallback?: string,
): Promise<string> {
  const shown = choices.length > 8 ? `${question} (? lists)` : `${question} (${choices.join(', ')})`;
  for (;;) {
    const answer = await ask(shown, fallback);
    const found = choiceOf(answer, choices);
    if (found !== undefined) return found;
    process.stderr.write(`  ${choices.map((choice, i) => `${i + 1} ${choice}`).join('\n  ')}\n`);
  }
}

/** The choice that an answer means; undefined when it is none or several. */
export function choiceOf(answer: string, choices: readonly string[]): string | undefined {
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

/** Asks without showing what is typed. */
export async function askSecret(question: string): Promise<string> {
  process.stderr.write(`${question}: `);
  const silent = new Writable({ write: (_chunk, _encoding, done) => done() });
  const lines = createInterface({ input: process.stdin, output: silent, terminal: true });
  try {
    return await lines.question('');
  } finally {
    lines.close();
    process.stderr.write('\n');
  }
}
