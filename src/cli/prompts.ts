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
