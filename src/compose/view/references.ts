import type { Block, Cell, Inline, Section } from '../../core/words/blocks.js';

/** The sections that name each exhibit, so that its image can refer back. */
export function sectionsByExhibit(
  sections: readonly Section[],
): (number: number) => { id: string; title: string }[] {
  const found = new Map<number, { id: string; title: string }[]>();
  for (const { id, title, blocks } of sections)
    for (const number of new Set(blocks.flatMap(inBlock))) {
      const list = found.get(number) ?? [];
      list.push({ id, title });
      found.set(number, list);
    }
  return (number) => found.get(number) ?? [];
}

function inBlock(block: Block): number[] {
  switch (block.is) {
    case 'paragraph':
    case 'none':
      return inInlines(block.of);
    case 'picture':
      return inInlines(block.caption);
    case 'plates':
      return block.plates.flatMap((plate) => inInlines(plate.caption));
    case 'list':
      return block.items.flat().flatMap(inBlock);
    case 'quote':
      return block.of.flatMap(inBlock);
    case 'facts':
      return block.facts.flatMap((fact) => inInlines(fact.value));
    case 'table':
      return block.rows.flat().flatMap((cell) => inInlines(inlinesOf(cell)));
    case 'heading':
    case 'code':
      return [];
  }
}

const inlinesOf = (cell: Cell): Inline[] => (Array.isArray(cell) ? cell : cell.of);

function inInlines(of: readonly Inline[]): number[] {
  return of.flatMap((node) =>
    node.is === 'exhibit'
      ? [node.number]
      : node.is === 'strong' || node.is === 'emphasis'
        ? inInlines(node.of)
        : [],
  );
}
