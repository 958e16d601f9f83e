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

/**
 * Sections in which the first mention of each wanted exhibit is the place that other mentions link to: a reading has no
 * picture, and stands where it is told.
 */
export function withPlaces(sections: readonly Section[], wanted: Iterable<number>): Section[] {
  const left = new Set(wanted);
  const inlines = (of: readonly Inline[]): Inline[] =>
    of.map((node): Inline => {
      if (node.is === 'exhibit') return left.delete(node.number) ? { ...node, here: true } : node;
      return node.is === 'strong' || node.is === 'emphasis' ? { ...node, of: inlines(node.of) } : node;
    });
  const cells = (cell: Cell): Cell =>
    Array.isArray(cell) ? inlines(cell) : { ...cell, of: inlines(cell.of) };
  const blocks = (block: Block): Block => {
    switch (block.is) {
      case 'paragraph':
      case 'none':
        return { ...block, of: inlines(block.of) };
      case 'list':
        return { ...block, items: block.items.map((item) => item.map(blocks)) };
      case 'quote':
        return { ...block, of: block.of.map(blocks) };
      case 'facts':
        return { ...block, facts: block.facts.map((fact) => ({ ...fact, value: inlines(fact.value) })) };
      case 'table':
        return { ...block, rows: block.rows.map((row) => row.map(cells)) };
      case 'picture':
      case 'plates':
      case 'heading':
      case 'code':
        return block;
    }
  };
  return sections.map((section) => ({ ...section, blocks: section.blocks.map(blocks) }));
}
