import { wrap } from '../core/words/wrap.js';
import { escapeControls, type Output } from './output.js';

export const idInWords = (id: string): string => id.replaceAll('-', ' ');

/** `1 entry`, `2 entries`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

const NARROWEST = 40;

interface Wrapping {
  /** What stands before the first line. */
  mark?: string;
  /** What stands before the others; as wide as the mark where it is not said. */
  further?: string;
  /** The widest that lines may be, where the terminal is wider. */
  widest?: number;
  /** A line as it is shown, with its number from 0. */
  style?: (line: string, index: number) => string;
  styleMark?: (mark: string) => string;
}

/** One line of a result, broken where the output ends. */
export function printWrapped(output: Output, text: string, options: Wrapping = {}): void {
  const { mark = '', further = ' '.repeat(mark.length), widest = output.width } = options;
  const { style = (line) => line, styleMark = (shown) => shown } = options;
  const width = Math.max(NARROWEST, Math.min(widest, output.width));
  wrap(escapeControls(text), width - Math.max(mark.length, further.length)).forEach((line, index) => {
    output.line(`${index === 0 ? styleMark(mark) : further}${style(line, index)}`);
  });
}
