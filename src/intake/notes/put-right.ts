import { omitUndefined } from '../../core/model/omit-undefined.js';
import { UnreadableNote } from './unreadable.js';

/** A line of notes that puts an earlier entry right, or strikes some. */
export type PutRightNote = {
  /** Line in the file, counted from 1. */
  row: number;
  text: string;
  why: string;
} & ({ is: 'correct'; target: string; word?: string; at?: string } | { is: 'strike'; targets: string[] });

const FIRST = /^(correct|strike)(?=[\s:])(.*)$/i;
const NAME = /^(?:e|#)\d+$/i;
/** The reason stands after a colon that is not part of a time, or after `why`. */
const REASON = /^(.*?)(?::(?:\s+|$)|(?:^|\s+)why\s+)(.*)$/i;

/**
 * `correct e12 39F: typed C for F`, `correct e12 at 04:30: …`, `strike e12 e13: of another load`; undefined for other
 * lines. Throws UnreadableNote for one that names no entry or gives no reason.
 */
export function readPutRight(line: string, row: number): PutRightNote | undefined {
  const [, verb, rest = ''] = FIRST.exec(line) ?? [];
  if (verb === undefined) return undefined;
  const [, said = rest, why = ''] = REASON.exec(rest) ?? [];
  if (why.trim() === '')
    throw new UnreadableNote(
      'it gives no reason',
      'write the reason after a colon: strike e12: of another load',
    );
  const words = said.split(/[\s,]+/).filter((word) => word !== '');
  const names = words.filter(
    (word, i) => NAME.test(word) && words.slice(0, i).every((one) => NAME.test(one)),
  );
  const common = { row, text: line, why: why.trim() };
  const others = words.slice(names.length);
  if (verb.toLowerCase() === 'strike') {
    if (names.length === 0 || others.length > 0) throw new UnreadableNote('it names no entry', NAMES);
    return { ...common, is: 'strike', targets: names };
  }
  const [target, another] = names;
  if (target === undefined || another !== undefined)
    throw new UnreadableNote('it names no entry, or several', NAMES);
  const at = others.findIndex((word) => word.toLowerCase() === 'at');
  const value = (at < 0 ? others : others.slice(0, at)).join(' ');
  const time = at < 0 ? '' : others.slice(at + 1).join(' ');
  if (value === '' && time === '')
    throw new UnreadableNote('it gives no value', 'write it after the entry: correct e12 39F: …');
  return {
    ...common,
    is: 'correct',
    target,
    ...omitUndefined({ word: value === '' ? undefined : value, at: time === '' ? undefined : time }),
  };
}

const NAMES = 'name evidence like e12, or an entry by its number in dossier trail, like #41';
