import type { Block, Inline } from '../../core/words/blocks.js';
import type { LetterDocument } from './document.js';

/** Columns of a letter in an e-mail: RFC 5322 §2.1.1 recommends lines of at most 78. */
export const WIDTH = 72;

/** A letter as plain text: wrapped, without markup, the same words as on its pages. */
export function letterText(document: LetterDocument): string {
  const { exhibit, to, sign, enclosed, exhibitsNote, annex } = document;
  const inline = (of: readonly Inline[]) => words(of, exhibit);
  const list = (items: readonly string[]) => items.flatMap((item) => prefixed(wrap(item, WIDTH - 2), '- '));
  const lines: string[] = [
    ...document.sender.flatMap((line) => wrap(line, WIDTH)),
    '',
    ...(to === undefined
      ? []
      : [`${to.label}:`, ...to.lines.flatMap((line) => wrap(inline(line), WIDTH)), '']),
    ...(document.date === undefined ? [] : [document.date, '']),
    ...wrap(document.subject, WIDTH),
    '',
    ...document.about.flatMap(({ label, value }) => wrap(`${label}: ${inline(value)}`, WIDTH)),
    '',
    ...document.body.flatMap((block) => [...blockLines(block, exhibit, WIDTH), '']),
    ...(sign === undefined
      ? []
      : [
          sign.closing,
          ...wrap(sign.for, WIDTH),
          '',
          ...sign.lines.map((line) => `${line}: ${'_'.repeat(30)}`),
          '',
        ]),
    ...(enclosed === undefined ? [] : [`${enclosed.title}:`, ...list(enclosed.items.map(inline)), '']),
    ...(exhibitsNote === undefined ? [] : [...wrap(inline(exhibitsNote), WIDTH), '']),
    ...(annex === undefined
      ? []
      : [annex.title, '', ...list(annex.rows.map((row) => row.filter((cell) => cell !== '').join('; ')))]),
  ];
  const text = lines.join('\n').replaceAll('\u00a0', ' ');
  return `${text.replace(/\n{3,}/g, '\n\n').trimEnd()}\n`;
}

/** One line without markup and with plain spaces. */
export const plainLine = (of: readonly Inline[], exhibit: string): string =>
  words(of, exhibit).replaceAll('\u00a0', ' ').trim();

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
      return wrap(words(block.of, exhibit), width);
    case 'heading':
      return wrap(block.text, width);
    case 'list':
      return block.items.flatMap((item, i) => inside(item, block.ordered ? `${i + 1}. ` : '- ', []));
    case 'quote':
      return inside(block.of, '  ', ['']);
    case 'code':
      return block.text.split('\n');
    case 'facts':
      return block.facts.flatMap(({ label, value }) => wrap(`${label}: ${words(value, exhibit)}`, width));
    case 'table':
      return block.rows.flatMap((row) =>
        wrap(row.map((cell) => words(Array.isArray(cell) ? cell : cell.of, exhibit)).join('; '), width),
      );
    case 'picture':
      return wrap(block.alt, width);
    case 'plates':
      return [];
  }
}

/** The first line behind the bullet, the others indented. */
const prefixed = (lines: readonly string[], mark: string): string[] =>
  lines.map((line, i) => (line === '' ? '' : `${i === 0 ? mark : ' '.repeat(mark.length)}${line}`));

/** Greedy wrapping: a word longer than a line, such as a hash, has a line of its own. */
function wrap(value: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of value.split(/[ \t\r\n]+/).filter((one) => one !== '')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = '';
    }
    line += line === '' ? word : ` ${word}`;
  }
  return line === '' ? lines : [...lines, line];
}
