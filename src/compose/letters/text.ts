import type { Block, Inline } from '../../core/words/blocks.js';
import { plainSpaces } from '../../core/words/spaces.js';
import { hanging } from '../../core/words/wrap.js';
import type { LetterDocument } from './document.js';

/** Columns of a letter in an e-mail: RFC 5322 §2.1.1 recommends lines of at most 78. */
export const WIDTH = 72;

/** A letter as plain text: wrapped, without markup, the same words as on its pages. */
export function letterText(document: LetterDocument): string {
  const { exhibit, to, sign, enclosed, exhibitsNote, annex } = document;
  const inline = (of: readonly Inline[]) => words(of, exhibit);
  const list = (items: readonly string[]) => items.flatMap((item) => wrapped(item, WIDTH, '- '));
  const lines: string[] = [
    ...document.sender.flatMap((line) => wrapped(line, WIDTH)),
    '',
    ...(to === undefined
      ? []
      : [`${to.label}:`, ...to.lines.flatMap((line) => wrapped(inline(line), WIDTH)), '']),
    ...(document.date === undefined ? [] : [document.date, '']),
    ...wrapped(document.subject, WIDTH),
    '',
    ...document.about.flatMap(({ label, value }) => wrapped(`${label}: ${inline(value)}`, WIDTH)),
    '',
    ...document.body.flatMap((block) => [...blockLines(block, exhibit, WIDTH), '']),
    ...(sign === undefined
      ? []
      : [
          sign.closing,
          ...wrapped(sign.for, WIDTH),
          '',
          ...sign.lines.map((line) => `${line}: ${'_'.repeat(30)}`),
          '',
        ]),
    ...(enclosed === undefined ? [] : [`${enclosed.title}:`, ...list(enclosed.items.map(inline)), '']),
    ...(exhibitsNote === undefined ? [] : [...wrapped(inline(exhibitsNote), WIDTH), '']),
    ...(annex === undefined
      ? []
      : [annex.title, '', ...list(annex.rows.map((row) => row.filter((cell) => cell !== '').join('; ')))]),
  ];
  return `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()}\n`;
}

/** One line without markup and with plain spaces. */
export const plainLine = (of: readonly Inline[], exhibit: string): string =>
  plainSpaces(words(of, exhibit)).trim();

const words = (of: readonly Inline[], exhibit: string): string =>
  of.map((node) => wordsIn(node, exhibit)).join('');

function wordsIn(node: Inline, exhibit: string): string {
  switch (node.is) {
    case 'text':
    case 'code':
      return node.text;
    case 'exhibit':
      return `${exhibit}\u00a0${node.number}`;
    case 'strong':
    case 'emphasis':
      return words(node.of, exhibit);
  }
}

function blockLines(block: Block, exhibit: string, width: number): string[] {
  const inside = (blocks: readonly Block[], prefix: string, apart: string[]) =>
    prefixed(
      blocks.flatMap((one, i) => [
        ...(i === 0 ? [] : apart),
        ...blockLines(one, exhibit, width - prefix.length),
      ]),
      prefix,
    );
  switch (block.is) {
    case 'paragraph':
    case 'none':
      return wrapped(words(block.of, exhibit), width);
    case 'heading':
      return wrapped(block.text, width);
    case 'list':
      return block.items.flatMap((item, i) => inside(item, block.ordered ? `${i + 1}. ` : '- ', []));
    case 'quote':
      return inside(block.of, '  ', ['']);
    case 'code':
      return block.text.split('\n');
    case 'facts':
      return block.facts.flatMap(({ label, value }) => wrapped(`${label}: ${words(value, exhibit)}`, width));
    case 'table':
      return block.rows.flatMap((row) =>
        wrapped(row.map((cell) => words(Array.isArray(cell) ? cell : cell.of, exhibit)).join('; '), width),
      );
    case 'picture':
      return wrapped(block.alt, width);
    case 'plates':
      return [];
  }
}

/** White space of any kind is one space; a letter has no other. */
const wrapped = (text: string, width: number, mark = ''): string[] => {
  const flat = text.replace(/[ \t\r\n]+/g, ' ').trim();
  return flat === '' ? [] : hanging(flat, width, mark);
};

/** The mark stands before the first line, the others under it. */
const prefixed = (block: readonly string[], mark: string): string[] =>
  block.map((line, i) => (line === '' ? '' : `${i === 0 ? mark : ' '.repeat(mark.length)}${line}`));
