import type { Delivery } from '../core/model/delivery.js';
import type { Problem } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { type ParsedNote, readNote } from './notes/line.js';
import { type NoteContext, noteContextOf } from './notes/note-context.js';
import { type PutRightNote, readPutRight } from './notes/put-right.js';
import { UnreadableNote } from './notes/unreadable.js';
import { splitNote } from './notes/words.js';

/** One line of a notes file as understood: the words of `dossier record`, not yet checked. */
export interface NoteLine extends ParsedNote {
  /** Line in the file, counted from 1. */
  row: number;
  text: string;
}

export interface ReadNotes {
  lines: NoteLine[];
  /** Lines that put an earlier entry right, or strike some. */
  putRight: PutRightNote[];
  problems: Problem[];
  /** Lines that are neither blank, nor a comment, nor a heading. */
  count: number;
}

/** More lines than any driver writes. */
const MOST_LINES = 5_000;

/**
 * Parses notes, one a line, in any order of words: time, kind, temperature, line, position, stop, `by` a name, free
 * text after `note` or a colon. A line with nothing but a date, a stop or `by` a name applies to the lines below
 * it. Blank lines and lines that begin with `#` are skipped. Never throws: a line that is not understood is a
 * problem with its row.
 */
export function readNotes(
  text: string,
  file: string,
  delivery: Delivery,
  given: NoteContext = {},
): ReadNotes {
  const result: ReadNotes = { lines: [], putRight: [], problems: [], count: 0 };
  let context = given;
  const rows = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  for (const [i, written] of rows.entries()) {
    const row = i + 1;
    const line = written.trim();
    if (line === '' || line.startsWith('#')) continue;
    if (row > MOST_LINES) {
      result.problems.push({
        code: 'file-too-large',
        message: `more than ${MOST_LINES} lines; the rest is left out`,
        where: { file, row },
      });
      break;
    }
    const words = splitNote(line);
    const heading = noteContextOf(words, delivery);
    if (heading !== undefined) {
      context = { ...context, ...heading };
      continue;
    }
    result.count += 1;
    try {
      const putRight = readPutRight(line, row);
      if (putRight !== undefined) result.putRight.push(putRight);
      else result.lines.push({ row, text: line, ...readNote(words, delivery, context) });
    } catch (error) {
      if (!(error instanceof UnreadableNote)) throw error;
      result.problems.push({
        code: 'bad-value',
        message: error.message,
        where: { file, row },
        ...omitUndefined({ fix: error.fix }),
      });
    }
  }
  return result;
}
