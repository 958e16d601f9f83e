import type { Nodes, Parent, PhrasingContent, RootContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import type { Block, Inline } from './blocks.js';

const EXHIBIT = /^exhibit:([1-9]\d{0,6})$/;

/** Reads Markdown into blocks. Node types that a dossier has no use for become their plain text. */
export function readMarkdown(markdown: string): Block[] {
  return fromMarkdown(markdown).children.flatMap(block);
}

function block(node: RootContent): Block[] {
  switch (node.type) {
    case 'paragraph':
      return [{ is: 'paragraph', of: inlines(node.children) }];
    case 'heading':
      return [{ is: 'heading', level: node.depth > 2 ? 3 : 2, text: textOf(node) }];
    case 'list':
      return [
        {
          is: 'list',
          ordered: node.ordered === true,
          items: node.children.map((item) => item.children.flatMap(block)),
        },
      ];
    case 'code':
      return [{ is: 'code', text: node.value }];
    case 'blockquote':
      return [{ is: 'quote', of: node.children.flatMap(block) }];
    case 'thematicBreak':
    case 'definition':
      return [];
    default:
      return [{ is: 'paragraph', of: [{ is: 'text', text: textOf(node) }] }];
  }
}

function inlines(nodes: readonly PhrasingContent[]): Inline[] {
  return nodes.map((node): Inline => {
    switch (node.type) {
      case 'text':
        return { is: 'text', text: node.value.replace(/\s*\n\s*/g, ' ') };
      case 'strong':
        return { is: 'strong', of: inlines(node.children) };
      case 'emphasis':
        return { is: 'emphasis', of: inlines(node.children) };
      case 'inlineCode':
        return { is: 'code', text: node.value };
      case 'break':
        return { is: 'text', text: ' ' };
      case 'link': {
        const number = EXHIBIT.exec(node.url)?.[1];
        return number === undefined
          ? { is: 'text', text: textOf(node) }
          : { is: 'exhibit', number: Number(number) };
      }
      default:
        return { is: 'text', text: textOf(node) };
    }
  });
}

function textOf(node: Nodes | Parent): string {
  if ('value' in node) return node.value;
  if ('children' in node) return node.children.map(textOf).join('');
  return '';
}
