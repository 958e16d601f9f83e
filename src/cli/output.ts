import { styleText } from 'node:util';
import type { Progress } from '../core/ports/work.js';
import { plainSpaces } from '../core/words/spaces.js';

/** The output of a command, as a port for tests. Results go to `out`; all else to `err`. */
export interface Output {
  /** One line of the result. */
  line(text?: string): void;
  /**
   * A whole file of another format, such as CSV or SVG: unchanged to a file or pipe. On a terminal its characters
   * are escaped as by `escapeControls`.
   */
  document(text: string): void;
  /** One line beside the result: notices, errors. */
  note(text: string): void;
  /** Progress on long work: one line that overwrites itself on a terminal, nothing elsewhere. */
  progress(at: Progress): void;
  /** The result as JSON. */
  json(value: unknown): void;
  /** A list as JSON whose items come one by one. */
  jsonList(): { item(value: unknown): void; end(): void };
  style(format: 'bold' | 'dim' | 'red' | 'yellow' | 'green', text: string): string;
  width: number;
}

const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

/**
 * Escapes text from file names and notes for one terminal line. Control and bidirectional characters are shown,
 * never sent to the terminal: CWE-150 (escape sequences) and CVE-2021-42574 (text that reads differently than it
 * is). Line breaks are escaped too, so that no name can pass for a line of ours.
 */
export function escapeControls(text: string): string {
  return text.replace(UNSEEN, (c) => `\\u{${(c.codePointAt(0) ?? 0).toString(16)}}`);
}

/** Text quoted as one shell word. */
export const quotedForShell = (text: string): string =>
  `"${escapeControls(text).replace(/["\\$`]/g, '\\$&')}"`;

/** A path for a shell command: quoted where its name requires it. */
export const pathForShell = (path: string): string =>
  /^[\w@%+=:,./~-]+$/.test(path) ? path : quotedForShell(path);

/** Escapes text of several lines, line by line. */
export function escapeControlsPerLine(text: string): string {
  return text.split('\n').map(escapeControls).join('\n');
}

/** JSON of equal meaning without characters that a terminal acts on. */
function printableJson(value: unknown): string {
  const escaped = (c: string) =>
    Array.from({ length: c.length }, (_, i) => `\\u${c.charCodeAt(i).toString(16).padStart(4, '0')}`).join(
      '',
    );
  return JSON.stringify(value, null, 2)
    .split('\n')
    .map((line) => line.replace(UNSEEN, escaped))
    .join('\n');
}

/** Where output goes: a terminal, or a file or pipe, which has no columns. */
interface Stream {
  write(text: string): unknown;
  isTTY?: boolean;
  columns?: number;
}

export function terminalOutput(out: Stream = process.stdout, err: Stream = process.stderr): Output {
  let onLine = false;
  const clear = () => {
    if (onLine) err.write('\r\x1b[K');
    onLine = false;
  };
  // no-color.org: present and not empty.
  const plain = (process.env.NO_COLOR ?? '') !== '' || process.env.TERM === 'dumb';
  const coloured = out.isTTY === true && !plain;
  return {
    line(text = '') {
      clear();
      out.write(`${plainSpaces(text)}\n`);
    },
    document(text) {
      clear();
      const whole = text.trimEnd();
      out.write(`${out.isTTY === true ? escapeControlsPerLine(whole.replaceAll('\r\n', '\n')) : whole}\n`);
    },
    note(text) {
      clear();
      err.write(`${plainSpaces(text)}\n`);
    },
    progress({ what, done, total }) {
      if (err.isTTY !== true || process.env.TERM === 'dumb') return;
      const count = done === undefined ? '' : `${done}/${total ?? '?'} `;
      err.write(`\r\x1b[K${escapeControls(count + what).slice(0, Math.max(20, (err.columns ?? 80) - 1))}`);
      onLine = true;
    },
    json(value) {
      clear();
      out.write(`${printableJson(value)}\n`);
    },
    jsonList() {
      let items = 0;
      return {
        item(value) {
          clear();
          out.write(`${items === 0 ? '[' : ','}\n  ${printableJson(value).replaceAll('\n', '\n  ')}`);
          items += 1;
        },
        end: () => void out.write(items === 0 ? '[]\n' : '\n]\n'),
      };
    },
    style: (format, text) => (coloured ? styleText(format, text, { validateStream: false }) : text),
    width: out.columns ?? 80,
  };
}
