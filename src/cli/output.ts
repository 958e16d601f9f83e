import { styleText } from 'node:util';

/** What a command prints to, so that tests can read it. Results go to `out`; all else to `err`. */
export interface Output {
  /** One line of the result. */
  line(text?: string): void;
  /** One line beside the result: notices, errors. */
  note(text: string): void;
  /** Progress on long work: one line that overwrites itself on a terminal, nothing elsewhere. */
  progress(text: string): void;
  /** The result as JSON. */
  json(value: unknown): void;
  style(format: 'bold' | 'dim' | 'red' | 'yellow' | 'green', text: string): string;
  width: number;
}

/**
 * Control and bidirectional characters from file names and notes are shown, never sent to the terminal:
 * CWE-150 (escape sequences) and CVE-2021-42574 (text that reads differently than it is).
 */
export function printable(text: string): string {
  return text.replace(
    /(?![\t\n])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu,
    (c) => `\\u{${(c.codePointAt(0) ?? 0).toString(16)}}`,
  );
}

export function terminalOutput(
  out: NodeJS.WriteStream = process.stdout,
  err: NodeJS.WriteStream = process.stderr,
): Output {
  let onLine = false;
  const clear = () => {
    if (onLine) err.write('\r\x1b[K');
    onLine = false;
  };
  const coloured = out.isTTY === true && process.env.NO_COLOR === undefined && process.env.TERM !== 'dumb';
  return {
    line(text = '') {
      clear();
      out.write(`${text}\n`);
    },
    note(text) {
      clear();
      err.write(`${text}\n`);
    },
    progress(text) {
      if (err.isTTY !== true || process.env.TERM === 'dumb') return;
      err.write(`\r\x1b[K${printable(text).slice(0, Math.max(20, (err.columns ?? 80) - 1))}`);
      onLine = true;
    },
    json(value) {
      clear();
      out.write(`${JSON.stringify(value, null, 2)}\n`);
    },
    style: (format, text) => (coloured ? styleText(format, text) : text),
    width: out.columns ?? 80,
  };
}
