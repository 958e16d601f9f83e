import type { Block, Section } from '../../core/words/blocks.js';

/** A section without the headings that have nothing below them; none where nothing is left but its lead. */
export function withoutEmptyParts(section: Section): Section[] {
  const blocks = section.blocks.filter((block, i, all) => {
    const [next] = all.slice(i + 1);
    if (block.is === 'heading') return next !== undefined && next.is !== 'none' && next.is !== 'heading';
    // A sentence that says there is nothing goes with the heading that it stands under.
    return block.is !== 'none' || all[i - 1]?.is !== 'heading';
  });
  return blocks.some(isShown) ? [{ ...section, blocks }] : [];
}

/** Whether a block shows something: a lead, a heading, or the word that there is nothing does not. */
function isShown(block: Block): boolean {
  switch (block.is) {
    case 'paragraph':
    case 'heading':
    case 'none':
      return false;
    case 'list':
    case 'code':
    case 'quote':
    case 'facts':
    case 'table':
    case 'picture':
    case 'plates':
      return true;
  }
}
